"""A wall for the search: its courses' runs as the two tracks of a Problem, and back from found joints to runs."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.layout.corners import WallEnds, free_ends, parity_of
from wallplan.layout.outline import Bay, Riser, find_bays, join_bays
from wallplan.layout.reach import Reach
from wallplan.layout.stock import stock_lengths
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Wall

TICKS_OF_ROUNDING = 2
"""Halves and quarters are rounded down to whole ticks."""

AT_JAMB, AT_END = 2, 3
"""How much a cut is seen there: layout order of preference, grade 6."""


def bond_terms(masonry: Masonry) -> Terms:
    """The masonry's numbers for the search, nominal. What the mason has that is under the least piece is left aside."""
    stock = tuple(length + masonry.joint for length in stock_lengths(masonry))
    return Terms(
        module=masonry.module,
        stock=tuple(length for length in stock if length >= masonry.least_piece - TICKS_OF_ROUNDING),
        least=masonry.least_piece,
        lap=0 if masonry.bond == "stack" else masonry.least_lap,
        ideal=masonry.ideal_lap,
        close=masonry.joint - masonry.tightest_joint,
        open=masonry.widest_joint - masonry.joint,
        keeps_bond=masonry.bond != "half" or masonry.keep_bond,
        most=_most_shared(masonry),
        joint=masonry.joint,
    )


def _most_shared(masonry: Masonry) -> int | None:
    """What a run's joints may take together where a bond is kept: an eighth of a unit in third, quarter and stack bond, as a
    sixth makes a half of a two-thirds piece, and over a long wall the bond of that course is lost; None otherwise."""
    if masonry.bond != "half":
        return masonry.module // 8
    return masonry.joint if masonry.keep_bond else None


class Span(NamedTuple):
    """A run's clear length between its fixed ends."""

    left: int
    right: int


