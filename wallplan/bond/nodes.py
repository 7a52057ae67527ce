"""Nodes of a track: a head joint of the pattern, with what becomes of it beside the ends of the runs it meets."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Literal, NamedTuple

from wallplan.bond.cost import BROKEN, LAP
from wallplan.bond.figures import Stretch, Terms

Side = Literal["start", "end"]
Move = tuple[Side, int, int | None]
"""Which end of a run, where it is, and where the joint goes: None drops it, its own place leaves a sliver."""


class Node(NamedTuple):
    """A joint of one track's pattern. ``parts`` are where it stands in which courses (bits)."""

    at: int
    parts: tuple[tuple[int, int], ...]
    moves: tuple[Move, ...]
    fixed: bool

    @property
    def moved(self) -> bool:
        """True where some course has it elsewhere than at ``at``."""
        return any(place != self.at for place, _ in self.parts)

    def moved_to(self, side: Side, end: int) -> int | None:
        """Where the joint goes in runs with this end; None where it is dropped."""
        return next((place for s, e, place in self.moves if s == side and e == end), None)


def nearness(terms: Terms, stretch: Stretch, at: int) -> Side | None:
    """The end of a run to which a joint inside it is closer than the least piece; the right one goes first."""
    if 0 < stretch.end - at < terms.least:
        return "end"
    return "start" if 0 < at - stretch.start < terms.least else None


class Near(NamedTuple):
    """Runs (bits) to whose start or end a node is nearer than the least piece; of them those that have its joint."""

    starts: int = 0
    ends: int = 0
    jointed_starts: int = 0
    jointed_ends: int = 0


def find_near(terms: Terms, stretches: tuple[Stretch, ...], node: Node) -> Near:
    """What a node is near to; a node that has no moves is near nothing."""
    starts = ends = jointed_starts = jointed_ends = 0
    for number, stretch in enumerate(stretches if node.moves else ()):
        side = nearness(terms, stretch, node.at) if stretch.start < node.at < stretch.end else None
        jointed = side is not None and joint_in(terms, node, stretch) is not None
        if side == "start":
            starts, jointed_starts = starts | 1 << number, jointed_starts | jointed << number
        elif side == "end":
            ends, jointed_ends = ends | 1 << number, jointed_ends | jointed << number
    return Near(starts, ends, jointed_starts, jointed_ends)


def doubles(here: Near, there: Near) -> bool:
    """Whether a run would have joints of two nodes beside one end, which only slivers allow: one in a piece counted whole.

    The later node beside a start has its joint, the earlier one beside an end.
    """
    return bool(here.ends & there.jointed_ends or here.jointed_starts & there.starts)


def joint_in(terms: Terms, node: Node, stretch: Stretch) -> int | None:
    """Where a node's joint stands in a run; None where it has none there."""
    if node.fixed or not stretch.start < node.at < stretch.end:
        return None
    side = nearness(terms, stretch, node.at)
    if side is None:
        return node.at
    return node.moved_to(side, stretch.end if side == "end" else stretch.start)


def points_after(terms: Terms, node: Node, stretch: Stretch) -> tuple[int, ...]:
    """Where the piece that follows a node begins in a run, and joints before it that the node stands for; () for none."""
    if node.at <= stretch.start:
        return (stretch.start,)
    side, place = nearness(terms, stretch, node.at), joint_in(terms, node, stretch)
    if node.at >= stretch.end or side == "end":
        return ()
    if side == "start":
        return (stretch.start,) if place is None else (stretch.start, place)
    return (node.at,)


def points_before(terms: Terms, node: Node, stretch: Stretch) -> tuple[int, ...]:
    """Where the piece before a node ends in a run, as ``points_after``; () where the node ends none."""
    if node.at >= stretch.end:
        return (stretch.end,)
    side, place = nearness(terms, stretch, node.at), joint_in(terms, node, stretch)
    if node.at <= stretch.start or side == "start":
        return ()
    if side == "end":
        return (stretch.end,) if place is None else (place, stretch.end)
    return (node.at,)


def make_nodes(terms: Terms, stretches: tuple[Stretch, ...], fixed: tuple[int, ...], at: int,
               relaxed: bool, end_pieces: tuple[int, ...]) -> Iterator[Node]:
    """Every node at one position: one, or one for each choice of where the joint goes beside near ends.

    Beside a fixed end it can only go: were it to stand elsewhere, the whole pattern would have it there. Beside others it
    may leave one of ``end_pieces``. ``relaxed`` lets it stay, leaving a piece under the least.
    """
    within = [s for s in stretches if s.start < at < s.end]
    near = {(side, s.end if side == "end" else s.start) for s in within if (side := nearness(terms, s, at))}
    choices = [
        [(side, end, place) for place in _places(at, side, end, relaxed, end_pieces if relaxed or end not in fixed else ())]
        for side, end in sorted(near)
    ]
    return (_node(terms, within, at, moves) for moves in product(*choices))


def _places(at: int, side: Side, end: int, relaxed: bool, end_pieces: tuple[int, ...]) -> list[int | None]:
    """Where a joint too near an end may go: away, or so far from the end that one of these pieces is left."""
    inward = -1 if side == "end" else 1
    return [None, *(end + inward * piece for piece in end_pieces), *([at] if relaxed else [])]


def _node(terms: Terms, within: list[Stretch], at: int, moves: tuple[Move, ...]) -> Node:
    bare = Node(at, (), moves, fixed=False)
    parts: dict[int, int] = {}
    for stretch in within:
        place = joint_in(terms, bare, stretch)
        if place is not None and stretch.start < place < stretch.end:
            parts[place] = parts.get(place, 0) | stretch.courses
    return Node(at, tuple(sorted(parts.items())), moves, fixed=False)


def crowd(node: Node, kept_clear: tuple[tuple[int, int], ...], bridged: tuple[tuple[int, int], ...], lap: int) -> int:
    """What it costs that a joint stands nearer than a lap to places kept clear, or bridged, in some of its courses."""
    return sum((BROKEN if hard else LAP * (lap - abs(place - at))) * (mask & courses).bit_count()
               for hard, spots in ((True, kept_clear), (False, bridged))
               for at, courses in spots for place, mask in node.parts if abs(place - at) < lap)
