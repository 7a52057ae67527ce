"""A pier of two courses as a constraint model: every unit that could lie anywhere is a yes or no, for OR-tools CP-SAT.

Written from the words of ``bond.pier`` alone, with no code of it: cells are covered once, an edge is a joint where no unit lies
over it, and two joints meet where both courses have one there.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from ortools.sat.python import cp_model

Cell = tuple[int, int]


class Unit(NamedTuple):
    """A unit that may lie with its upper left cell at (column, row)."""

    column: int
    row: int
    columns: int
    rows: int
    cuts: int
    bat: int

    @property
    def cells(self) -> set[Cell]:
        """What it covers."""
        return {(c, r) for c in range(self.column, self.column + self.columns) for r in range(self.row, self.row + self.rows)}


class Sizes(NamedTuple):
    """A pier: cells across and through, where the wall begins and how thick it is, unit width and length, free lengths."""

    columns: int
    rows: int
    front: int
    thick: int
    wide: int
    full: int
    free: tuple[int, ...]


def _units(sizes: Sizes, first: int, last: int) -> list[Unit]:
    """Every unit that fits between two rows."""
    found = set()
    for length in range(1, sizes.full + 1):
        bat = int(length != sizes.full and length in sizes.free)
        cuts = 0 if length == sizes.full or bat else 2 if 2 * length < sizes.full else 1
        for columns, rows in ((length, sizes.wide), (sizes.wide, length)):
            found |= {Unit(c, r, columns, rows, cuts, bat)
                      for c in range(sizes.columns - columns + 1) for r in range(first, last - rows + 1)}
    return sorted(found)


class _Course:
    """One course in a model."""

    def __init__(self, model: cp_model.CpModel, sizes: Sizes, parts: list[tuple[int, int]]) -> None:
        self.units = [unit for part in parts for unit in _units(sizes, *part)]
        self.laid = {unit: model.new_bool_var("") for unit in self.units}
        for first, last in parts:
            for cell in ((c, r) for c in range(sizes.columns) for r in range(first, last)):
                model.add_exactly_one(var for unit, var in self.laid.items() if cell in unit.cells)

    def over(self, one: Cell, other: Cell) -> Any:
        """1 where one unit lies over both cells, that is where there is no joint between them."""
        return sum(var for unit, var in self.laid.items() if {one, other} <= unit.cells)


def solve(sizes: Sizes) -> tuple[int, int, int, int, int] | None:
    """Edges where a joint shows over a joint on a face, cuts, bats, joints' edges in the wall, edges inside: least in that
    order; None where nothing can be laid."""
    model = cp_model.CpModel()
    back = sizes.front + sizes.thick
    tied = _Course(model, sizes, [(0, sizes.rows)])
    plain = _Course(model, sizes, [part for part in ((0, sizes.front), (back, sizes.rows)) if part[0] < part[1]])
    for plane in (sizes.front, back):
        if 0 < plane < sizes.rows:
            model.add(3 * sum(tied.over((c, plane - 1), (c, plane)) for c in range(sizes.columns)) >= sizes.columns)
    faces, inside, across = [], [], []
    for (one, other), on_face in _edges(sizes):
        joint = 1 - tied.over(one, other)
        if one[1] == other[1] and sizes.front <= one[1] < back:
            across.append(joint)
        below = _joint_below(plain, sizes, one, other)
        both = model.new_bool_var("")
        model.add(both >= joint + below - 1)
        (faces if on_face else inside).append(both)
    laid = [(unit, var) for course in (tied, plain) for unit, var in course.laid.items()]
    counts = (sum(faces), sum(unit.cuts * var for unit, var in laid), sum(unit.bat * var for unit, var in laid), sum(across),
              sum(inside))
    reached = []
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    for count in counts:
        model.minimize(count)
        if solver.solve(model) != cp_model.OPTIMAL:
            return None
        reached.append(round(solver.objective_value))
        model.add(count == reached[-1])
    return reached[0], reached[1], reached[2], reached[3], reached[4]


def _joint_below(plain: _Course, sizes: Sizes, one: Cell, other: Cell) -> Any:
    """Whether the course in which the wall goes on has a joint between two cells; along the wall's faces it has."""
    back = sizes.front + sizes.thick
    in_wall = [sizes.front <= row < back for _, row in (one, other)]
    if all(in_wall):
        return 0
    return 1 if any(in_wall) else 1 - plain.over(one, other)


def _edges(sizes: Sizes) -> list[tuple[tuple[Cell, Cell], bool]]:
    """Every pair of neighbouring cells, and whether a joint between them shows on a face."""
    across = [(((c, r), (c + 1, r)), r in (0, sizes.rows - 1)) for c in range(sizes.columns - 1) for r in range(sizes.rows)]
    along = [(((c, r), (c, r + 1)), c in (0, sizes.columns - 1)) for c in range(sizes.columns) for r in range(sizes.rows - 1)]
    return across + along
