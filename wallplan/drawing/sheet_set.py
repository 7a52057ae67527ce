"""The set: every kind of sheet that was asked for, as pages of one drawing, in the order in which they are used."""

from __future__ import annotations

from wallplan.drawing.drafts import Draft, number_sheets
from wallplan.drawing.face import FaceName
from wallplan.drawing.lettering import clean
from wallplan.drawing.primitives import Drawing
from wallplan.findings import Finding
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Order

DRAWN = ("wall", "course", "marks", "pole", "leads", "saw-list", "order", "days")
"""The kinds of sheet that are drawn, in the order of their pages."""


def draw_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kinds: tuple[str, ...],
                order: Order | None = None, *, face: FaceName = "outside", full_size: bool = False) -> Drawing:
    """The sheets of these kinds, numbered over all of them; kinds that are not drawn give none. Raises UnknownPaper.

    Sheets of more than one kind have a list of sheets before them. ``order`` is the layout's order where it has been
    counted already; else it is counted here. ``face`` is which face of each wall its own sheets show;
    with ``full_size`` the pole is drawn in full size too.
    """
    from wallplan.drawing.list_sheet import plan_list_sheets

    wanted = [kind for kind in DRAWN if kind in kinds]
    if order is None and not {"order", "days"}.isdisjoint(wanted):
        order = list_order(layout)
    drafts = [draft for kind in wanted for draft in (
        *_plan(layout, findings, paper, kind, order, face),
        *(_plan_strips(layout, paper) if kind == "pole" and full_size else ()))]
    listed = plan_list_sheets(layout, findings, paper, tuple(drafts)) if len(wanted) > 1 else ()
    return Drawing(clean(layout.job.title), number_sheets((*listed, *drafts)))


def _plan(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kind: str,
          order: Order | None, face: FaceName) -> tuple[Draft, ...]:
    from wallplan.drawing.course_sheet import plan_course_sheets
    from wallplan.drawing.day_sheet import plan_day_sheets
    from wallplan.drawing.leads_sheet import plan_leads_sheets
    from wallplan.drawing.marks_sheet import plan_marks_sheets
    from wallplan.drawing.order_sheet import plan_order_sheets
    from wallplan.drawing.pier_sheet import plan_pier_sheets
    from wallplan.drawing.pole_sheet import plan_pole_sheets
    from wallplan.drawing.saw_sheet import plan_saw_sheets
    from wallplan.drawing.wall_sheet import plan_wall_sheets

    match kind:
        case "wall":
            return plan_wall_sheets(layout, findings, paper, face, order.sawings if order else None)
        case "course":
            return (*plan_course_sheets(layout, paper), *plan_pier_sheets(layout, paper))
        case "marks":
            return plan_marks_sheets(layout, paper)
        case "pole":
            return plan_pole_sheets(layout, paper)
        case "leads":
            return plan_leads_sheets(layout, paper)
        case "saw-list":
            return plan_saw_sheets(layout, paper, order.sawings if order else None)
        case "order":
            return plan_order_sheets(layout, order, paper) if order else ()
        case _:
            return plan_day_sheets(layout, order, paper) if order else ()


def _plan_strips(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    from wallplan.drawing.pole_full_size import plan_full_size_sheets

    return plan_full_size_sheets(layout, paper)
