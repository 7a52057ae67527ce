"""From the plan's tables to the Job: read, check, put together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.plan.advice_table import read_movable
from wallplan.plan.check_abuts import check_abuts, settle_abuts
from wallplan.plan.check_corners import check_corners
from wallplan.plan.check_names import check_names
from wallplan.plan.check_one_brick import check_header_courses, check_one_brick
from wallplan.plan.check_openings import check_openings
from wallplan.plan.check_outline import check_outline
from wallplan.plan.check_piers import check_piers
from wallplan.plan.check_places import check_places
from wallplan.plan.check_walls import check_amount, check_wall
from wallplan.plan.job import Job, Masonry
from wallplan.plan.masonry_table import read_masonry
from wallplan.plan.notebook import Notebook
from wallplan.plan.order_table import read_order
from wallplan.plan.outline import settle_outlines
from wallplan.plan.pier_steps import settle_piers
from wallplan.plan.piers import read_piers
from wallplan.plan.straight import join_straight
from wallplan.plan.teaching_table import read_tolerances
from wallplan.plan.unit_table import choose_unit, read_own_unit
from wallplan.plan.wall_table import ReadWall, read_wall

if TYPE_CHECKING:
    from wallplan.plan.schema import PlanTable


def build_job(plan: PlanTable, notebook: Notebook) -> Job | None:
    """The job of a plan, or None where something is missing or wrong. All that is wrong is in the notebook.

    What is wrong with the shape of the plan must be in the notebook already.
    """
    check_names(plan, notebook)
    masonry = _read_masonry(plan, notebook)
    sizes = plan.sizes or "actual"
    tables = plan.wall or []
    read = [read_wall(wall, ("wall", number), masonry, sizes, notebook) for number, wall in enumerate(tables)]
    walls = (*join_straight(read, notebook), *read_piers(tables, read, masonry, notebook))
    walls = settle_abuts(walls, masonry.joint if masonry is not None and sizes == "nominal" else 0, notebook)
    walls = settle_piers(settle_outlines(walls, masonry, notebook), masonry)
    _check_walls(walls, masonry, notebook)
    movable = None if masonry is None else read_movable(plan.advice, masonry, notebook)
    order = read_order(plan.order, [wall.name or "" for wall in plan.wall or ()], notebook)
    teaching = read_tolerances(plan.teaching, notebook)
    if notebook.wrongs or plan.title is None or masonry is None:
        return None
    return Job(
        title=plan.title, measure=notebook.measure, sizes=sizes, date=None if plan.date is None else str(plan.date),
        masonry=masonry, walls=tuple(wall.finish() for wall in walls), movable=movable, order=order,
        teaching=teaching,
    )


def _read_masonry(plan: PlanTable, notebook: Notebook) -> Masonry | None:
    own = None if plan.own_unit is None else read_own_unit(plan.own_unit, notebook)
    if plan.masonry is None:
        return None
    own_key = None if plan.own_unit is None else plan.own_unit.key
    unit = choose_unit(plan.masonry.unit, own, own_key, notebook)
    if unit is None:
        for key in ("joint", "tightest_joint", "widest_joint", "least_lap", "least_piece"):
            notebook.read(("masonry", key), getattr(plan.masonry, key))  # what is no length is told at once with the unit
        return None
    return read_masonry(plan.masonry, unit, notebook)


def _check_walls(walls: tuple[ReadWall, ...], masonry: Masonry | None, notebook: Notebook) -> None:
    for wall in walls:
        check_openings(wall, masonry, notebook)
        check_outline(wall, masonry, notebook)
        if masonry is not None:
            check_wall(wall, masonry, notebook)
        if masonry is not None and masonry.one_brick:
            check_one_brick(wall, masonry, notebook)
    if masonry is not None:
        check_amount(walls, masonry, notebook)
        check_header_courses(walls, masonry, notebook)
    check_corners(walls, masonry, notebook)
    check_abuts(walls, masonry, notebook)
    check_piers(walls, masonry, notebook)
    if masonry is not None and not notebook.wrongs:
        check_places(walls, masonry, notebook)
