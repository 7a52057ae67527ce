"""All rules over a finished layout. The rules' modules are imported when a layout is checked: they need numpy."""

from __future__ import annotations

from wallplan.findings import Finding
from wallplan.layout.model import Layout, WallLayout
from wallplan.plan.job import Job


def check(layout: Layout) -> tuple[Finding, ...]:
    """Every rule in every wall, in the plan's order of walls: one held finding, or one for each broken place.

    A layout without walls gives (). Nothing is raised for a broken layout, however it is broken.
    """
    from wallplan.rules.letters import check_letters

    walls = tuple(finding for wall in layout.walls for finding in check_wall(wall, layout.job))
    return (*walls, *check_letters(layout), *check_meetings(layout))


def check_meetings(layout: Layout) -> tuple[Finding, ...]:
    """The rules where walls meet, each other or piers: corners, ties, piers, the building in plan. () where none meet."""
    from wallplan.rules.corners import check_corners
    from wallplan.rules.in_plan import check_in_plan
    from wallplan.rules.pier_units import check_pier_units
    from wallplan.rules.piers import check_piers
    from wallplan.rules.ties import check_ties

    rules = check_corners, check_ties, check_piers, check_pier_units, check_in_plan
    return tuple(finding for rule in rules for finding in rule(layout))


def check_wall(wall: WallLayout, job: Job) -> tuple[Finding, ...]:
    """Every rule in one wall, as ``check``. A wall without a piece breaks the cover; the other rules hold."""
    from wallplan.rules.as_laid import measure_wall
    from wallplan.rules.control import check_control_joints
    from wallplan.rules.coursing import check_coursing
    from wallplan.rules.cover import check_cover
    from wallplan.rules.headers import check_headers
    from wallplan.rules.joints import check_joints
    from wallplan.rules.lap import check_lap
    from wallplan.rules.openings import check_openings
    from wallplan.rules.pieces import check_pieces
    from wallplan.rules.plumb import check_plumb
    from wallplan.rules.steps import check_steps
    from wallplan.rules.units import check_units

    laid = measure_wall(wall, job)
    rules = (
        check_cover, check_joints, check_coursing, check_lap, check_pieces, check_plumb, check_openings,
        check_control_joints, check_units, check_steps, check_headers,
    )
    return tuple(finding for rule in rules for finding in rule(laid))
