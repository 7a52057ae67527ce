"""A wall for the search: its courses' runs as the two tracks of a Problem, and back from found joints to runs."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.catalogue.unit import PieceName
from wallplan.layout.coursing import Row
from wallplan.layout.reach import Reach
from wallplan.plan.job import Masonry, Wall

AT_JAMB, AT_END = 2, 3
"""How much a cut is seen there: layout order of preference, grade 6."""


def stock_lengths(masonry: Masonry) -> dict[int, PieceName]:
    """Lengths that cost no cut, with their names. What the mason breaks himself he breaks to suit the joint."""
    parts = {"half": (1, 2), "quarter": (1, 4), "three-quarter": (3, 4)}
    lengths: dict[int, PieceName] = {}
    for piece in masonry.unit.pieces:
        length = piece.length
        if piece.sawn and piece.name in parts:
            top, low = parts[piece.name]
            length = masonry.module * top // low - masonry.joint
        lengths.setdefault(length, piece.name)
    return lengths


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
        keeps_bond=masonry.bond != "half",
    )


@dataclass(frozen=True)
class Span:
    """A run's clear length between its fixed ends."""

    left: int
    right: int


def runs_of_rows(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], reaches: tuple[Reach, ...],
                 ) -> tuple[tuple[Span, ...], ...]:
    """For each course its runs, left to right. Openings that cut a course only in part do not end its runs."""
    gaps = [(c - masonry.joint // 2, c - masonry.joint // 2 + masonry.joint) for c in wall.control_joints]
    known: dict[frozenset[int], tuple[Span, ...]] = {}
    found = []
    for row in rows:
        open_here = frozenset(i for i, reach in enumerate(reaches) if reach.first <= row.number <= reach.last)
        if open_here not in known:
            cut = [(reaches[i].opening.left, reaches[i].opening.right) for i in open_here]
            known[open_here] = _clear_spans(wall.length, sorted([*gaps, *cut]))
        found.append(known[open_here])
    return tuple(found)


def _clear_spans(length: int, gaps: list[tuple[int, int]]) -> tuple[Span, ...]:
    spans, left = [], 0
    for start, end in gaps:
        if start > left:
            spans.append(Span(left, start))
        left = max(left, end)
    if left < length:
        spans.append(Span(left, length))
    return tuple(spans)


def pose_problem(wall: Wall, masonry: Masonry, runs: tuple[tuple[Span, ...], ...]) -> Problem:
    """The wall's runs as two tracks, odd and even courses, with the positions at which both begin anew."""
    joint = masonry.joint
    tracks: tuple[dict[Span, int], dict[Span, int]] = ({}, {})
    for number, spans in enumerate(runs, start=1):
        for span in spans:
            track = tracks[1 - number % 2]
            track[span] = track.get(span, 0) | 1 << number
    odd, even = (
        tuple(
            Stretch(
                span.left - joint, span.right, courses,
                AT_JAMB if span.left else AT_END, AT_JAMB if span.right < wall.length else AT_END,
            )
            for span, courses in sorted(track.items(), key=lambda item: (item[0].left, item[0].right))
        )
        for track in tracks
    )
    covered = tuple((opening.left - joint, opening.right) for opening in wall.openings)
    return Problem(bond_terms(masonry), (odd, even), _fixed_positions(wall, joint, runs), covered)


def _fixed_positions(wall: Wall, joint: int, runs: tuple[tuple[Span, ...], ...]) -> tuple[int, ...]:
    """Wall ends, control joints and the jambs of what is open from bottom to top."""
    lefts = set.intersection(*({span.left - joint for span in spans} for spans in set(runs)))
    rights = set.intersection(*({span.right for span in spans} for spans in set(runs)))
    return tuple(sorted(lefts | rights | {-joint, wall.length}))
