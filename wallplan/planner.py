"""The whole way in one screen: plan file -> job -> layout -> findings -> lists -> sheets -> files.

Each step is a function of the one before and changes nothing that it is given. From code::

    from pathlib import Path
    from wallplan.planner import lay_plan, prove
    layout = lay_plan(Path("samples/ticket-kiosk.toml"))
    for finding in prove(layout):
        print(finding.rule, finding.held, finding.figure)
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from wallplan.files import slug
from wallplan.findings import Finding
from wallplan.layout.model import Layout, WallLayout

if TYPE_CHECKING:
    from collections.abc import Sequence

    from wallplan.advice.compare import Alternative
    from wallplan.drawing.face import FaceName
    from wallplan.lists.order.line import Order

SHEETS = ("wall", "course", "marks", "pole", "leads", "saw-list", "order", "days")
"""What ``draw_set`` makes, as ``only`` names it."""

LESSON = ("build-up", "courses", "pole", "blank", "quiz", "wrong-wall", "marking", "answer", "quiz-answers", "key", "page")
"""What ``draw_lesson`` makes, as ``only`` names it."""


def lay_plan(path: Path) -> Layout:
    """Read a plan file and lay out its walls. Raises PlanError with every mistake where the plan cannot be used."""
    from wallplan.layout.build import lay
    from wallplan.plan.load import load_plan

    return lay(load_plan(path))


def prove(layout: Layout) -> tuple[Finding, ...]:
    """Every rule in every wall, measured on the finished layout by code that had no part in laying it."""
    from wallplan.rules.check import check

    return check(layout)


def name_broken_rules(layout: Layout) -> tuple[Finding, ...]:
    """The rules that a layout breaks; () for none.

    Measured are walls that may break one, and all that meet others or have piers or control joints: what is searched apart
    and joined afterwards is not taken for kept. A wall between two free ends that was laid with every rule kept is.
    """
    doubtful = [wall for wall in layout.walls if wall.doubtful or _is_joined(wall)]
    if not doubtful:
        return ()
    from wallplan.rules.check import check_meetings, check_wall

    found = [finding for wall in doubtful for finding in check_wall(wall, layout.job)]
    return tuple(finding for finding in (*found, *check_meetings(layout)) if not finding.held)


def _is_joined(laid: WallLayout) -> bool:
    wall = laid.wall
    return bool(wall.piers or wall.control_joints or wall.abuts) or (wall.left_end, wall.right_end) != ("end", "end")


def take_off(layout: Layout) -> Order:
    """The order of a layout: units, mortar, grout, steel, each with how it was counted, and how the days fall."""
    from wallplan.lists.order.compose import list_order

    return list_order(layout)


def draw_set(layout: Layout, findings: tuple[Finding, ...], paper: str | None, only: tuple[str, ...], *,
             face: FaceName = "outside", full_size: bool = False) -> dict[str, bytes]:
    """The sheets and lists of a job: file name -> contents. ``only`` names some of SHEETS, () for all of them.

    ``face`` is which face of each wall its own sheets show; a set of inside faces has file names of its own.
    ``full_size`` adds the story pole in full size.
    """
    from wallplan.lists.csv_files import write_saw_csv
    from wallplan.lists.cuts import list_cuts
    from wallplan.lists.marks import list_marks, write_marks_csv
    from wallplan.lists.order.report import write_days_csv, write_order_csv

    job, wanted = slug(layout.job.title), only or SHEETS
    order = None if {"order", "days"}.isdisjoint(wanted) else take_off(layout)
    files = _draw_pages(layout, findings, paper, wanted, order, (face, full_size))
    if "marks" in wanted:
        files[f"{job}-marks.csv"] = write_marks_csv(list_marks(layout), layout.job.measure).encode()
    if "saw-list" in wanted:
        cuts = list_cuts(layout, order.sawings if order else None)
        files[f"{job}-saw-list.csv"] = write_saw_csv(cuts, layout.job.measure).encode()
    if order is not None and "order" in wanted:
        files[f"{job}-order.csv"] = write_order_csv(order).encode()
    if order is not None and "days" in wanted:
        files[f"{job}-days.csv"] = write_days_csv(order, layout.job.measure).encode()
    return files


def _draw_pages(layout: Layout, findings: tuple[Finding, ...], paper: str | None,
                kinds: tuple[str, ...], order: Order | None, ways: tuple[FaceName, bool]) -> dict[str, bytes]:
    """An SVG for each sheet and one PDF of all; nothing where nothing is drawn."""
    from wallplan.drawing.sheet_set import DRAWN, draw_sheets

    face, full_size = ways
    drawing = (draw_sheets(layout, findings, paper, kinds, order, face=face, full_size=full_size)
               if set(kinds) & set(DRAWN) else None)
    if drawing is None or not drawing.pages:
        return {}
    from wallplan.drawing.pdf import draw_pdf
    from wallplan.drawing.svg import draw_svg

    job = slug(layout.job.title)
    whole = f"{job}-inside.pdf" if face == "inside" else f"{job}.pdf"
    return {**{f"{job}-{page.name}.svg": draw_svg(page) for page in drawing.pages}, whole: draw_pdf(drawing)}


def draw_lesson(layout: Layout, findings: tuple[Finding, ...], paper: str | None, only: tuple[str, ...]) -> dict[str, bytes]:
    """The teaching pack of a job: file name -> contents. ``only`` names some of LESSON, () for all of them."""
    job, wanted = f"{slug(layout.job.title)}-lesson", only or LESSON
    files = _draw_lesson_sheets(layout, findings, paper, wanted, job)
    if "page" in wanted:
        from wallplan.teaching.page.build import write_page

        files[f"{job}.html"] = write_page(layout)
    return files


def _draw_lesson_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kinds: tuple[str, ...],
                        job: str) -> dict[str, bytes]:
    """An SVG for each lesson sheet and one PDF of all; nothing where nothing is drawn."""
    from wallplan.teaching.lesson import DRAWN, draw_lesson_sheets

    drawing = draw_lesson_sheets(layout, findings, paper, kinds) if set(kinds) & set(DRAWN) else None
    if drawing is None or not drawing.pages:
        return {}
    from wallplan.drawing.pdf import draw_pdf
    from wallplan.drawing.svg import draw_svg

    return {**{f"{job}-{page.name}.svg": draw_svg(page) for page in drawing.pages}, f"{job}.pdf": draw_pdf(drawing)}


def draw_alternatives_sheet(alternatives: Sequence[Alternative], paper: str | None = None) -> dict[str, bytes]:
    """The sheet of alternatives, the plan itself first: file name -> contents; {} where nothing can be laid."""
    from wallplan.drawing.alternatives_sheet import draw_alternatives
    from wallplan.drawing.pdf import draw_pdf
    from wallplan.drawing.svg import draw_svg

    layout = alternatives[0].layout if alternatives else None
    drawing = draw_alternatives(layout, alternatives, paper) if layout is not None else None
    if layout is None or drawing is None or not drawing.pages:
        return {}
    name = f"{slug(layout.job.title)}-alternatives"
    return {f"{name}.svg": draw_svg(drawing.pages[0]), f"{name}.pdf": draw_pdf(drawing)}
