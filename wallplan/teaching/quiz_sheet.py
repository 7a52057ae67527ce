"""The quiz on paper: questions with room to write, and the answers on sheets of their own."""

from __future__ import annotations

from functools import partial
from typing import NamedTuple

from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.drafts import Draft
from wallplan.drawing.flow import Block, count_sheets, draw_flow, flow
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, shorten
from wallplan.drawing.outlines import THIN_LINE
from wallplan.drawing.panel import PADDING, Line, Panel, set_lines
from wallplan.drawing.paper import Paper
from wallplan.drawing.primitives import Page, Segment, Strokes
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.teaching.quiz import Question, ask_wall

MOST_WALLS = 8
"""More walls are left out of the quiz."""

_LINE = 46.0
_DROP = 6.5
_BETWEEN = 6.0


class _Plan(NamedTuple):
    """Questions ``width`` mm wide, which of them stand under each other, and how many such stacks ``abreast`` on a sheet."""

    paper: Paper
    width: float
    blocks: tuple[Block, ...]
    stacks: tuple[tuple[int, int], ...]
    abreast: int

    @property
    def sheets(self) -> int:
        """How many sheets they take; 0 for none."""
        return count_sheets(self.stacks, self.abreast)


def plan_quiz_sheets(layout: Layout, paper: Paper, *, answers: bool) -> tuple[Draft, ...]:
    """The quiz, or its answers, on as many sheets as it takes; () for no walls."""
    heading = _make_heading(layout, answers)
    plans = [_plan(layout, heading, answers, way) for way in ((paper.turned(), 1), (paper.turned(), 2), (paper, 2))]
    best = min((plan for plan in plans if plan.stacks), key=lambda plan: plan.sheets, default=plans[0])
    title = "Quiz, answers" if answers else "Quiz"
    return tuple(Draft(title, (number, best.sheets), partial(_draw_page, layout, heading, best, answers))
                 for number in range(1, best.sheets + 1))


def _plan(layout: Layout, heading: Heading, answers: bool, way: tuple[Paper, int]) -> _Plan:
    """The questions under each other in stacks, so many of them abreast on paper held one way."""
    paper, abreast = way
    room = find_room(layout, paper, heading, None)
    width = (room.width - (abreast - 1) * _BETWEEN) / abreast
    blocks = tuple(_set_blocks(layout, width, answers))
    return _Plan(paper, width, blocks, flow(blocks, room.height, abreast=abreast), abreast)


def _make_heading(layout: Layout, answers: bool) -> Heading:
    told = (("Counted and measured on the same layout as all sheets.", "Keep this sheet from who has still to answer.")
            if answers else ("Answer from the build-up, the pole and the marks. Lengths as the tape reads.",
                             "Name: ____________________  Date: __________"))
    face = f"{len(layout.walls)} {'wall' if len(layout.walls) == 1 else 'walls'}; distances from each wall's left end."
    return Heading("QUIZ: ANSWERS" if answers else "QUIZ", face, told, SETTING_OUT, layout.walls)


def _set_blocks(layout: Layout, width: float, answers: bool) -> list[Block]:
    blocks: list[Block] = []
    number = 0
    for index, wall in enumerate(layout.walls[:MOST_WALLS]):
        asked = ask_wall(layout, index)
        if asked:
            name = shorten(clean(wall.wall.name), LARGE_FIGURES, width - 2 * PADDING)
            blocks.append(Block(set_lines((Line(name, LARGE_FIGURES),), width), tied=True))
        for question in asked:
            number += 1
            blocks.append(Block(_set_question(number, question, width, answers)))
    return blocks


def _set_question(number: int, question: Question, width: float, answers: bool) -> Panel:
    """The question, with a line to write on, or with its answer and how it is found."""
    asked = Line(f"{number}. {clean(question.text)}", FIGURES)
    if answers:
        panel = set_lines((asked, Line(question.answer, LARGE_FIGURES), Line(clean(question.how), SMALLEST)), width)
        return Panel(width, panel.height + 2.0, panel.ink)
    panel = set_lines((asked,), width)
    y = panel.height + _DROP
    right = min(PADDING + 6.0 + _LINE, width)
    return Panel(width, y + 2.0, (*panel.ink, Strokes((Segment(PADDING + 6.0, y, right, y),), THIN_LINE)))


def _draw_page(layout: Layout, heading: Heading, plan: _Plan, answers: bool, sheet: Sheet) -> Page:
    board = frame_sheet(layout, plan.paper, heading, None, sheet)
    room = find_room(layout, plan.paper, heading, None)
    start = (sheet.part[0] - 1) * plan.abreast
    for number, stack in enumerate(plan.stacks[start : start + plan.abreast]):
        left = room.left + number * (plan.width + _BETWEEN)
        draw_flow(board, [block.panel for block in plan.blocks[slice(*stack)]], room._replace(left=left))
    told = "Questions about the walls, with their answers." if answers else "Questions about the walls."
    return make_page(layout, board, "quiz-answers" if answers else "quiz", heading, sheet, told)
