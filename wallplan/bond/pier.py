"""The courses of a pier in plan: two tilings of one rectangle, the one above the other, on a grid of quarter units.

Numbers only: columns run along the wall and rows through it. One course ties the pier in: its units take the whole
rectangle. In the other the wall goes on through the middle rows, and units stand before and behind it. Both are filled cell
by cell and together, so that each joint is held against those of the other course when it is made.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

FACE, CUT, BAT, WALL, INNER = 10**12, 10**9, 10**6, 10**3, 1
"""What counts, the first before all that follow: a joint over a joint on a face; a cut (a short one twice); a bat that is no
cut; a joint across the rows where the wall goes on, to the edge of a cell; a joint over a joint inside, to the edge."""


@dataclass(frozen=True)
class PierGrid:
    """A pier of ``columns`` by ``rows`` cells. The wall takes ``thick`` rows from row ``front`` on.

    Units are ``wide`` cells wide and up to ``full`` long; ``free`` are the lengths that cost no cut, in cells.
    ``kept_clear`` are columns before which the wall has joints where it goes on: a joint there, within the wall's rows,
    counts as one that shows over a joint. ``ties`` False does without units that cross the wall's faces.
    """

    columns: int
    rows: int
    front: int
    thick: int
    wide: int
    full: int
    free: tuple[int, ...]
    kept_clear: tuple[int, ...] = ()
    ties: bool = True

    @property
    def back(self) -> int:
        """The first row behind the wall."""
        return self.front + self.thick


class Block(NamedTuple):
    """A unit in plan: its first column and row, how many it takes, in cells."""

    column: int
    row: int
    columns: int
    rows: int


class PierBond(NamedTuple):
    """Both courses of a pier: the one that ties it in, and the one in which the wall goes on between ``plain`` units.

    ``cost`` is in the measure of FACE to INNER; ``proven`` is False where less was not ruled out.
    """

    tied: tuple[Block, ...]
    plain: tuple[Block, ...]
    cost: int
    proven: bool

    @property
    def on_faces(self) -> int:
        """Edges of cells at which a joint shows over a joint."""
        return self.cost // FACE

    @property
    def inside(self) -> int:
        """Edges of cells inside at which a joint stands over a joint."""
        return self.cost % WALL // INNER


_State = int
"""What stands on, from the cell that is next: four bits a column, twice how many rows its unit still takes there, and one if
it takes the next column too. The lowest CROSSED bits count columns in which a unit crosses the wall's face in this row."""

CROSSED = 8


class _Move(NamedTuple):
    """One cell of one course filled: what then stands on, a joint beyond it or under it, what a new unit costs."""

    after: _State
    across: bool
    below: bool
    cost: int
    laid: Block | None


_Unit = tuple[int, int, int, Block]
_EMPTY = 0
_make_move = tuple.__new__
_Trail = tuple[Block | None, Block | None, "_Trail | None"]

MOST_STATES = 6_000
"""So many pairs of states are tried at a cell before no more cuts are allowed."""

MOST_KNOWN = 100_000
"""So many states may be known of both courses before no more cuts are allowed: about a second of work."""

MORE = (0, 2 * BAT, 4 * BAT, *(CUT * cuts + 2 * BAT for cuts in range(1, 9)), 12 * CUT, 1000 * CUT)
"""What is allowed, step by step, over what both courses cut alone; in the end anything."""


@lru_cache(maxsize=256)
def bond_pier(grid: PierGrid) -> PierBond | None:
    """The best two courses, in the order of FACE to INNER; None where no units fill the grid and tie it in.

    The cutting of either course alone is a bound on both together: where joints keep clear on all faces at that bound
    nothing can be better; else a cut or a bat more is allowed, as far as MOST_STATES and MOST_KNOWN reach.
    """
    tied, plain = _Course(grid, tied=True), _Course(grid, tied=False)
    one, other = tied.least_of_all(), plain.least_of_all()
    if one is None or other is None:
        return None
    best: PierBond | None = None
    for more in MORE:
        if best is not None and tied.known + plain.known > MOST_KNOWN:
            break
        try:
            best = _lay_both(tied, plain, one + other + more, best)
        except _TooMany:
            break
        if best is not None and (not best.on_faces or more == MORE[-1]):
            return best._replace(proven=True)
    return best


