"""Layout -> what is sawn from what: every cut of the job nested into units of its kind."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import hypot
from typing import NamedTuple, cast

from wallplan.catalogue.unit import Unit
from wallplan.layout.model import Layout, Piece, Shape, WallLayout
from wallplan.lists.order.counted import pieces_in
from wallplan.lists.order.line import Sawing, Sawn
from wallplan.lists.order.nesting import Nesting, nest
from wallplan.lists.order.patterns import PLAIN, Pattern, Sort, Stock, fits, loss
from wallplan.lists.sawn_size import TOGETHER
from wallplan.plan.job import Job

CLOSER: Shape = "closer"
"""A brick ripped along its length: what it is sawn from is as long as the brick is thick."""

CROSS_SECTIONS = ("bond beam", "lintel")
"""Shapes whose units are hollowed otherwise than a stretcher: their cuts come from their own kind alone."""


class _Kind(NamedTuple):
    """What is sawn together: the shape of the unit's cross-section, half-high or not, the height of a rip or None."""

    section: str
    half_high: bool
    rip: int | None


class _Cut(NamedTuple):
    name: str
    length: int
    ends: int
    shape: str
    pair: int = 0


def nest_cuts(layout: Layout) -> tuple[Sawing, ...]:
    """Every sawn piece of the job, nested; () where nothing is sawn. Ripped pieces stand apart, a height at a time."""
    found: dict[_Kind, Counter[_Cut]] = {}
    for kind, cut in _find_cuts(layout):
        found.setdefault(kind, Counter())[cut] += 1
    for cuts in found.values():
        _pair_raked(cuts, layout.job)
    return tuple(_nest_kind(kind, found[kind], layout.job) for kind in sorted(found, key=str))


def _pair_raked(cuts: Counter[_Cut], job: Job) -> None:
    """Take two raked cuts of one mark as one cut, where a unit sawn once on the slope gives both: the second is turned
    upside down, its bottom to the top, so that bottom, top and kerf lie side by side."""
    for cut in [cut for cut in cuts if 0 < cut.pair <= job.masonry.unit.length]:
        count = cuts.pop(cut)
        cuts[_Cut(f"{cut.name}{TOGETHER}{cut.name}", cut.pair, cut.ends, cut.shape)] += count // 2
        cuts[cut._replace(pair=0)] += count % 2
    for cut in [cut for cut, count in cuts.items() if not count]:
        del cuts[cut]


def name_unit(job: Job, piece: str, shape: str, half_high: bool) -> str:
    """The name of a unit on the order: ``block-8 full``, ``block-8 half, corner``, ``block-8 half-high full``."""
    name = f"{job.masonry.unit.key} {'half-high ' if half_high else ''}{piece}"
    return name if shape in (PLAIN, "header", CLOSER) else f"{name}, {shape}"


def is_half_high(piece: Piece, job: Job) -> bool:
    """True for a unit of the family's half height."""
    return piece.height == job.masonry.unit.half_high


def sawn_shape(piece: Piece, job: Job) -> Shape:
    """The shape of the unit that a cut needs: its own, but any solid unit will do for another."""
    if piece.shape == CLOSER:
        return piece.shape
    return PLAIN if job.masonry.unit.solid and piece.shape not in CROSS_SECTIONS else piece.shape


def _find_cuts(layout: Layout) -> Iterator[tuple[_Kind, _Cut]]:
    unit = layout.job.masonry.unit
    broken = {stock.name for stock in unit.pieces if stock.sawn}
    for wall in layout.walls:
        ends = _seen_ends(wall)
        for course in wall.courses:
            for piece in pieces_in(course, wall):
                if piece.shape == CLOSER:
                    yield _Kind(CLOSER, False, None), _Cut(piece.mark or CLOSER, piece.length, 0, PLAIN)
                elif piece.shape != "precast" and (piece.piece == "cut" or piece.piece in broken):
                    half_high = is_half_high(piece, layout.job)
                    whole = half_high or piece.height == unit.height or piece.rake is not None
                    rip = None if whole else piece.height
                    yield _Kind(_section(piece), half_high, rip), _sort_cut(piece, ends, unit, layout.job.order.kerf)


