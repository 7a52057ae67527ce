"""The lesson: its sheets for paper, in the order in which they are used, answers last."""

from __future__ import annotations

from wallplan.drawing.course_sheet import plan_course_sheets
from wallplan.drawing.drafts import Draft, number_sheets
from wallplan.drawing.lettering import clean
from wallplan.drawing.paper import Paper, find_paper
from wallplan.drawing.primitives import Drawing
from wallplan.drawing.wall_sheet import name_walls
from wallplan.findings import Finding
from wallplan.layout.model import Layout
from wallplan.teaching.build_up import plan_build_up
from wallplan.teaching.draw_it import plan_drawing_sheets
from wallplan.teaching.marking_sheet import plan_marking_sheets
from wallplan.teaching.pole_page import plan_pole_pages
from wallplan.teaching.quiz_sheet import plan_quiz_sheets
from wallplan.teaching.wrong_sheet import plan_wrong_sheets
from wallplan.teaching.wrong_wall import WrongWall, seed_faults

DRAWN = ("build-up", "courses", "pole", "blank", "quiz", "wrong-wall", "marking", "answer", "quiz-answers", "key")
"""The kinds of lesson sheet that are drawn, in the order of their pages."""


def draw_lesson_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None, kinds: tuple[str, ...]) -> Drawing:
    """The lesson's sheets of these kinds; kinds that are not drawn give none. Raises UnknownPaper.

    ``findings`` are the layout's: where rules are broken, the build-up says so.
    """
    sheet = find_paper(paper, layout.job.measure)
    wrong = seed_faults(layout) if {"wrong-wall", "key"} & set(kinds) else None
    drafts = [draft for kind in DRAWN if kind in kinds for draft in _plan(layout, findings, sheet, kind, wrong)]
    return Drawing(clean(layout.job.title), number_sheets(drafts))


def _plan(layout: Layout, findings: tuple[Finding, ...], paper: Paper, kind: str,
          wrong: WrongWall | None) -> tuple[Draft, ...]:
    names = tuple(name.removeprefix("wall-") for name in name_walls(tuple(wall.wall.name for wall in layout.walls)))
    match kind:
        case "build-up":
            return plan_build_up(layout, findings, paper, names)
        case "courses":
            return plan_course_sheets(layout, paper.name)
        case "pole":
            return plan_pole_pages(layout, paper)
        case "blank" | "answer":
            return plan_drawing_sheets(layout, paper, names, answer=kind == "answer")
        case "quiz" | "quiz-answers":
            return plan_quiz_sheets(layout, paper, answers=kind == "quiz-answers")
        case "wrong-wall" | "key":
            return plan_wrong_sheets(wrong, paper, key=kind == "key")
        case _:
            return plan_marking_sheets(layout, paper)
