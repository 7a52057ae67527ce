"""Layout -> saw list: what is cut, how many, from which unit, and which offcut serves which cut."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from wallplan.layout.model import Layout, Piece, Shape
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.job import Masonry

KERF = TICKS_PER_INCH // 8
"""Width of a wet saw's cut, 1/8 in (3.2 mm); common practice, no source."""


@dataclass(frozen=True)
class Cut:
    """One line of the saw list: all pieces of a job with one mark and one shape. Lengths in ticks.

    ``height`` is None where the unit keeps its height. ``stock`` names the piece it is sawn from. ``offcut`` is what is
    left of that in length; ``serves`` is the mark of the cut that can be sawn from it, None where none can, and
    ``served`` how many pieces of this line come from other lines' offcuts.
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


def list_cuts(layout: Layout) -> tuple[Cut, ...]:
    """The saw list, one saw setting after the other, the longest first; () where nothing is cut."""
    masonry = layout.job.masonry
    groups: dict[tuple[str, Shape], list[tuple[str, int, Piece]]] = {}
    for wall in layout.walls:
        for course in wall.courses:
            for piece in course.pieces:
                if piece.mark is not None:
                    groups.setdefault((piece.mark, piece.shape), []).append((wall.wall.name, course.number, piece))
    lines = [_list_group(mark, shape, pieces, masonry) for (mark, shape), pieces in groups.items()]
    return _pair_offcuts(sorted(lines, key=lambda cut: (len(cut.mark), cut.mark, cut.shape)), masonry)


def count_pieces(layout: Layout) -> Counter[tuple[str, Shape, int]]:
    """How many pieces of each name, shape and height are laid; cuts go by their mark, precast by its length's name."""
    return Counter(
        (f"cut {piece.mark}" if piece.mark else piece.piece, piece.shape, piece.height)
        for wall in layout.walls for course in wall.courses for piece in course.pieces if piece.shape != "return"
    )


def _list_group(mark: str, shape: Shape, pieces: list[tuple[str, int, Piece]], masonry: Masonry) -> Cut:
    unit = masonry.unit
    length, height = max(piece.length for *_, piece in pieces), max(piece.height for *_, piece in pieces)
    stock, stock_length = _pick_stock(length, masonry)
    if height == unit.half_high:
        stock = f"half-high {stock}"
    return Cut(
        mark, length, None if height in (unit.height, unit.half_high) else height, shape, stock, len(pieces),
        tuple(dict.fromkeys(wall for wall, *_ in pieces)), tuple(sorted({course for _, course, _ in pieces})),
        max(0, stock_length - length - KERF), None, 0,
    )


def _pick_stock(length: int, masonry: Masonry) -> tuple[str, int]:
    """The shortest stock length that the family moulds and that is long enough; ticks."""
    fitting = [piece for piece in masonry.unit.pieces if piece.length >= length - TICKS_PER_MM and not piece.sawn]
    best = min(fitting, key=lambda piece: piece.length, default=masonry.unit.pieces[0])
    return best.name, best.length


def _pair_offcuts(lines: list[Cut], masonry: Masonry) -> tuple[Cut, ...]:
    """Give each line's offcuts to the longest cut that they can be sawn into.

    A hollow unit's offcut has one open end, so it serves only where no end is seen: between stretchers. A brick's does
    anywhere. Ripped pieces are left alone.
    """
    wanted = {index: cut.count for index, cut in enumerate(lines)}
    served = dict.fromkeys(wanted, 0)
    paired = dict[int, str]()
    for index, cut in enumerate(lines):
        for other, small in enumerate(lines):
            if wanted[index] and wanted[other] and _can_serve(cut, small, masonry, same=index == other):
                taken = min(wanted[index], wanted[other]) if index != other else wanted[index] // 2
                if taken:
                    paired[index] = small.mark
                    wanted[other] -= taken
                    wanted[index] -= taken
                    served[other] += taken
                    break
    return tuple(
        replace(cut, serves=paired.get(index), served=served[index]) for index, cut in enumerate(lines)
    )


def _can_serve(cut: Cut, small: Cut, masonry: Masonry, *, same: bool) -> bool:
    plain = masonry.unit.solid or (cut.shape == small.shape == "stretcher")
    fits = small.length <= cut.offcut and (same or small.length <= cut.length)
    return plain and fits and cut.height is None and small.height is None