def runs_of_rows(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], reaches: tuple[Reach, ...],
                 own: WallEnds | None = None) -> tuple[tuple[Span, ...], ...]:
    """For each course its runs, left to right. Openings that cut a course only in part do not end its runs.

    Under a slope runs are taken to go on to the gable's feet, so that one bond is carried through. ``own`` are the wall's
    ends where it has corners; left out, both are free.
    """
    ends = own or free_ends(wall)
    gaps = [(c - masonry.joint // 2, c - masonry.joint // 2 + masonry.joint) for c in wall.control_joints]
    known: dict[object, tuple[Span, ...]] = {}
    found = []
    for row in rows:
        open_here = frozenset(i for i, reach in enumerate(reaches) if reach.first <= row.number <= reach.last)
        laid = join_bays(find_bays(wall, masonry, row, square=True))
        bays = tuple(_stretch_to_ends(bay, wall, ends.span(row.number)) for bay in laid)
        crossed = ends.gaps(row.number, masonry.joint)
        key = open_here, bays, crossed
        if key not in known:
            cut = sorted([*gaps, *crossed, *((reaches[i].opening.left, reaches[i].opening.right) for i in open_here)])
            known[key] = tuple(span for bay in bays for span in _clear_spans(bay, cut))
        found.append(known[key])
    return tuple(found)


def _stretch_to_ends(bay: Bay, wall: Wall, span: tuple[int, int]) -> Bay:
    """A bay at a wall's end, to where the wall's own masonry ends in its course. Heights are left aside."""
    return Bay(span[0] if bay.left == 0 else bay.left, span[1] if bay.right == wall.length else bay.right, 0, 0)


def _clear_spans(bay: Bay, gaps: list[tuple[int, int]]) -> tuple[Span, ...]:
    spans, left = [], bay.left
    for start, stop in gaps:
        if start >= bay.right:
            break
        if left < start:
            spans.append(Span(left, start))
        left = max(left, stop)
    if left < bay.right:
        spans.append(Span(left, bay.right))
    return tuple(spans)


def pose_problem(wall: Wall, masonry: Masonry, runs: tuple[tuple[Span, ...], ...],
                 own: WallEnds | None = None, risers: tuple[Riser, ...] = ()) -> Problem:
    """The wall's runs as two tracks, odd and even courses, with the positions at which both begin anew.

    ``risers`` are those of a stepped footing, which joints keep away from.
    """
    ends, joint = own or free_ends(wall), masonry.joint
    outer = {*ends.left.at, *ends.right.at}
    tracks: tuple[dict[Span, int], dict[Span, int]] = ({}, {})
    for number, spans in enumerate(runs, start=1):
        for span in spans:
            track = tracks[1 - number % 2]
            track[span] = track.get(span, 0) | 1 << number
    odd, even = (
        tuple(
            Stretch(
                span.left - joint, span.right, courses,
                AT_END if span.left in outer else AT_JAMB, AT_END if span.right in outer else AT_JAMB,
            )
            for span, courses in sorted(track.items(), key=lambda item: item[0])
        )
        for track in tracks
    )
    clear, bridged = (tuple(tuple((riser.at, 1 << riser.over) for riser in risers
                                  if riser.over % 2 != parity and riser.jointed is jointed) for parity in (0, 1))
                      for jointed in (True, False))
    clear = tuple((*spots, *_inner_joints(ends, parity, len(runs))) for parity, spots in enumerate(clear))
    covered = tuple((opening.left - joint, opening.right) for opening in wall.openings)
    both = [_courses_that_differ(ends, len(runs), parity) for parity in (0, 1)]
    tracks_end = (_track_ends(ends, both[0], 0, joint), _track_ends(ends, both[1], 1, joint))
    anew = [tuple(at for at in _crossed_positions(ends, numbers, joint) if not _is_passed(at, runs, parity, joint))
           for parity, numbers in enumerate(both)]
    joined = [_joined_positions(ends, numbers, joint) for numbers in both]
    beside = [_joints_beside(joined[1 - parity], {*tracks_end[1 - parity], *anew[1 - parity]}, runs, parity, joint)
              for parity in (0, 1)]
    return Problem(
        bond_terms(masonry), (odd, even), _fixed_positions(joint, runs, tracks_end), covered, tracks_end,
        (joined[0], joined[1]), (clear[0] + beside[0], clear[1] + beside[1]), (bridged[0], bridged[1]),
        (_add_voids(anew[0], odd, joined[0]), _add_voids(anew[1], even, joined[1])),
    )


def _inner_joints(ends: WallEnds, parity: int, courses: int) -> tuple[tuple[int, int], ...]:
    """Head joints within what runs through in the other courses, from which the odd or even courses all keep away."""
    found = []
    for crossing in ends.crossings:
        if crossing.parity != parity and crossing.inner:
            tied = sum(1 << number for number in range(1, courses + 1) if crossing.is_in(number))
            found += [(at, (tied << 1 | tied >> 1) & ((2 << courses) - 2)) for at in crossing.inner]
    return tuple(found)


def _courses_that_differ(ends: WallEnds, courses: int, parity: int) -> list[int]:
    """The odd or the even courses, or one that stands for all of them where they end alike."""
    exceptions = any(any(end.out_of_turn) for end in (ends.left, ends.right)) or any(one.but for one in ends.crossings)
    return [number for number in range(1, courses + 1) if parity_of(number) == parity] if exceptions else [parity + 1]


def _add_voids(anew: tuple[int, ...], track: tuple[Stretch, ...], joined: frozenset[int]) -> tuple[int, ...]:
    """With the positions at which a track begins anew, the ends of what is open in all of its courses."""
    found, reached = set(anew), track[0].end if track else 0
    for stretch in track:
        if stretch.start > reached:
            found |= {reached, stretch.start} - joined
        reached = max(reached, stretch.end)
    return tuple(sorted(found))


def _is_passed(at: int, runs: tuple[tuple[Span, ...], ...], parity: int, joint: int) -> bool:
    """Whether some course of a kind passes over a place."""
    return any(span.left - joint < at < span.right for spans in runs[parity::2] for span in spans)


def _track_ends(ends: WallEnds, numbers: list[int], parity: int, joint: int) -> tuple[int, int]:
    """Where a track begins and ends: as far out as any of its courses does."""
    lefts = [ends.left.at_in(number) for number in numbers] or [ends.left.at[parity]]  # a wall of one course has no even one
    rights = [ends.right.at_in(number) for number in numbers] or [ends.right.at[parity]]
    return min(lefts) - joint, max(rights)


def _joints_beside(joined: frozenset[int], fixed: set[int], runs: tuple[tuple[Span, ...], ...], parity: int,
                   joint: int) -> tuple[tuple[int, int], ...]:
    """Joints against another wall in the other kind of courses that are ends of some of them only, being free over the
    lower wall: places, with the courses (bits) over and under them, from which these keep a lap away."""
    found = []
    for place in sorted(joined - fixed):
        stopping = sum(1 << number for number, spans in enumerate(runs, start=1) if parity_of(number) != parity
                       and any(place in (span.left - joint, span.right) for span in spans))
        beside = (stopping << 1 | stopping >> 1) & ((2 << len(runs)) - 2)
        found.append((place, beside))
    return tuple(found)


def _fixed_positions(joint: int, runs: tuple[tuple[Span, ...], ...], ends: tuple[tuple[int, int], ...]) -> tuple[int, ...]:
    """Wall ends, control joints and the jambs of what is open from bottom to top: where no run passes over."""
    spans = {span for row in runs for span in row}
    first, last = min(start for start, _ in ends), max(end for _, end in ends)
    places = {at for span in spans for at in (span.left - joint, span.right)}
    inside = {at for at in places if all(start < at < end for start, end in ends)
              and not any(span.left - joint < at < span.right for span in spans)}
    return tuple(sorted({first, *inside, last}))


def _joined_positions(ends: WallEnds, numbers: list[int], joint: int) -> frozenset[int]:
    """Ends of courses that are head joints against what runs through there."""
    joined = set[int]()
    for number in numbers:
        first, last = ends.left.at_in(number) - joint, ends.right.at_in(number)
        joined.update([first] if not ends.left.runs_through(number) else [])
        joined.update([last] if not ends.right.runs_through(number) else [])
        joined.update(at for at in _crossed_positions(ends, [number], joint) if first < at < last)
    return frozenset(joined)


def _crossed_positions(ends: WallEnds, numbers: list[int], joint: int) -> tuple[int, ...]:
    """Where a track ends and begins anew beside walls that run through it."""
    gaps = {gap for number in numbers for gap in ends.gaps(number, joint)}
    return tuple(sorted({at for left, right in gaps for at in (left, right - joint)}))
