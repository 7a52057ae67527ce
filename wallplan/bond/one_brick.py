"""The bond of walls one brick thick: stretchers in pairs, headers through, closers beside quoin headers. Numbers only.

One run between two fixed ends has an odd and an even track. A bond is a grammar for each: headers and stretchers in turn,
stretchers alone, or headers alone. Both tracks are laid together, the lagging one always laying the next piece (A*, with
each track alone as the bound), so that the least of all is found in this order: broken laps, departures from the bond,
bricks sawn, joints' opening, plumb with other runs, departures where they show least.

A long run is searched without the whole repeats that its middle has to spare; they are put back on both sides of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from heapq import heappop, heappush

from wallplan.bond.one_brick_figures import (
    BROKEN,
    HEADED,
    JOINT,
    OFF_CENTRE,
    ROUNDING,
    Found,
    Grammar,
    Kind,
    Laid,
    Span,
    State,
)
from wallplan.bond.one_brick_pieces import Pieces

SEARCHED = 48
"""Quarters of a stretcher in a run that is searched whole; of a longer one as much, and less than a repeat more."""

REPEAT = {"in turn": 6, "three in turn": 14, "stretchers": 4, "headers": 4}
"""Quarters after which a course repeats."""

NONE = 1 << 200
"""No limit: over any cost."""


def lay_span(grammar: Grammar, span: Span) -> Found:
    """The best two tracks of a run. One that no pieces fill is laid with one piece a course, which breaks a rule."""
    found = lay_under(grammar, span, NONE)
    if found is None:
        tracks = _fill_alone(grammar, span, 0), _fill_alone(grammar, span, 1)
        return Found(tracks, BROKEN * max(1, sum(span.courses)), 0)
    return found


def _fill_alone(grammar: Grammar, span: Span, which: int) -> Laid:
    """One piece, whatever its length, between the headers that other walls give."""
    headers = [(("H", grammar.quarters(2)),) if end.given and end.stretcher != which else () for end in span.ends]
    rest = span.length - grammar.quarters(2) * sum(map(len, headers))
    middle: tuple[tuple[Kind, int], ...] = (("P", rest),) if rest > 0 else ()
    return Laid((*headers[0], *middle, *headers[1]))


def lay_under(grammar: Grammar, span: Span, limit: int) -> Found | None:
    """The best two tracks of a run that cost less than a limit; None where there are none."""
    if not span.ends[0].stretcher:
        return _lay(grammar, span, limit)
    # Odd and even change places, so that runs that differ by that alone are searched once.
    ends = tuple(end._replace(stretcher=1 - end.stretcher) for end in span.ends)
    turned = replace(span, ends=(ends[0], ends[1]), courses=(span.courses[1], span.courses[0]),
                     beside=tuple(one._replace(parity=1 - one.parity) for one in span.beside))
    found = _lay(grammar, turned, limit)
    return None if found is None else found._replace(tracks=(found.tracks[1], found.tracks[0]))


@lru_cache(maxsize=4_096)
def _lay(grammar: Grammar, span: Span, limit: int) -> Found | None:
    best: Found | None = None
    for total in _totals(grammar, span.length):
        under = limit if best is None else best.cost
        found = _search_short(grammar, span, total, under) or _search(grammar, span, total, under)
        best = found if found is not None and found.cost < under else best
    return best


def _totals(grammar: Grammar, length: int) -> list[int]:
    """What pieces may come to: whole quarters that the run's joints make up the difference to, and the run's own length.

    Joints give no more than those of a run of stretchers can, and never over a quarter of a stretcher together.
    """
    quarter, count = grammar.quarters(1), length * 4 // grammar.stretcher
    near = []
    for total in map(grammar.quarters, range(max(1, count - 2), count + 4)):
        joints = -(-total // grammar.stretcher) - 1
        if length - min(joints * grammar.open, quarter) <= total <= length + min(joints * grammar.close, quarter):
            near.append(total)
    near.sort(key=lambda total: abs(total - length))
    return near if any(abs(total - length) <= ROUNDING for total in near) else [*near, length]


def _search_short(grammar: Grammar, span: Span, total: int, limit: int) -> Found | None:
    """A long run searched without its spare repeats; None for a short one, and where they cannot be put back."""
    repeat = max(REPEAT[rule] for rule in grammar.rules)
    spare = (total * 4 // grammar.stretcher - SEARCHED) // repeat
    if spare < 1 or span.covered or span.beside:
        return None
    less = grammar.quarters(spare * repeat)
    found = _search(grammar, replace(span, length=span.length - less), total - less, limit)
    if found is None:
        return None
    tracks = found.tracks
    for back, times in ((False, spare - spare // 2), (True, spare // 2)):
        longer = _put_back([track.pieces[::-1] if back else track.pieces for track in tracks], grammar, repeat, times)
        if longer is None:
            return None
        tracks = (Laid(longer[0][::-1] if back else longer[0]), Laid(longer[1][::-1] if back else longer[1]))
    return found._replace(tracks=tracks)


_Pieces = tuple[tuple[Kind, int], ...]


def _put_back(tracks: Sequence[_Pieces], grammar: Grammar, repeat: int, times: int) -> tuple[_Pieces, _Pieces] | None:
    """Both tracks with so many repeats more near their beginning, where they go on as the bond does."""
    longer, places = list[_Pieces](), list[int]()
    for pieces in tracks:
        begin = 3
        end = begin
        while end < len(pieces) and _length(pieces[begin:end], grammar) < repeat:
            end += 1
        again = pieces[begin:end]
        ahead = pieces[end:end + len(again)]
        if [kind for kind, _ in again] != [kind for kind, _ in ahead] or any(kind in "PC" for kind, _ in again):
            return None
        places.append(_length(pieces[:begin], grammar))
        longer.append((*pieces[:begin], *again * times, *pieces[begin:]))
    return (longer[0], longer[1]) if abs(places[0] - places[1]) <= repeat else None


def _length(pieces: _Pieces, grammar: Grammar) -> int:
    return round(sum(length for _, length in pieces) * 4 / grammar.stretcher)


def _search(grammar: Grammar, span: Span, total: int, limit: int) -> Found | None:
    """The best two tracks that come to ``total``; None where there are none, or none under the limit."""
    pieces, over = Pieces(grammar, span, total), span.length - total
    begins = _begin(grammar, span, total)
    first = pieces.bound(0, begins[0])
    if begins[0] not in first or abs(over) * JOINT + first[begins[0]] >= limit:
        return None
    alone = first, pieces.bound(1, begins[1])
    if begins[1] not in alone[1]:
        return None
    least = abs(over) * JOINT + alone[0][begins[0]] + alone[1][begins[1]]
    heap: list[tuple[int, int, State, State]] = [(least, 0, *begins)]
    cost: dict[tuple[State, State], int] = {begins: abs(over) * JOINT}
    came: dict[tuple[State, State], tuple[tuple[State, State], int, Kind]] = {}
    serial, apart = 0, grammar.lap - ROUNDING
    while heap:
        least, _, odd, even = heappop(heap)
        spent = cost[odd, even]
        if least > spent + alone[0][odd] + alone[1][even]:
            continue
        if least >= limit:
            return None
        if odd[0] >= total and even[0] >= total:
            return Found(_trace((odd, even), came), spent, over)
        which = 0 if odd[0] <= even[0] else 1
        one, other = (odd, even) if which == 0 else (even, odd)
        for move in pieces.after(which, one):
            if move.to not in alone[which]:
                continue
            at = move.to[0]
            short = at < total and 0 < other[0] < total and abs(at - other[0]) < apart
            spends = spent + move.cost + (BROKEN * span.adjoining if short else 0)
            if move.kind == "H" and one[0] and at < total and pieces.is_off_centre(which, at, other):
                spends += OFF_CENTRE * span.adjoining
            after = (move.to, even) if which == 0 else (odd, move.to)
            if spends < cost.get(after, NONE):
                cost[after], came[after] = spends, ((odd, even), which, move.kind)
                serial += 1
                heappush(heap, (spends + alone[0][after[0]] + alone[1][after[1]], -serial, *after))
    return None


def _begin(grammar: Grammar, span: Span, total: int) -> tuple[State, State]:
    """Where the tracks begin: at the left end, and one that no course has laid at the right, so that it is not searched."""
    odd, even = ((total, True, HEADED) if grammar.quoins and not count else (0, False, -1) for count in span.courses)
    return odd, even


def _trace(after: tuple[State, State],
           came: dict[tuple[State, State], tuple[tuple[State, State], int, Kind]]) -> tuple[Laid, Laid]:
    laid: tuple[list[tuple[Kind, int]], list[tuple[Kind, int]]] = ([], [])
    while after in came:
        before, which, kind = came[after]
        laid[which].append((kind, after[which][0] - before[which][0]))
        after = before
    return Laid(tuple(reversed(laid[0]))), Laid(tuple(reversed(laid[1])))
