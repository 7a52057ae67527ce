"""What each track of a one-brick wall may lay next, and what that costs: closers, quoins, pairs sawn to length."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from wallplan.bond.one_brick_figures import (
    BROKEN,
    CLOSED,
    CLOSING,
    DEPARTED,
    FIRST,
    FIRST_THREE,
    FIRST_TWO,
    HEADED,
    PLUMB,
    ROUNDING,
    SAWN,
    SECOND,
    STRETCHED,
    THIRD,
    Grammar,
    Kind,
    Move,
    Rule,
    Span,
    State,
)

NEXT = {STRETCHED: SECOND, SECOND: THIRD, THIRD: THIRD, FIRST: FIRST_TWO, FIRST_TWO: FIRST_THREE, FIRST_THREE: FIRST_THREE,
        -1: FIRST, CLOSED: FIRST}
"""Where three stretchers go between headers: what is laid last after one more."""

Joints = tuple[tuple[tuple[int, int], ...], ...]
"""Joints of other runs, (where, weight): those above and below, and those to be plumb with."""


class _Known(NamedTuple):
    """What is known so far of one track of a run: moves and bounds by state, and what joints beside others cost by place."""

    moves: dict[State, list[Move]]
    least: dict[State, dict[State, int]]
    met: dict[int, int]


@lru_cache(maxsize=512)
def _know(grammar: Grammar, total: int, span: Span, courses: int, others: Joints, which: int) -> _Known:
    """One for all searches in which the track is the same, whatever the other is: the arguments are all it hangs on."""
    return _Known({}, {}, {})


class Pieces:
    """The pieces of one run at one sum of them, ``total``."""

    def __init__(self, grammar: Grammar, span: Span, total: int) -> None:
        self.grammar, self.span, self.total = grammar, span, total
        self.whole = abs(grammar.quarters(round(total * 4 / grammar.stretcher)) - total) <= ROUNDING
        self.least = grammar.lap - ROUNDING
        self.others = tuple(tuple(tuple(sorted((one.at, one.weight) for one in span.beside if one.parity == which
                                               and one.plumb is plumb)) for plumb in (False, True)) for which in (0, 1))
        self.known = tuple(_know(grammar, total, replace(span, beside=(), adjoining=0, courses=(0, 0)), span.courses[which],
                                 self.others[which], which) for which in (0, 1))
        self.missed = tuple(max((weight for _, weight in plumb), default=0) for _, plumb in self.others)

    def after(self, which: int, state: State) -> list[Move]:
        """What a track may lay next; [] at a dead end."""
        known = self.known[which].moves
        if state not in known:
            known[state] = [move for move in self._list_moves(which, state) if move is not None]
        return known[state]

    def bound(self, which: int, begin: State) -> dict[State, int]:
        """What one track alone costs at least from each of its states to the run's end; dead ends are left out."""
        known = self.known[which].least
        if begin not in known:
            known[begin] = self._find_bound(which, begin)
        return known[begin]

    def _find_bound(self, which: int, begin: State) -> dict[State, int]:
        reached, waiting = {begin}, [begin]
        while waiting:
            for move in self.after(which, waiting.pop()):
                if move.to not in reached:
                    reached.add(move.to)
                    waiting.append(move.to)
        least: dict[State, int] = {}
        for state in sorted(reached, reverse=True):
            if state[0] >= self.total:
                least[state] = 0
                continue
            costs = [move.cost + least[move.to] for move in self.after(which, state) if move.to in least]
            if costs:
                least[state] = min(costs)
        return least

    def _list_moves(self, which: int, state: State) -> list[Move | None]:
        at, _, last = state
        if last == CLOSING:
            return [self._move(which, state, self.total, True, "H", HEADED)]
        if last == -1:
            return self._begin(which, state)
        found: list[Move | None] = [
            self._step(which, state, 4, "S", STRETCHED), self._step(which, state, 2, "H", HEADED)]
        if last == HEADED and at == self.grammar.quarters(2) and self.span.ends[0].stretcher != which:
            found.append(self._step(which, state, 1, "C", CLOSED))
        if self.span.ends[1].stretcher != which and self._left(state) == 3:
            found.append(self._step(which, state, 1, "C", CLOSING))
        return [*found, *self._list_sawn(which, state)]

    def _list_sawn(self, which: int, state: State) -> list[Move | None]:
        """Pairs sawn to length, which play a stretcher or a header."""
        roles = (STRETCHED, HEADED) if self._rule(which) in ("in turn", "three in turn") else (STRETCHED,)
        return [self._move(which, state, end, right, "P", plays) for end, right in self._sawn_to(state) for plays in roles]

    def _play(self, which: int, state: State, last: int) -> int:
        """What is laid last after a piece; where three stretchers go between headers they are counted."""
        if last != STRETCHED or self._rule(which) != "three in turn":
            return last
        if state[2] == HEADED:
            return FIRST if state[0] == self.grammar.quarters(2) else STRETCHED
        return NEXT.get(state[2], STRETCHED)

    def _begin(self, which: int, state: State) -> list[Move | None]:
        """The quoin. One that another wall gives is laid as given; elsewhere what the end is too short for may differ."""
        end = self.span.ends[0]
        whole = self._step(which, state, 4, "S", STRETCHED), self._step(which, state, 2, "H", HEADED)
        found = [whole[0 if end.stretcher == which else 1]]
        if not end.given:
            found.append(whole[1 if end.stretcher == which else 0])
            found += self._list_sawn(which, state)
        return found

    def is_off_centre(self, which: int, at: int, other: State) -> bool:
        """Whether a header that ends ``at`` does not stand over the middle one of three stretchers of the other track, which
        has laid up to ``other``; those before its first header count as such. False in other bonds."""
        if self._rule(which) != "three in turn":
            return False
        over = abs(other[0] - at - self.grammar.quarters(1)) <= ROUNDING
        return not (over and other[2] in (SECOND, FIRST, FIRST_TWO, FIRST_THREE))

    def _left(self, state: State) -> int | None:
        """Quarters to the run's right end, None where they are not whole."""
        if not (state[1] or self.whole):
            return None
        rest = self.total - state[0]
        count = round(rest * 4 / self.grammar.stretcher)
        return count if abs(self.grammar.quarters(count) - rest) <= ROUNDING else None

    def _step(self, which: int, state: State, quarters: int, kind: Kind, last: int) -> Move | None:
        """A piece of whole quarters; it ends where quarters from the left, or from the right end, do."""
        at = state[0]
        left = self._left(state)
        if left is not None:
            if quarters > left:
                return None
            return self._move(which, state, self.total - self.grammar.quarters(left - quarters), True, kind, last)
        return self._move(which, state, at + self.grammar.quarters(quarters), False, kind, last)

    def _sawn_to(self, state: State) -> list[tuple[int, bool]]:
        """Where a sawn pair may end: a three-quarter on, or, from the left's quarters, on the right end's."""
        at, grammar = state[0], self.grammar
        found = []
        if grammar.quarters(3) >= grammar.least:
            move = self._step(0, state, 3, "P", STRETCHED)
            found += [(move.to[0], move.to[1])] if move else []
        if not state[1] and not self.whole:
            most = (self.total - at) * 4 // grammar.stretcher
            for count in range(max(0, most - 4), most + 1):
                end = self.total - grammar.quarters(count)
                if grammar.least <= end - at < grammar.stretcher - ROUNDING:
                    found.append((end, True))
        if not state[1]:
            found += self._in_step(at)
        if self.total < grammar.stretcher and not at:
            found.append((self.total, True))
        return found

    def _in_step(self, at: int) -> list[tuple[int, bool]]:
        """Where a sawn pair may end so that what follows falls into step with the runs beside it."""
        grammar, found = self.grammar, list[tuple[int, bool]]()
        for anchor in self.span.anchors:
            first = max(0, (at + grammar.least - anchor) * 4 // grammar.stretcher)
            for count in range(first, first + 4):
                end = anchor + grammar.quarters(count)
                if grammar.least <= end - at < grammar.stretcher - ROUNDING and end < self.total:
                    found.append((end, False))
        return found

    def _move(self, which: int, state: State, end: int, right: bool, kind: Kind, last: int) -> Move | None:
        if end > self.total or (end == self.total and not self._may_end(which, kind, last)):
            return None
        weight = self.span.courses[which]
        departed, last = self._departs(which, state, end, kind, last), self._play(which, state, last)
        cost = weight * departed * DEPARTED + weight * {"P": 2, "C": 1}.get(kind, 0) * SAWN
        if departed:
            cost += weight * self._shows((state[0] + end) // 2)
        if end - state[0] < self.grammar.least and kind == "P":
            cost += weight * BROKEN
        if end < self.total:
            cost += self._beside(which, end)
        return Move((end, right or self.whole, last), kind, cost)

    def _may_end(self, which: int, kind: Kind, last: int) -> bool:
        end = self.span.ends[1]
        wanted: Kind = "S" if end.stretcher == which else "H"
        return kind == wanted or (not end.given and kind != "C")

    def _departs(self, which: int, state: State, end: int, kind: Kind, last: int) -> int:
        """How often a piece departs from the bond: as a piece of another kind, out of turn, or at a quoin."""
        if kind == "C":
            return int(last == CLOSING and self._rule(which) in ("in turn", "three in turn") and state[2] == HEADED)
        count, quoin = int(kind == "P"), False
        for at_end, side in ((state[2] == -1, 0), (end == self.total, 1)):
            as_wanted = kind == ("S" if self.span.ends[side].stretcher == which else "H")
            sawn_quoin = kind == "P" and self.grammar.quoins and self._rule(which) == "headers"
            count += 2 if at_end and not as_wanted and not sawn_quoin else 0
            quoin = quoin or (at_end and as_wanted)
        rule = self._rule(which)
        if rule == "three in turn":
            return count + self._departs_from_three(state, end, last)

        if rule == "in turn":
            turn = {STRETCHED: HEADED, HEADED: STRETCHED, CLOSED: STRETCHED}.get(state[2])
            return count + int(turn is not None and last != turn)
        wanted = kind == ("S" if rule == "stretchers" else "H") or (quoin and self.grammar.quoins)
        return count + int(kind in "SH" and not wanted)

    def _departs_from_three(self, state: State, end: int, last: int) -> int:
        """Whether a header inside does not follow three stretchers, before the first of them fewer; or a stretcher is a
        fourth; or a header at the right end stands beside another."""
        if last == STRETCHED:
            return int(state[2] in (THIRD, FIRST_THREE))
        if end < self.total:
            return int(state[2] in (STRETCHED, SECOND, HEADED, CLOSED))
        return int(state[2] == HEADED and state[0] > 0)

    def _rule(self, which: int) -> Rule:
        return self.grammar.rules[0 if self.span.ends[0].stretcher == which else 1]

    def _shows(self, at: int) -> int:
        """How far a departure is from the middle of what openings cover, or of the run where they cover none of it there."""
        span = self.span
        if any(left <= at <= right for left, right in span.covered):
            return 0
        return 1 + abs(2 * at - self.total) * 2 // self.grammar.stretcher

    def _beside(self, which: int, at: int) -> int:
        """A joint against those of other runs."""
        met = self.known[which].met
        if at not in met:
            met[at] = self._weigh(which, at)
        return met[at]

    def _weigh(self, which: int, at: int) -> int:
        if self.grammar.quoins:  # where the joint comes to lie when the run's joints open or close alike
            at = at * self.span.length // self.total
        over, plumb = self.others[which]
        near = over[bisect_left(over, (at - self.grammar.beside + 1, 0)):bisect_left(over, (at + self.grammar.beside, 0))]
        cost = BROKEN * sum(weight for _, weight in near)
        if not plumb:
            return cost
        place = bisect_left(plumb, (at - ROUNDING, 0))
        met = place < len(plumb) and plumb[place][0] <= at + ROUNDING
        return cost if met else cost + self.missed[which] * PLUMB
