"""Walls one brick thick: their runs as spans for the bond's search, and its tracks as runs of headers and stretchers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import product
from typing import NamedTuple

from wallplan.bond.figures import adjoining
from wallplan.bond.one_brick import NONE, lay_span, lay_under
from wallplan.bond.one_brick_figures import (
    BROKEN,
    DEPARTED,
    Beside,
    End,
    Found,
    Grammar,
    Kind,
    Laid,
    Rule,
    Span,
)
from wallplan.layout.corners import WallEnd, WallEnds, parity_of
from wallplan.layout.model import Leaf, Piece
from wallplan.layout.one_brick_runs import BondRun, gather_runs, list_sides, settle_free
from wallplan.layout.pier_sides import find_sides
from wallplan.layout.runs import TICKS_OF_ROUNDING, LaidRun, LaidTracks, count_short_laps, set_out
from wallplan.layout.spots import Namer, Spot
from wallplan.layout.tracks import Span as Clear
from wallplan.layout.tracks import pose_problem
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Wall

RULES: dict[str, tuple[Rule, Rule]] = {
    "flemish": ("in turn", "in turn"), "flemish garden wall": ("three in turn", "three in turn"),
    "english": ("stretchers", "headers"), "header": ("headers", "headers"),
}

class _Way(NamedTuple):
    """One way of laying a wall's runs, and what it costs."""

    found: tuple[tuple[BondRun, Found], ...]
    cost: int


