"""Control joints: straight, as wide as the plan's joint, centred, through every course."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import numpy as np

from wallplan.findings import Finding
from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_MM, print_length
from wallplan.rules.as_laid import HEAD, HOLE, OPENING, OVERLAP, ROUNDING, AsLaid
from wallplan.rules.reporting import Break, exact, note_first, report_breaks, report_held, size
from wallplan.rules.sources import APART_BLOCK, APART_BRICK, APART_METRIC, CONTROL


def check_control_joints(wall: AsLaid) -> tuple[Finding, ...]:
    """Each control joint against every row of pieces that it passes. A wall without them: held."""
    places = wall.layout.wall.control_joints
    limit = f"{size(wall, wall.masonry.joint)} wide in every course"
    told, source, notice = _tell_far(wall, places)
    if not places:
        return (report_held(wall, "control joints", source, f"none asked for{told}", limit, notice),)
    breaks = [one for place in places for one in (*_crossed(wall, place), *_out_of_true(wall, place, limit))]
    figure = f"{len(places)} through {len(wall.layout.courses)} courses{told}"
    return note_first(report_breaks(wall, "control joints", CONTROL, breaks), notice) or (
        report_held(wall, "control joints", source, figure, limit, notice),
    )


def _tell_far(wall: AsLaid, places: tuple[int, ...]) -> tuple[str, str, str]:
    """What is to be said of masonry that goes on longer than publications have it without a joint, the source, and the same
    for the sheet.

    "" where it does not. Where joints are is the designer's, so no rule is broken.
    """
    laid = wall.layout.wall
    longest = max(right - left for left, right in pairwise((0, *places, laid.length)))
    if wall.job.measure == "metric":
        most, source = METRIC_APART[wall.masonry.unit.kind], APART_METRIC
    elif wall.masonry.unit.kind == "block":
        ratio = laid.height * 3 // 2 if laid.height >= STOREY else LONGEST
        most, source = min(LONGEST, ratio), APART_BLOCK
    else:
        most, source = LONGEST, APART_BRICK
    if longest <= most:
        return "", CONTROL, ""
    far, allowed = (print_length(ticks, wall.job.measure) + (" mm" if wall.job.measure == "metric" else "")
                    for ticks in (longest, most))
    notice = f"{far} without a control joint, {allowed} at most by {source.split(':')[0]}: ask the designer."
    return f"; {far} without one, {allowed} at most by the source: ask the designer", source, notice


LONGEST = 25 * TICKS_PER_FOOT
"""The most between joints, as APART_BLOCK and APART_BRICK cite it."""

STOREY = 8 * TICKS_PER_FOOT
"""The ratio of length to height is told for walls of this height on; in lower ones it asks for more joints than anybody sets
(common practice, no source)."""

METRIC_APART = {"brick": 12_000 * TICKS_PER_MM, "block": 6_000 * TICKS_PER_MM}
"""The most between joints that move, as APART_METRIC cites it."""


def _crossed(wall: AsLaid, place: int) -> Iterator[Break]:
    for piece in np.flatnonzero((wall.left < place) & (wall.right > place)).tolist():
        yield Break(
            int(wall.course[piece]), place, "a piece crosses it", "straight through",
            f"end the piece {size(wall, wall.masonry.joint // 2)} before the joint's centre and begin the next one as far "
            "behind it",
        )


def _out_of_true(wall: AsLaid, place: int, limit: str) -> Iterator[Break]:
    gaps, joint = wall.gaps, wall.masonry.joint
    usual = (gaps.kind != OPENING) & (gaps.kind != OVERLAP)
    here = np.flatnonzero(usual & (gaps.left <= place) & (gaps.right >= place))
    for gap in here[gaps.kind[here] != HEAD].tolist():
        left, right = int(gaps.left[gap]), int(gaps.right[gap])
        course = int(wall.rows.course[gaps.row[gap]])
        off = (left + right) // 2 - place
        if gaps.kind[gap] == HOLE:
            continue  # a missing piece is the cover's to tell
        if abs(right - left - joint) > ROUNDING:
            yield Break(course, place, exact(wall, right - left, joint), limit,
                        f"make it {size(wall, joint)}: move the pieces beside it")
        elif abs(off) > ROUNDING:
            side = "left" if off > 0 else "right"
            yield Break(course, place, f"{size(wall, abs(off))} off its centre", "centred on its distance",
                        f"move the pieces beside it {size(wall, abs(off))} to the {side}")
