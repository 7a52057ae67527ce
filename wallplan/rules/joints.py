"""Head joints: within the plan's limits, and within one run all equal to the tick."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import HEAD, AsLaid, Ints
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import HEAD_JOINTS

EQUAL = 1
"""Ticks by which the joints of one run may differ: a run's spare ticks do not always divide by its joints."""


def check_joints(wall: AsLaid) -> tuple[Finding, ...]:
    """Every run's head joints against the tightest and the widest that the plan allows. No joints: held."""
    gaps, masonry = wall.gaps, wall.masonry
    limit = f"{size(wall, masonry.tightest_joint)} to {size(wall, masonry.widest_joint)}"
    at = np.flatnonzero(gaps.kind == HEAD)
    if not len(at):
        return (report_held(wall, "joints", HEAD_JOINTS, "no head joints", limit),)
    widths = gaps.width[at]
    broken = report_breaks(wall, "joints", HEAD_JOINTS, _find_breaks(wall, at, widths, limit))
    figure = f"{size(wall, widths.min())} to {size(wall, widths.max())}"
    return broken or (report_held(wall, "joints", HEAD_JOINTS, figure, limit),)


def _find_breaks(wall: AsLaid, at: Ints, widths: Ints, limit: str) -> Iterator[Break]:
    gaps, masonry = wall.gaps, wall.masonry
    # A run's head joints follow each other in the table: same row, and each begins at the piece where the last ended.
    # The joint against another wall's unit is no part of the run, which shares what it has over by itself.
    against = (wall.shape[gaps.before[at]] == "return") | (wall.shape[gaps.after[at]] == "return")
    follows = (gaps.before[at[1:]] == gaps.after[at[:-1]]) & ~against[1:] & ~against[:-1]
    begins = np.flatnonzero(np.concatenate(([True], ~follows)))
    tightest, widest = np.minimum.reduceat(widths, begins), np.maximum.reduceat(widths, begins)
    ends = np.append(begins[1:], len(at))
    out = (tightest < masonry.tightest_joint) | (widest > masonry.widest_joint)
    for run in np.flatnonzero(out | (widest - tightest > EQUAL)).tolist():
        joints = at[begins[run]:ends[run]]
        course = int(wall.rows.course[gaps.row[joints[0]]])
        if out[run]:
            yield from _out_of_limits(wall, course, joints, limit)
        else:
            yield _unequal(wall, course, joints)


def _out_of_limits(wall: AsLaid, course: int, joints: Ints, limit: str) -> Iterator[Break]:
    gaps, masonry = wall.gaps, wall.masonry
    poor = joints[(gaps.width[joints] < masonry.tightest_joint) | (gaps.width[joints] > masonry.widest_joint)]
    for joint in poor.tolist():
        width = int(gaps.width[joint])
        nearest = masonry.tightest_joint if width < masonry.tightest_joint else masonry.widest_joint
        off, turn = abs(width - nearest), "shorten" if width < nearest else "lengthen"
        yield Break(
            course, int(gaps.left[joint]), exact(wall, width, nearest), limit,
            f"{turn} a piece beside this joint by {size(wall, off)} or more, or share {size(wall, off)} among the run's "
            f"{len(joints)} joints",
        )


def _unequal(wall: AsLaid, course: int, joints: Ints) -> Break:
    gaps = wall.gaps
    widths = gaps.width[joints]
    mean, usual = round(float(widths.mean())), float(np.median(widths))
    odd = int(joints[np.argmax(np.abs(widths - usual))])
    low, high = int(widths.min()), int(widths.max())
    return Break(
        course, int(gaps.left[odd]), f"{exact(wall, low, high)} to {exact(wall, high, low)} in one run", "equal in one run",
        f"lay all {len(joints)} joints of the run at {size(wall, mean)}",
    )
