"""What stands round every sheet of the set but the wall's own: title block, what is told, cautions, print check."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, fit_heading
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.panel import PADDING, Line, Panel, set_lines, stand
from wallplan.drawing.paper import BORDER, Paper, Scale
from wallplan.drawing.primitives import Box, Page
from wallplan.drawing.print_check import set_print_check
from wallplan.drawing.title_block import Sheet, print_bond, print_place, print_sizes, print_unit
from wallplan.layout.model import Layout, WallLayout
from wallplan.plan.job import Job

GAP = 2.5
"""Between the drawing and what stands round it, mm."""

_SHARES = (0.5, 0.54, 0.58, 0.62, 0.66, 0.46, 0.42)
"""Of the width for the title block, the preferred first."""

_PLANNED = Sheet(999, 999, (99, 99))


@dataclass(frozen=True)
class Heading:
    """What a sheet says of itself: ``title``, ``face`` (what is seen, and where figures start), the lines told beside the
    title block, and the cautions that fit the sheet with their sources. ``walls`` are those that it draws."""

    title: str
    face: str
    told: tuple[str, ...]
    cautions: str
    walls: tuple[WallLayout, ...]


@dataclass(frozen=True)
class _Foot:
    title: Panel
    told: Panel
    cautions: Panel
    check: Panel

    @property
    def height(self) -> float:
        return max(self.title.height, self.told.height) + self.cautions.height + self.check.height


def find_room(layout: Layout, paper: Paper, heading: Heading, scale: Scale | None) -> Box:
    """The part of a sheet that is left for its drawing; upside down where nothing is. ``scale`` None: not to scale."""
    foot = _set_foot(layout.job, paper, heading, scale, _PLANNED)
    return Box(BORDER, BORDER, paper.width - BORDER, paper.height - BORDER - foot.height - GAP)


def frame_sheet(layout: Layout, paper: Paper, heading: Heading, scale: Scale | None, sheet: Sheet) -> Board:
    """A board with everything round the drawing on it. Raises ValueError for a heading without walls."""
    board = Board(paper)
    foot = _set_foot(layout.job, paper, heading, scale, sheet)
    top = paper.height - BORDER - foot.check.height
    stand(board, foot.check, BORDER + 2.0, top)
    stand(board, foot.cautions, BORDER, top - foot.cautions.height)
    height = max(foot.title.height, foot.told.height)
    top -= foot.cautions.height + height
    for panel, left in ((foot.title, BORDER), (foot.told, paper.width - BORDER - foot.told.width)):
        box = Box(left, top, left + panel.width, top + height)
        stand(board, panel, left, top)
        board.outline([box.shrunk(UNIT_LINE / 2)], UNIT_LINE)
    return board


def _set_foot(job: Job, paper: Paper, heading: Heading, scale: Scale | None, sheet: Sheet) -> _Foot:
    """The foot with the title block as wide as makes it lowest."""
    feet = (_set_share(job, paper, heading, (scale, sheet), share) for share in _SHARES)
    return min(feet, key=lambda foot: round(foot.height, 3))


def _set_share(job: Job, paper: Paper, heading: Heading, place: tuple[Scale | None, Sheet], share: float) -> _Foot:
    """The foot with so much of the sheet's width for the title block, at a scale and place in the set."""
    scale, sheet = place
    both = paper.usable_width - GAP
    width = both * share
    room = width - 2 * PADDING
    lines = (
        Line(*fit_heading(clean(heading.title), (LARGE_FIGURES, FIGURES, SMALLEST), room)),
        Line(*fit_heading(clean(job.title), (FIGURES, SMALLEST), room)),
        *(Line(line) for line in (heading.face, print_unit(job), print_bond(heading.walls, job), print_sizes(job),
                                  print_place(job, scale, sheet)) if line),
    )
    return _Foot(
        set_lines(lines, width), set_lines(tuple(Line(line) for line in heading.told), both - width),
        set_lines((Line(heading.cautions),), paper.usable_width),
        set_print_check(scale, job.measure, paper.usable_width),
    )


def make_page(layout: Layout, board: Board, name: str, heading: Heading, sheet: Sheet, described: str) -> Page:
    """The finished page; ``name`` gets the part's number from the second on."""
    end = name if sheet.part[0] == 1 else f"{name}-{sheet.part[0]}"
    title = f"{clean(layout.job.title)}: {clean(heading.title)}, sheet {sheet.number} of {sheet.count}"
    return Page(board.paper, end, title, described, tuple(board.ink))