class _Course:
    """One course of a pier: how its cells may be filled, and what the rest costs at least."""

    def __init__(self, grid: PierGrid, *, tied: bool) -> None:
        self.grid, self.tied = grid, tied
        self._cells = grid.columns * grid.rows
        self._known: list[dict[_State, list[_Move]]] = [{} for _ in range(self._cells)]
        self._least: list[dict[_State, int]] = [{} for _ in range(self._cells)]
        self._over: list[dict[_State, int]] = [{} for _ in range(self._cells)]
        along = {(length, grid.wide): _price(grid, length) for length in range(1, grid.full + 1)}
        units = {**along, **{(wide, length): cost for (length, wide), cost in along.items()}}
        self._faces = {at - 1 for at in (grid.front, grid.back) if 0 < at < grid.rows} if tied and grid.ties else set[int]()
        self._units = [tuple(self._find_fitting(*divmod(cell, grid.columns), units)) for cell in range(self._cells)]

    @property
    def known(self) -> int:
        """Of how many states it is known what the rest costs at least."""
        return sum(map(len, self._least)) + sum(map(len, self._over))

    def moves(self, cell: int, state: _State) -> list[_Move]:
        """Every way to fill a cell, the cells before it being filled."""
        known = self._known[cell]
        if state not in known:
            known[state] = self._fill(cell, state)
        return known[state]

    def least(self, cell: int, state: _State, spare: int) -> int | None:
        """The least that the cells from this one on cost; None where it is more than ``spare`` or they cannot be filled."""
        if cell == self._cells:
            return 0
        found = self._least[cell].get(state)
        if found is not None:
            return found if found <= spare else None
        if spare <= self._over[cell].get(state, -1):
            return None
        best = spare + 1
        for after, _, _, cost, _ in reversed(self.moves(cell, state)):  # full units first: they cost least
            if cost < best and (rest := self.least(cell + 1, after, best - 1 - cost)) is not None:
                best = cost + rest
        if best > spare:
            self._over[cell][state] = spare
            return None
        self._least[cell][state] = best
        return best

    def least_of_all(self) -> int | None:
        """The least that the course costs; None where no units fill it and tie it in."""
        spare, most = BAT * 4, CUT * 4 * self.grid.columns * self.grid.rows
        while (found := self.least(0, _EMPTY, spare)) is None and spare < most:
            spare = max(CUT, spare) * 2
        return found

    def _find_fitting(self, row: int, column: int, units: dict[tuple[int, int], int]) -> Iterator[_Unit]:
        """Units that may begin at a cell: the columns they take and what then stands there (bits), their cost and place."""
        end = self.grid.front if not self.tied and row < self.grid.front else self.grid.rows
        for (columns, rows), cost in units.items():
            if row + rows <= end and column + columns <= self.grid.columns:
                standing = sum((2 * rows + (place + 1 < columns)) << 4 * place for place in range(columns))
                yield (1 << 4 * columns) - 1, standing, cost, Block(column, row, columns, rows)

    def _fill(self, cell: int, state: _State) -> list[_Move]:
        """On to the next cell. Where a face of the wall goes through under the row, units cross it over a third at least."""
        grid, standing, crossed = self.grid, state >> CROSSED, state & (1 << CROSSED) - 1
        row, column = divmod(cell, grid.columns)
        if not self.tied and grid.front <= row < grid.back:
            return [_Move(_EMPTY, False, row + 1 == grid.back, 0, None)]
        ways: list[tuple[int, int, Block | None]] = [(standing, 0, None)] if standing & 15 else [
            (standing | unit, cost, block) for taken, unit, cost, block in self._units[cell] if not standing & taken]
        faced, last, found = row in self._faces, column + 1 == grid.columns, list[_Move]()
        for stands, cost, laid in ways:
            here = stands & 15
            below = here < 4
            counted = crossed + (faced and not below)
            if not (last and faced and 3 * counted < grid.columns):
                onward = stands >> 4 | (0 if below else here - 2) << 4 * (grid.columns - 1)
                after = onward << CROSSED | (0 if last else counted)
                found.append(_make_move(_Move, (after, not here & 1, below, cost, laid)))
        return found


