"""A wall for the search: its courses' runs as the two tracks of a Problem, and back from found joints to runs."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.layout.corners import WallEnds, free_ends
from wallplan.layout.coursing import Row
from wallplan.layout.reach import Reach
from wallplan.layout.stock import stock_lengths
from wallplan.plan.job import Masonry, Wall

AT_JAMB, AT_END = 2, 3
"""How much a cut is seen there: layout order of preference, grade 6."""


def bond_terms(masonry: Masonry) -> Terms:
    """The masonry's numbers for the search, nominal."""
    return Terms(
        module=masonry.module,
        stock=tuple(length + masonry.joint for length in stock_lengths(masonry)),
        least=masonry.least_piece,
        lap=0 if masonry.bond == "stack" else masonry.least_lap,
        ideal=masonry.ideal_lap,
        close=masonry.joint - masonry.tightest_joint,
        open=masonry.widest_joint - masonry.joint,
        keeps_bond=masonry.bond != "half" or masonry.keep_bond,
    )


class Span(NamedTuple):
    """A run's clear length between its fixed ends."""

    left: int
    right: int


def runs_of_rows(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], reaches: tuple[Reach, ...],
                 own: WallEnds | None = None) -> tuple[tuple[Span, ...], ...]:
    """For each course its runs, left to right. Openings that cut a course only in part do not end its runs.

    ``own`` are the wall's ends where it has corners; left out, both are free.
    """
    ends = own or free_ends(wall)
    gaps = [(c - masonry.joint // 2, c - masonry.joint // 2 + masonry.joint) for c in wall.control_joints]
    known: dict[object, tuple[Span, ...]] = {}
    found = []
    for row in rows:
        open_here = frozenset(i for i, reach in enumerate(reaches) if reach.first <= row.number <= reach.last)
        key = open_here, ends.span(row.number)
        if key not in known:
            cut = [(reaches[i].opening.left, reaches[i].opening.right) for i in open_here]
            known[key] = _clear_spans(*ends.span(row.number), sorted([*gaps, *cut]))
        found.append(known[key])
    return tuple(found)


def _clear_spans(begin: int, end: int, gaps: list[tuple[int, int]]) -> tuple[Span, ...]:
    spans, left = [], begin
    for start, stop in gaps:
        if start > left:
            spans.append(Span(left, start))
        left = max(left, stop)
    if left < end:
        spans.append(Span(left, end))
    return tuple(spans)


def pose_problem(wall: Wall, masonry: Masonry, runs: tuple[tuple[Span, ...], ...],
                 own: WallEnds | None = None) -> Problem:
    """The wall's runs as two tracks, odd and even courses, with the positions at which both begin anew."""
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
            for span, courses in sorted(track.items(), key=lambda item: (item[0].left, item[0].right))
        )
        for track in tracks
    )
    covered = tuple((opening.left - joint, opening.right) for opening in wall.openings)
    tracks_end = tuple((ends.left.at[parity] - joint, ends.right.at[parity]) for parity in (0, 1))
    return Problem(
        bond_terms(masonry), (odd, even), _fixed_positions(joint, runs, tracks_end), covered,
        (tracks_end[0], tracks_end[1]), (_joined_positions(ends, joint, 0), _joined_positions(ends, joint, 1)),
    )


def _fixed_positions(joint: int, runs: tuple[tuple[Span, ...], ...], ends: tuple[tuple[int, int], ...]) -> tuple[int, ...]:
    """Wall ends, control joints and the jambs of what is open from bottom to top."""
    lefts = set.intersection(*({span.left - joint for span in spans} for spans in set(runs)))
    rights = set.intersection(*({span.right for span in spans} for spans in set(runs)))
    first, last = min(start for start, _ in ends), max(end for _, end in ends)
    inside = {at for at in lefts | rights if all(start < at < end for start, end in ends)}
    return tuple(sorted({first, *inside, last}))


def _joined_positions(ends: WallEnds, joint: int, parity: int) -> frozenset[int]:
    """Ends that are head joints against the wall that runs through there."""
    joined = set()
    if not ends.left.through[parity]:
        joined.add(ends.left.at[parity] - joint)
    if not ends.right.through[parity]:
        joined.add(ends.right.at[parity])
    return frozenset(joined)
