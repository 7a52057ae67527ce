"""The set: every kind of sheet that was asked for, as pages of one drawing, in the order in which they are used."""

from __future__ import annotations

from wallplan.drawing.lettering import clean
from wallplan.drawing.primitives import Drawing, Page
from wallplan.findings import Finding
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Order

DRAWN = ("wall", "course", "marks", "pole", "leads", "saw-list", "order")
"""The kinds of sheet that are drawn, in the order of their pages."""


def draw_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kinds: tuple[str, ...],
                order: Order | None = None) -> Drawing:
    """The sheets of these kinds; kinds that are not drawn give none. Raises UnknownPaper.

    ``order`` is the layout's order where it has been counted already; else it is counted here.
    """
    if order is None and "order" in kinds:
        order = list_order(layout)
    pages = [page for kind in DRAWN if kind in kinds for page in _draw(layout, findings, paper, kind, order)]
    return Drawing(clean(layout.job.title), tuple(pages))


def _draw(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kind: str,
          order: Order | None) -> tuple[Page, ...]:
    from wallplan.drawing.course_sheet import draw_course_sheets
    from wallplan.drawing.leads_sheet import draw_leads_sheets
    from wallplan.drawing.marks_sheet import draw_marks_sheets
    from wallplan.drawing.order_sheet import draw_order_sheets
    from wallplan.drawing.pole_sheet import draw_pole_sheets
    from wallplan.drawing.saw_sheet import draw_saw_sheets
    from wallplan.drawing.wall_sheet import draw_wall_sheets

    match kind:
        case "wall":
            return draw_wall_sheets(layout, findings, paper).pages
        case "course":
            return draw_course_sheets(layout, paper)
        case "marks":
            return draw_marks_sheets(layout, paper)
        case "pole":
            return draw_pole_sheets(layout, paper)
        case "leads":
            return draw_leads_sheets(layout, paper)
        case "saw-list":
            return draw_saw_sheets(layout, paper)
        case _:
            return draw_order_sheets(layout, order, paper) if order else ()
