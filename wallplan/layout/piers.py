"""Piers built into a wall: each course of them in plan, and what of it stands in the wall.

Odd or even courses tie a pier in: the wall ends at its sides, and its own units go through from face to face. In the others
the wall goes on and units stand before and behind it. The tilings are found by ``bond.pier``; here they get their sizes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple

from wallplan.bond.pier import Block, PierBond, PierGrid, bond_pier
from wallplan.layout.corners import Crossing, Stem, WallEnds
from wallplan.layout.pier_rows import PierRow, courses_without, find_pier_rows
from wallplan.layout.runs import LaidRun
from wallplan.layout.spots import Namer, Spot
from wallplan.layout.stock import stock_lengths
from wallplan.plan.coursing import Row
from wallplan.plan.height import MOST_COURSES
from wallplan.plan.job import Masonry, Pier, Wall
from wallplan.plan.pier_sizes import Lattice, find_lattice

ROUNDING = 2
"""Ticks that joints may be off from where they are aimed."""


class PierSpot(NamedTuple):
    """A unit of a pier: as a piece of its course, its side towards the wall's outside face, and what it takes of the ground.

    ``near`` is how far it begins behind the wall's outside face, negative before it; ``along`` and ``deep`` are its extents.
    """

    spot: Spot
    near: int
    along: int
    deep: int


class PierCourses(NamedTuple):
    """A pier's courses, (tied or the wall going on, its units) for each row, no units where it has none, and its bond."""

    pier: Pier
    courses: tuple[tuple[bool, tuple[PierSpot, ...]], ...]
    bond: PierBond
    step: int


class _Places(NamedTuple):
    """A unit's place: left and near sides, extents, and its own length."""

    left: int
    near: int
    along: int
    deep: int
    length: int


def find_stems(wall: Wall, masonry: Masonry, rows: tuple[Row, ...] = (), plain: tuple[int, ...] = ()) -> tuple[Stem, ...]:
    """What the piers of a wall take of it in the courses that tie them in; () for none.

    ``plain`` are the right ends of the wall's own units at head joints in the other courses, where it is bonded already.
    Raises ValueError for a pier that no units fill, which the plan room lets no plan have.
    """
    stems = []
    for pier in wall.piers:
        grid, lattice = _grid_of(pier, masonry)
        clear = tuple(column for column in range(1, grid.columns) if any(
            abs(pier.left + lattice.size(column) - at) < masonry.least_lap - ROUNDING for at in plain))
        grid = replace(grid, kept_clear=clear)
        tied = [(block, _place(block, pier, (0, grid.rows, -pier.front, _depth(pier, masonry)), grid, (lattice, masonry)))
                for block in _bond(pier, grid).tied]
        within = [place for block, place in tied if block.row < grid.back and block.row + block.rows > grid.front]
        seen = sorted({(place.left, place.left + place.along) for place in within
                       if place.near <= masonry.tightest_joint < place.near + place.deep})
        inner = sorted({place.left + place.along for place in within} - {pier.right})
        but = courses_without(find_pier_rows(wall, masonry, rows, pier))
        stems.append(Stem(pier.left, pier.width, pier.name, tuple(seen), tuple(inner), but, clear))
    return tuple(stems)


def bond_to_wall(ends: WallEnds, wall: Wall, masonry: Masonry, runs: Iterable[LaidRun]) -> WallEnds:
    """The ends of a wall that was bonded first, its piers bonded to it so that their joints keep a lap from the wall's."""
    parity = next((crossing.parity for crossing in ends.crossings), None)
    if parity is None or not wall.piers:
        return ends
    plain = {left + length for run in runs if run.courses & _courses_of(1 - parity)
             for left, length in run.pieces[:-1]}
    stems = {stem.name: stem for stem in find_stems(wall, masonry, plain=tuple(sorted(plain)))}
    return ends._replace(crossings=tuple(
        crossing._replace(seen=stem.seen, inner=stem.inner, kept_clear=stem.kept_clear)
        if (stem := stems.get(crossing.other)) else crossing for crossing in ends.crossings))


def _courses_of(parity: int) -> int:
    """The odd (0) or even courses as bits."""
    return sum(1 << number for number in range(2 - (1 - parity), MOST_COURSES + 1, 2))


def lay_piers(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], crossings: tuple[Crossing, ...],
              namer: Namer) -> tuple[PierCourses, ...]:
    """Every pier of a wall course by course; () for none. ``crossings`` say in which courses piers are tied in."""
    own = {crossing.other: crossing for crossing in crossings}
    return tuple(_lay_pier(pier, masonry, (rows, find_pier_rows(wall, masonry, rows, pier)), own[pier.name], namer)
                 for pier in wall.piers if pier.name in own)


