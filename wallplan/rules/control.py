"""Control joints: straight, as wide as the plan's joint, centred, through every course."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import HEAD, HOLE, OPENING, OVERLAP, ROUNDING, AsLaid
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import CONTROL


def check_control_joints(wall: AsLaid) -> tuple[Finding, ...]:
    """Each control joint against every row of pieces that it passes. A wall without them: held."""
    places = wall.layout.wall.control_joints
    limit = f"{size(wall, wall.masonry.joint)} wide in every course"
    if not places:
        return (report_held(wall, "control joints", CONTROL, "none asked for", limit),)
    breaks = [one for place in places for one in (*_crossed(wall, place), *_out_of_true(wall, place, limit))]
    figure = f"{len(places)} through {len(wall.layout.courses)} courses"
    return report_breaks(wall, "control joints", CONTROL, breaks) or (
        report_held(wall, "control joints", CONTROL, figure, limit),
    )


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