def find_grammar(masonry: Masonry) -> Grammar:
    """The masonry's numbers for the search, nominal."""
    quarter = masonry.module // 4
    # A joint that opens or closes takes as much of the lap at the quoin, and of that at the far end.
    spare = max(0, quarter - masonry.least_lap)
    close, open_ = (min(spare, most) for most in (
        masonry.joint - masonry.tightest_joint, masonry.widest_joint - masonry.joint))
    rules = RULES.get(masonry.bond, ("stretchers", "stretchers"))
    return Grammar(masonry.module, min(quarter, masonry.least_lap + max(close, open_)),
                   max(masonry.least_piece, masonry.module // 2), close, open_, rules,
                   masonry.least_lap, masonry.bond not in ("flemish", "english"))


def bond_one_brick(wall: Wall, masonry: Masonry, clear: tuple[tuple[Clear, ...], ...], ends: WallEnds) -> LaidTracks:
    """The bond of a wall one brick thick. ``clear`` are each course's runs between its own ends.

    The longest run is laid first, the others so that they lap with it; where that breaks a lap, other orders are tried.
    Every way in which free ends, jambs and control joints may begin with a stretcher or a header is tried.
    """
    runs = gather_runs(masonry, clear, ends)
    problem, grammar = pose_problem(wall, masonry, clear, ends), find_grammar(masonry)
    tracks = _bond(wall, masonry, runs, ends, grammar)
    if short := count_short_laps(problem, tracks.runs, masonry.joint):
        # Joints that open or close shift those between them; the search knows only where they were aimed.
        fixed = _bond(wall, masonry, runs, ends, replace(grammar, close=0, open=0))
        if count_short_laps(problem, fixed.runs, masonry.joint) < short:
            return fixed._replace(broken=fixed.broken or count_short_laps(problem, fixed.runs, masonry.joint) > 0)
    return tracks._replace(broken=tracks.broken or short > 0)


def _bond(wall: Wall, masonry: Masonry, runs: Sequence[BondRun], ends: WallEnds, grammar: Grammar) -> LaidTracks:
    """The best way that is found in several orders of laying the runs."""
    sides = list(list_sides(runs, wall, masonry))
    best = _lay_best(wall, masonry, runs, (sides, ends), grammar)
    assert best is not None
    for place, order in enumerate(_orders(runs)):
        if best.cost < (BROKEN if place else DEPARTED):
            break
        best = _lay_best(wall, masonry, order, (sides, ends), grammar, best.cost) or best
    laid = tuple(run for one, found in best.found for run in _cut_runs(one, found, masonry, ends))
    return LaidTracks(laid, True, len(runs) == 1 or best.cost < DEPARTED, best.cost >= BROKEN, best.cost)


def _lay_best(wall: Wall, masonry: Masonry, runs: Sequence[BondRun], given: tuple[Sequence[tuple[int, int]], WallEnds],
              grammar: Grammar, limit: int = NONE) -> _Way | None:
    """The best way of one order; None where none is under the limit. ``given``: how free ends may begin, and the ends."""
    best: _Way | None = None
    sides, ends = given
    for one in sides:
        way = _lay_all(wall, masonry, settle_free(runs, wall, one, masonry), ends, grammar,
                       limit if best is None else best.cost)
        best = way or best
    return best


def _orders(runs: Sequence[BondRun]) -> Iterator[Sequence[BondRun]]:
    """Other orders in which to lay runs: those of most courses first, then from the left, then the shortest first."""
    if len(runs) < 2:
        return
    yield sorted(runs, key=lambda run: -(run.right - run.left) * sum(one.bit_count() for one in run.courses))
    yield sorted(runs, key=lambda run: (run.left, run.right))
    yield list(reversed(runs))


def _lay_all(wall: Wall, masonry: Masonry, runs: Sequence[BondRun], ends: WallEnds, grammar: Grammar,
             limit: int) -> _Way | None:
    done, spent = list[tuple[BondRun, Found]](), 0
    for run in runs:
        beside = (*_find_beside(run, done, masonry), *find_sides(run.left, run.right, run.courses, ends, masonry))
        covered = tuple((opening.left - run.left, opening.right - run.left) for opening in wall.openings
                        if opening.left > run.left and opening.right < run.right)
        lefts, rights = ((end,) if end is not None else (End(0), End(1)) for end in run.ends)
        best: tuple[BondRun, Found] | None = None
        for left, right in product(lefts, rights):
            span = Span(run.right - run.left + masonry.joint, (left, right),
                        (run.courses[0].bit_count(), run.courses[1].bit_count()), adjoining(*run.courses), covered, beside,
                        _find_anchors(run, done, masonry) if beside else ())
            under = limit - spent if best is None else best[1].cost
            found = _lay_run(replace(grammar, rules=(run.of, run.of)) if run.of else grammar, span, under)
            best = best if found is None else (run._replace(ends=(left, right)), found)
        if best is None and limit < NONE:
            return None
        done.append(best or (run._replace(ends=(lefts[0], rights[0])), lay_span(grammar, span)))
        spent += done[-1][1].cost
    return _Way(tuple(done), spent)


def _lay_run(grammar: Grammar, span: Span, under: int) -> Found | None:
    """The best two tracks of a run; None where none is under a cost. Beside a pier only odd or only even courses have it:
    its joints stay as aimed for where no rule breaks so, since what is above and below does not open or close with it.
    """
    if 0 in span.courses and not grammar.quoins:
        found = lay_span(replace(grammar, close=0, open=0), span)
        if found.cost < BROKEN:
            return found if found.cost < under else None
    return lay_under(grammar, span, under)


def _find_anchors(run: BondRun, done: Sequence[tuple[BondRun, Found]], masonry: Masonry) -> tuple[int, ...]:
    """How far past whole quarters from this run's left end other runs begin and end, each once."""
    quarter = masonry.module // 4
    own = {0, (run.right - run.left + masonry.joint) % quarter}
    found = sorted({(at - run.left) % quarter for other, _ in done for at in (other.left, other.right + masonry.joint)})
    return tuple(at for at in found if all(min(abs(at - one), quarter - abs(at - one)) > TICKS_OF_ROUNDING for one in own))


def _find_beside(run: BondRun, done: Sequence[tuple[BondRun, Found]], masonry: Masonry) -> Iterator[Beside]:
    """The joints of runs laid before that stand above, below or in the same courses' place."""
    for other, found in done:
        for parity, laid in enumerate(found.tracks):
            plumb = other.of == run.of
            for joint in _stretch_joints(laid, found, other, masonry):
                at = other.left + joint - run.left
                if not 0 < at < run.right - run.left + masonry.joint or not other.courses[parity]:
                    continue
                weight = adjoining(run.courses[1 - parity], other.courses[parity])
                if weight:
                    yield Beside(at, 1 - parity, weight, False)
                if run.courses[parity] and plumb:
                    yield Beside(at, parity, run.courses[parity].bit_count(), True)


def _stretch_joints(laid: Laid, found: Found, run: BondRun, masonry: Masonry) -> list[int]:
    """A track's joints where they come to lie when the run's joints have opened or closed."""
    count = len(laid.pieces) - 1
    return [at + found.over * number // count for number, at in enumerate(laid.joints, start=1)] if count else []


def _cut_runs(run: BondRun, found: Found, masonry: Masonry, ends: WallEnds) -> Iterator[LaidRun]:
    """The run as its courses lay it: without the other wall's quoin header, but over a wall that is lower."""
    opens = ends.left.out_of_turn.opens, ends.right.out_of_turn.opens
    for parity, laid in enumerate(found.tracks):
        stops = _stops(ends.left, run.left, parity), _stops(ends.right, run.right, parity)
        for left_open, right_open in product((False, True), repeat=2):
            courses = run.courses[parity] & (opens[0] if left_open else ~opens[0]) & (opens[1] if right_open else ~opens[1])
            if courses:
                own = stops[0] and not left_open, stops[1] and not right_open
                yield _cut_run(run, laid, courses, own, (parity, masonry, ends))


def _cut_run(run: BondRun, laid: Laid, courses: int, stops: tuple[bool, bool],
             place: tuple[int, Masonry, WallEnds]) -> LaidRun:
    """One track of a run in some of its courses. ``stops``: at its left and right end the other wall's quoin stands."""
    (parity, masonry, ends), joined = place, list[int]()
    left, right, pieces = run.left, run.right, list(laid.pieces)
    if stops[0]:
        left, pieces = ends.left.at[parity], pieces[1:]
        joined.append(left - masonry.joint + masonry.joint // 2)
    if stops[1]:
        right, pieces = ends.right.at[parity], pieces[:-1]
        joined.append(right + masonry.joint // 2)
    lengths = [_actual(kind, length, masonry) for kind, length in pieces]
    if len(lengths) == 1:
        lengths = [right - left]
    kinds = tuple(kind for kind, _ in pieces)
    return LaidRun(left, right, set_out(lengths, left, right), courses,
                   sum({"P": 2, "C": 1}.get(kind, 0) for kind in kinds), 0 if _fills(run, masonry) else 1,
                   tuple(joined), kinds)


def _stops(end: WallEnd, at: int, parity: int) -> bool:
    """Whether a run's end is at a corner where the other wall's quoin header stands in this parity."""
    return end.returns is not None and at in (min(end.at), max(end.at)) and not end.through[parity]


def _actual(kind: Kind, nominal: int, masonry: Masonry) -> int:
    """How long a piece is on the face."""
    return {"S": masonry.unit.length, "H": masonry.unit.thickness}.get(kind, nominal - masonry.joint)


def _fills(run: BondRun, masonry: Masonry) -> bool:
    """Whether headers and stretchers alone, at any joint within the range, are as long as a run."""
    length, joints = run.right - run.left + masonry.joint, max(0, (run.right - run.left) // masonry.module)
    low, high = (length - joints * (masonry.widest_joint - masonry.joint),
                 length + joints * (masonry.joint - masonry.tightest_joint))
    return any(low <= count * masonry.module // 2 <= high for count in range(1, 2 * high // masonry.module + 2))


def make_bonded_spots(run: LaidRun, row: Row, masonry: Masonry, namer: Namer, place: tuple[Wall, WallEnds]) -> list[Spot]:
    """Spots of one run in one course: headers and closers through, stretchers in front with their like behind them.

    ``leaf`` is None of a spot that stands for two bricks; a quoin stretcher at a corner stands alone.
    """
    height, rise, spots = row.unit_height, row.bed, list[Spot]()
    for (left, length), kind in zip(run.pieces, run.kinds, strict=True):
        if kind == "H":
            spots.append(Spot(left, length, rise, height, "full", "header", None, leaf="through"))
        elif kind == "C":
            spots.append(Spot(left, length, rise, height, "closer", "closer", None, leaf="through"))
        else:
            spots.append(Spot(left, length, rise, height, namer.name(length, height), "stretcher", None,
                              leaf=_quoin(left, left + length, row.number, *place)))
    return spots


def _quoin(left: int, right: int, number: int, wall: Wall, ends: WallEnds) -> Leaf | None:
    """The leaf of a quoin stretcher at a corner: in front at an outside corner, at the back at an inside one."""
    for end, at, inside in ((ends.left, left, left < 0), (ends.right, right, right > wall.length)):
        stands = end.returns is not None and end.through[parity_of(number)] and not end.out_of_turn.opens >> number & 1
        if stands and end.at_in(number) == at:
            return "back" if inside else "front"
    return None


def find_backing(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """The bricks behind a course's pairs of stretchers."""
    return (piece._replace(leaf="back") for piece in pieces if piece.shape == "stretcher" and piece.leaf is None)