def _lay_pier(pier: Pier, masonry: Masonry, found: tuple[tuple[Row, ...], tuple[PierRow | None, ...]], crossing: Crossing,
              namer: Namer) -> PierCourses:
    grid, lattice = _grid_of(pier, masonry)
    grid, parity = replace(grid, kept_clear=crossing.kept_clear), crossing.parity
    bond = _bond(pier, grid)
    known: dict[tuple[int, int, bool], tuple[PierSpot, ...]] = {}
    courses = list[tuple[bool, tuple[PierSpot, ...]]]()
    for row, here in zip(*found, strict=True):
        if here is None:
            courses.append((False, ()))
            continue
        tied = 1 - row.number % 2 == parity
        alike = *here, tied
        if alike not in known:
            places = _places(pier, bond, tied, grid, (lattice, masonry))
            known[alike] = tuple(_stand(place, here, namer) for place in places)
        courses.append((tied, known[alike]))
    return PierCourses(pier, tuple(courses), bond, lattice.step)


def count_pier_cuts(courses: PierCourses, masonry: Masonry) -> int:
    """Cutting in all courses of a pier: a cut counts one, one shorter than half a unit two."""
    return sum(2 if 2 * (one.spot.length + masonry.joint) < masonry.module else 1
               for _, units in courses.courses for one in units if one.spot.piece == "cut")


def _stand(place: _Places, row: PierRow, namer: Namer) -> PierSpot:
    name = namer.name(place.length, row.height)
    spot = Spot(place.left, place.length, row.rise, row.height, name, "stretcher", None)
    return PierSpot(spot, place.near, place.along, place.deep)


def _grid_of(pier: Pier, masonry: Masonry) -> tuple[PierGrid, Lattice]:
    lattice = find_lattice(masonry)
    if lattice is None:
        raise ValueError(f"no pier of {masonry.unit.key} bonds")
    columns, rows = (lattice.count(size) or 0 for size in (pier.width, _depth(pier, masonry)))
    spare = rows - lattice.thick
    front = spare // 2 if pier.front and pier.back else spare if pier.front else 0
    free = tuple(sorted(cells for length in stock_lengths(masonry)
                        if (cells := (length + masonry.joint) // lattice.step)
                        and lattice.size(cells) == length))
    return PierGrid(columns, rows, front, lattice.thick, lattice.wide, lattice.full, free), lattice


def _bond(pier: Pier, grid: PierGrid) -> PierBond:
    bond = bond_pier(grid) or bond_pier(replace(grid, ties=False))
    if bond is None:
        raise ValueError(f"no units fill pier {pier.name}")
    return bond


def _depth(pier: Pier, masonry: Masonry) -> int:
    return pier.front + masonry.thickness + pier.back


def _places(pier: Pier, bond: PierBond, tied: bool, grid: PierGrid, sizes: tuple[Lattice, Masonry]) -> Iterator[_Places]:
    """The units of a course in plan: of the whole pier, or of what stands before and behind the wall."""
    masonry = sizes[1]
    whole = (0, grid.rows, -pier.front, _depth(pier, masonry))
    before = (0, grid.front, -pier.front, pier.front - masonry.joint)
    behind = (grid.back, grid.rows - grid.back, masonry.thickness + masonry.joint, pier.back - masonry.joint)
    for block in bond.tied if tied else bond.plain:
        yield _place(block, pier, whole if tied else before if block.row < grid.front else behind, grid, sizes)


def _place(block: Block, pier: Pier, part: tuple[int, int, int, int], grid: PierGrid,
           sizes: tuple[Lattice, Masonry]) -> _Places:
    """A block with its sizes. ``part``: the first row and how many, where they begin and how deep they are in ticks."""
    (lattice, masonry), (first, rows, begin, depth) = sizes, part
    lies_along = block.rows == grid.wide
    cells = block.columns if lies_along else block.rows
    length = masonry.unit.length if cells == grid.full else lattice.size(cells)
    along, deep = (length, masonry.unit.thickness) if lies_along else (masonry.unit.thickness, length)
    left = pier.left + _shift(block.column, grid.columns - block.columns, pier.width - along)
    near = begin + _shift(block.row - first, rows - block.rows, depth - deep)
    return _Places(left, near, along, deep, length)


def _shift(cell: int, cells: int, room: int) -> int:
    """How far in a unit stands, of so much room for so many cells: even, so that it meets the faces on both sides."""
    return room * cell // cells if cells else 0