def _price(grid: PierGrid, length: int) -> int:
    if length == grid.full:
        return 0
    if length in grid.free:
        return BAT
    return CUT * (2 if 2 * length < grid.full else 1)


class _TooMany(Exception):
    """More pairs of states at a cell than may be tried."""


def _lay_both(tied: _Course, plain: _Course, bound: int, best: PierBond | None) -> PierBond | None:
    """The best two courses whose cuts and bats come to no more than ``bound``, or ``best`` where none is better.

    _TooMany where they are too many to try.
    """
    grid, ceiling = tied.grid, best.cost if best is not None else CUT * FACE
    reached: dict[tuple[_State, _State], tuple[int, int, _Trail | None]] = {(_EMPTY, _EMPTY): (0, 0, None)}
    for cell in range(grid.columns * grid.rows):
        after: dict[tuple[_State, _State], tuple[int, int, _Trail | None]] = {}
        of_tied, of_plain = _Ways(tied, cell), _Ways(plain, cell)
        for (one, other), (cost, paid, trail) in reached.items():
            spare = bound - paid
            tied_rest, plain_rest = tied.least(cell, one, spare) or 0, plain.least(cell, other, spare) or 0
            ways = of_plain.affordable(other, spare - tied_rest)
            for move, rest in of_tied.affordable(one, spare - plain_rest):
                for beside, more in ways:
                    spent = move.cost + beside.cost
                    if paid + spent + rest + more > bound:
                        continue
                    total = cost + spent + _meet(grid, cell, move, beside)
                    if total + rest + more >= ceiling:
                        continue
                    key = move.after, beside.after
                    if key not in after or total < after[key][0]:
                        laid = (move.laid, beside.laid, trail) if move.laid or beside.laid else trail
                        after[key] = total, paid + spent, laid
        if len(after) > MOST_STATES:
            raise _TooMany
        reached = after
    if not reached:
        return best
    total, _, trail = reached[_EMPTY, _EMPTY]
    return _unwind(total, trail)


class _Ways:
    """How one course may fill a cell: for each state that it comes to, found once for the most that was ever to spare."""

    def __init__(self, course: _Course, cell: int) -> None:
        self.course, self.cell = course, cell
        self._known: dict[_State, tuple[int, list[tuple[_Move, int]]]] = {}

    def affordable(self, state: _State, spare: int) -> list[tuple[_Move, int]]:
        """Moves and what the rest costs at least after them: all that come to no more than ``spare``, and some that do."""
        known = self._known.get(state)
        if known is None or known[0] < spare:
            least, after = self.course.least, self.cell + 1
            found = [(move, rest) for move in self.course.moves(self.cell, state)
                     if move.cost <= spare and (rest := least(after, move.after, spare - move.cost)) is not None]
            known = self._known[state] = spare, found
        return known[1]


def _meet(grid: PierGrid, cell: int, tied: _Move, plain: _Move) -> int:
    """What the joints beyond a cell and under it cost together."""
    row, column = divmod(cell, grid.columns)
    cost = 0
    if column + 1 < grid.columns and tied.across:
        if grid.front <= row < grid.back:
            cost += FACE if column + 1 in grid.kept_clear else WALL
        if plain.across:
            cost += FACE if row in (0, grid.rows - 1) else INNER
    if row + 1 < grid.rows and tied.below and plain.below:
        cost += FACE if column in (0, grid.columns - 1) else INNER
    return cost


def _unwind(cost: int, end: _Trail | None) -> PierBond:
    tied: list[Block] = []
    plain: list[Block] = []
    trail = end
    while trail is not None:
        one, other, trail = trail
        tied += [one] if one else []
        plain += [other] if other else []
    return PierBond(tuple(reversed(tied)), tuple(reversed(plain)), cost, proven=False)