def _section(piece: Piece) -> str:
    return piece.shape if piece.shape in CROSS_SECTIONS else PLAIN


def _seen_ends(wall: WallLayout) -> frozenset[int]:
    """Where ends are seen: the wall's ends and the jambs. The ends beside a control joint take their groove."""
    jambs = (jamb for opening in wall.wall.openings for jamb in (opening.left, opening.right))
    return frozenset((0, wall.wall.length, *jambs))


def _sort_cut(piece: Piece, seen: frozenset[int], unit: Unit, kerf: int) -> _Cut:
    """A cut a hair longer than its unit (a joint's rounding) is the unit's length. A solid unit shows a sound end anywhere.

    A piece seen at both ends has one of them sawn whatever is done, and takes one finished end for the other.
    """
    longest, solid = unit.length, unit.solid
    length = min(piece.length, longest)
    name = piece.mark or piece.piece
    if solid or piece.shape in CROSS_SECTIONS:
        return _Cut(name, length, 0, PLAIN, _measure_pair(piece, kerf))
    uncut = length == longest and not seen.isdisjoint((piece.left, piece.right))
    shown = 2 if uncut else 1 if piece.shape != PLAIN or not seen.isdisjoint((piece.left, piece.right)) else 0
    return _Cut(name, length, shown, piece.shape, _measure_pair(piece, kerf) if shown == 0 else 0)


def _measure_pair(piece: Piece, kerf: int) -> int:
    """What two raked cuts take of a unit's length, one upside down beside the other; 0 for what is not raked on one side."""
    if piece.rake is None or piece.hand == "ridge":
        return 0
    run = piece.length - piece.rake.top_length
    rise = max(piece.height - min(piece.rake.left, piece.rake.right), 1)
    return piece.length + piece.rake.top_length + round(kerf * hypot(run, rise) / rise)


def _nest_kind(kind: _Kind, cuts: Counter[_Cut], job: Job) -> Sawing:
    unit, kerf = job.masonry.unit, job.order.kerf
    sorts = [Sort(cut.name, cut.length, cut.ends, cut.shape, count) for cut, count in sorted(cuts.items())]
    nesting = nest(Stock(unit.thickness if kind.section == CLOSER else unit.length, kerf), sorts)
    strips = 1 if kind.rip is None else max(1, (unit.height + kerf) // (kind.rip + kerf))
    sawn = tuple(_saw(kind, nesting, pattern, times, unit) for pattern, times in nesting.patterns)
    return Sawing(kind.half_high, kind.rip, strips, nesting, sawn)


def _saw(kind: _Kind, nesting: Nesting, pattern: Pattern, times: int, unit: Unit) -> Sawn:
    """One pattern, from the shortest length that the family moulds and that it fits: a full, or perhaps a half."""
    sorts = [sort for sort, n in zip(nesting.sorts, pattern, strict=True) for _ in range(n)]
    sorts.sort(key=lambda sort: sort.shape == PLAIN)  # a corner cut first: it is why the unit is a corner unit
    kinds = tuple((sort.name, cast("Shape", sort.shape if kind.section == PLAIN else kind.section)) for sort in sorts)
    shape = nesting.shape_of(pattern) if kind.section == PLAIN else kind.section
    if kind.section == CLOSER:
        return Sawn(kinds, times, unit.pieces[0].name, shape, unit.thickness, *loss(nesting.stock, nesting.sorts, pattern))
    moulded = [piece for piece in unit.pieces if kind.rip is None and not piece.sawn]
    fitting = [piece for piece in moulded if fits(Stock(piece.length, nesting.stock.kerf), nesting.sorts, pattern)]
    piece = min(fitting, key=lambda stock: stock.length, default=unit.pieces[0])
    return Sawn(kinds, times, piece.name, shape, piece.length,
                *loss(Stock(piece.length, nesting.stock.kerf), nesting.sorts, pattern))
