"""Layout -> saw list: what is cut, how many, from which unit, and which offcut serves which cut: the order's own nesting."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

from wallplan.layout.model import Layout, Piece, Shape, WallLayout
from wallplan.lists.sawn_size import TOGETHER, count_hands
from wallplan.plan.job import Job

if TYPE_CHECKING:
    from wallplan.lists.order.line import Sawing, Sawn


@dataclass(frozen=True)
class Cut:
    """One line of the saw list: all pieces of a job with one mark and one shape. Lengths in ticks.

    ``height`` is None where the unit keeps its height. ``stock`` names the unit that most are sawn from. ``offcut`` is what
    such a cut leaves of that, nought where all come from what others leave; ``serves`` names the cuts that are sawn from
    what is left of these units, None where none are, and ``served`` is how many of this line come from what others left.
    ``sample`` is one of the pieces, the left one of raked pairs; ``hands`` are how many are raked to the left and right.
    """

    mark: str
    length: int
    height: int | None
    shape: Shape
    stock: str
    count: int
    walls: tuple[str, ...]
    courses: tuple[int, ...]
    offcut: int
    serves: str | None
    served: int
    sample: Piece | None = None
    hands: tuple[int, int] = (0, 0)


class WallCut(NamedTuple):
    """A cut of one wall: a piece of it, how many are in the wall; ``offcut``: whether the job saws some from offcuts.

    ``hands`` are how many are raked to the left and to the right.
    """

    mark: str
    piece: Piece
    times: int
    offcut: bool
    hands: tuple[int, int] = (0, 0)


@dataclass
class _Way:
    """How a line's pieces come about: from which units, in what is left of others, and what is left for others."""

    units: Counter[tuple[str, int]] = field(default_factory=Counter)
    beside: Counter[tuple[str, int]] = field(default_factory=Counter)
    serves: Counter[str] = field(default_factory=Counter)
    served: int = 0


def list_cuts(layout: Layout, sawings: tuple[Sawing, ...] | None = None) -> tuple[Cut, ...]:
    """The saw list, one saw setting after the other, the longest first; () where nothing is cut.

    ``sawings`` is how the job's cuts are nested where that is known already; else they are nested here.
    """
    from wallplan.lists.order.sawing import nest_cuts, sawn_shape

    groups: dict[tuple[str, Shape], list[tuple[str, int, Piece]]] = {}
    for wall, course, piece in _marked(layout.walls):
        groups.setdefault((piece.mark or "", sawn_shape(piece, layout.job)), []).append((wall, course, piece))
    if not groups:
        return ()
    ways = _find_ways(nest_cuts(layout) if sawings is None else sawings)
    lines = [_list_group(mark, shape, pieces, ways.get((mark, shape), _Way()), layout.job)
             for (mark, shape), pieces in groups.items()]
    return tuple(sorted(lines, key=lambda cut: (len(cut.mark), cut.mark, cut.shape)))


def list_wall_cuts(wall: WallLayout, cuts: Iterable[Cut]) -> tuple[WallCut, ...]:
    """The cuts of one wall in the order of their letters; () where nothing is sawn. ``cuts`` is the job's saw list."""
    spared = {cut.mark for cut in cuts if cut.served}
    found: dict[str, list[Piece]] = {}
    for _, _, piece in _marked((wall,)):
        found.setdefault(piece.mark or "", []).append(piece)
    return tuple(WallCut(mark, found[mark][0], len(found[mark]), mark in spared, count_hands(found[mark]))
                 for mark in sorted(found, key=lambda mark: (len(mark), mark)))


def count_pieces(layout: Layout) -> Counter[tuple[str, Shape, int]]:
    """How many pieces of each name, shape and height are laid; cuts go by their mark, precast by its length's name."""
    return Counter(
        (f"cut {piece.mark}" if piece.mark else piece.piece, piece.shape, piece.height)
        for wall in layout.walls for course in wall.courses for piece in (*course.bricks, *wall.pier_pieces(course.number))
        if piece.shape != "return"
    )


def _marked(walls: Sequence[WallLayout]) -> Iterator[tuple[str, int, Piece]]:
    return ((wall.wall.name, course.number, piece)
            for wall in walls for course in wall.courses for piece in (*course.bricks, *wall.pier_pieces(course.number))
            if piece.mark is not None)


def _find_ways(sawings: Iterable[Sawing]) -> dict[tuple[str, str], _Way]:
    """How the pieces of each mark and shape come about, over all patterns."""
    ways: dict[tuple[str, str], _Way] = {}
    for sawing in sawings:
        for sawn in sawing.sawn:
            unit = f"half-high {sawn.piece}" if sawing.half_high else sawn.piece, sawn.length
            first, *rest = ((name.split(TOGETHER), shape) for name, shape in sawn.kinds)
            way = ways.setdefault((first[0][0], first[1]), _Way())
            way.units[unit] += sawn.times
            for (mark, *also), shape in rest:
                way.serves[mark] += sawn.times
                small = ways.setdefault((mark, shape), _Way())
                small.served += sawn.times * (1 + len(also))
                small.beside[unit] += sawn.times
    return ways


def _list_group(mark: str, shape: Shape, pieces: list[tuple[str, int, Piece]], way: _Way, job: Job) -> Cut:
    unit = job.masonry.unit
    length, height = max(piece.length for *_, piece in pieces), max(piece.height for *_, piece in pieces)
    (stock, stock_length), _ = max((way.units or way.beside).items(), key=lambda found: found[1],
                                   default=((unit.pieces[0].name, unit.length), 0))
    left = stock_length - length - job.order.kerf if way.units else 0
    laid = sorted((piece for *_, piece in pieces), key=lambda piece: piece.hand or "")
    whole = height in (unit.height, unit.half_high) or laid[0].rake is not None
    return Cut(
        mark, length, None if whole else height, shape, stock, len(pieces),
        tuple(dict.fromkeys(wall for wall, *_ in pieces)), tuple(sorted({course for _, course, _ in pieces})),
        max(0, left), ", ".join(sorted(way.serves, key=_alphabet)) or None, way.served,
        laid[0], count_hands(laid),
    )


def _alphabet(mark: str) -> tuple[int, str]:
    return len(mark), mark


def tell_sawn(sawn: Sawn) -> str:
    """What one unit is sawn into, in the order in which it is sawn: ``A + B``."""
    return " + ".join(name for name, _ in sawn.kinds)
