"""The quiz on paper: questions with room to write, and the answers on sheets of their own."""

from __future__ import annotations

from functools import partial

from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.drafts import Draft
from wallplan.drawing.flow import Block, draw_flow, flow
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


def plan_quiz_sheets(layout: Layout, paper: Paper, *, answers: bool) -> tuple[Draft, ...]:
    """The quiz, or its answers, on as many sheets as it takes; () for no walls."""
    way = paper.turned()
    heading = _make_heading(layout, answers)
    room = find_room(layout, way, heading, None)
    blocks = _set_blocks(layout, room.width, answers)
    parts = flow(blocks, room.height)
    title = "Quiz, answers" if answers else "Quiz"
    return tuple(Draft(title, (number, len(parts)), partial(_draw_page, layout, way, heading, blocks[slice(*part)], answers))
                 for number, part in enumerate(parts, start=1))


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


def _draw_page(layout: Layout, paper: Paper, heading: Heading, blocks: list[Block], answers: bool, sheet: Sheet) -> Page:
    board = frame_sheet(layout, paper, heading, None, sheet)
    draw_flow(board, [block.panel for block in blocks], find_room(layout, paper, heading, None))
    told = "Questions about the walls, with their answers." if answers else "Questions about the walls."
    return make_page(layout, board, "quiz-answers" if answers else "quiz", heading, sheet, told)
