"""Which paper way, scale and split a wall's sheets take: decided by measuring, before anything is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wallplan.drawing.cut_table import Row, list_rows, set_cuts
from wallplan.drawing.dimensions import is_complete, running_height, side_widths, stagger
from wallplan.drawing.face import Face, FaceName, show_face
from wallplan.drawing.hidden_cuts import tell_hidden
from wallplan.drawing.key import set_key
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES
from wallplan.drawing.letters import fit_letter
from wallplan.drawing.opening_labels import note_openings
from wallplan.drawing.panel import Line, Panel, set_lines
from wallplan.drawing.paper import BORDER, SCALES, Paper, Scale, readable_scales
from wallplan.drawing.piers_in_face import stand_before
from wallplan.drawing.primitives import Box
from wallplan.drawing.print_check import set_print_check
from wallplan.drawing.splitting import split_wall
from wallplan.drawing.tally import Tally, tally
from wallplan.drawing.title_block import Sheet, set_notes, set_title_block, tell_part
from wallplan.drawing.view import View, Window, whole
from wallplan.findings import Finding
from wallplan.layout.model import WallLayout
from wallplan.lists.cuts import Cut, list_wall_cuts
from wallplan.plan.job import Job

COLUMN = 84.0
"""Width of the panels' column where they stand beside the wall, mm."""

GAP = 2.5
"""Between the drawing and the panels, mm."""

MOST_SHEETS = 60
"""A wall that takes more at a readable scale is drawn at the smallest scale of all."""

LONGEST_PART = tell_part("10'-10 15/16\"", "100'-10 15/16\"", (100, 100))
"""Room that is kept in the title block for which part of a wall is shown."""

CUTS_APART = "CUTS: their sizes are on the last sheet of this wall"

_MOST_TRIES = 6
"""Of lower and lower rows of a tall wall; more are not needed, as each row tells less."""

LONGEST_TABLE = 0.36
"""A cut table over this part of the sheet's height has sheets of its own where the wall then stands larger or on fewer."""


@dataclass(frozen=True)
class Subject:
    """What is to be drawn: a wall of a job as a face shows it, its findings, and its cuts."""

    wall: WallLayout
    job: Job
    findings: tuple[Finding, ...]
    cuts: tuple[Row, ...]
    tally: Tally
    face: Face


@dataclass(frozen=True)
class Arrangement:
    """A way to draw a wall. ``figures`` is the height of marks, course numbers and distances, mm."""

    paper: Paper
    scale: Scale
    beside: bool
    figures: float


@dataclass(frozen=True)
class Panels:
    """The panels of a sheet, as wide as they are drawn."""

    title: Panel
    cuts: Panel
    key: Panel
    notes: Panel
    check: Panel


@dataclass(frozen=True)
class SheetPlan:
    """How a wall is drawn, and the window of each sheet. ``apart`` is True where its cuts have sheets of their own."""

    arrangement: Arrangement
    windows: tuple[Window, ...]
    apart: bool


def make_subject(wall: WallLayout, job: Job, findings: tuple[Finding, ...], cuts: tuple[Cut, ...],
                 name: FaceName = "outside") -> Subject:
    """A wall with all that the sheets of one of its faces say of it. ``cuts`` is the job's saw list."""
    seen, face = show_face(stand_before(wall, job.masonry.thickness, name), job.masonry.thickness, name)
    rows = list_rows(list_wall_cuts(wall, cuts), job, tell_hidden(wall, seen))
    return Subject(seen, job, findings, rows, tally(seen), face)


def plan_sheets(subject: Subject, paper: Paper) -> SheetPlan:
    """The largest scale at which the whole wall fits one sheet, with its cuts' sizes if it can, else the split into the
    fewest sheets."""
    measured = subject.job.measure
    readable = readable_scales(measured, subject.job.masonry.unit.gauge)
    split: list[SheetPlan] = []
    for scale in readable:
        for plan in _try_scale(subject, paper, scale):
            if len(plan.windows) == 1:
                return plan
            split.append(plan)
    best = _fewest(split)
    if best is None or len(best.windows) > MOST_SHEETS:
        smaller = (scale for scale in SCALES[measured] if scale not in readable)
        best = _fewest([*split, *(plan for scale in smaller for plan in _try_scale(subject, paper, scale))])
    return best or _plan(subject, Arrangement(paper, SCALES[measured][-1], False, FIGURES), True, forced=True)


def _fewest(plans: list[SheetPlan]) -> SheetPlan | None:
    """The plan of fewest sheets, then of the largest scale, then without much of the wall on two sheets; None for none."""
    return min(plans, key=lambda plan: (len(plan.windows) + plan.apart, plan.arrangement.scale.ratio, _shown_twice(plan)),
               default=None)


def _shown_twice(plan: SheetPlan) -> int:
    """In quarters, what all windows show over what they reach over together: a long lintel is drawn whole on both sheets."""
    windows = plan.windows
    across = max(window.right for window in windows) - min(window.left for window in windows)
    high = max(window.top for window in windows) - min(window.bottom for window in windows)
    shown = sum((window.right - window.left) * (window.top - window.bottom) for window in windows)
    return 4 * shown // max(1, across * high)


def _try_scale(subject: Subject, paper: Paper, scale: Scale) -> Iterator[SheetPlan]:
    """Every way to draw at a scale that has room for the panels, the preferred first: the cuts' sizes beside the wall."""
    wide = subject.wall.wall.length >= subject.wall.wall.height
    ways = (paper, paper.turned()) if wide else (paper.turned(), paper)
    arrangements = [Arrangement(way, scale, beside, figures) for figures in (LARGE_FIGURES, FIGURES) for way in ways
                    for beside in (False, True)]
    for apart in (False, True):
        for arrangement in arrangements:
            if apart and not _has_long_table(subject, arrangement):
                continue
            plan = _plan(subject, arrangement, apart)
            if plan.windows:
                yield plan


def _plan(subject: Subject, arrangement: Arrangement, apart: bool, *, forced: bool = False) -> SheetPlan:
    """The sheets of an arrangement; no windows where it leaves no room for the wall, unless ``forced``."""
    scale, figures, window = arrangement.scale, arrangement.figures, whole(subject.wall)
    notes = note_window(subject, arrangement, window)
    width, height = find_room(subject, arrangement, set_panels(subject, arrangement, Sheet(999, 999), notes, apart))
    left, right = side_widths(subject.job, subject.wall, figures, subject.face)
    across = scale.on_wall(max(0.0, width - left - right))
    if forced or (across >= window.right - window.left and height > 0 and _stands(subject, arrangement, width, height)):
        return SheetPlan(arrangement, (window,), apart)
    return SheetPlan(arrangement, _split(subject, arrangement, across, apart), apart)


def _stands(subject: Subject, arrangement: Arrangement, width: float, height: float) -> bool:
    """Whether the whole wall stands in a room as wide as it is, with its figures, none left out."""
    window, figures = whole(subject.wall), arrangement.figures
    drawn = place_across(subject, arrangement, window, width)
    told = stagger(drawn, figures)
    up = height - running_height(told, figures) - head_room(subject, arrangement, split=False)
    return arrangement.scale.on_wall(max(0.0, up)) >= window.top - window.bottom and is_complete(drawn, told)


def _split(subject: Subject, arrangement: Arrangement, across: int, apart: bool) -> tuple[Window, ...]:
    """Windows of at most ``across`` ticks, as high as the sheet with the most to tell has room for; () for under three
    courses."""
    def split(up: int) -> tuple[Window, ...]:
        return split_wall(subject.wall, subject.tally, subject.job.masonry.module, across, up)

    up = subject.wall.wall.height + 10**9
    windows = split(up) if across > 0 else ()
    for _ in range(_MOST_TRIES):
        room = [_measure_up(subject, arrangement, window, apart) for window in windows]
        if all(window.top - window.bottom <= most for window, most in zip(windows, room, strict=True)):
            return windows
        if 0 in room:
            return ()
        up = min(*room, up - 1)
        windows = split(up) if up >= 3 * subject.job.masonry.unit.gauge else ()
    return ()


def _measure_up(subject: Subject, arrangement: Arrangement, window: Window, apart: bool) -> int:
    """How much of a window's height has room over its figures, beside what its sheet tells, ticks; 0 where a figure is left
    out."""
    figures = arrangement.figures
    width, height = find_room(subject, arrangement, set_panels(
        subject, arrangement, Sheet(999, 999, (99, 99), LONGEST_PART), note_window(subject, arrangement, window), apart))
    drawn = place_across(subject, arrangement, window, width)
    told = stagger(drawn, figures)
    above = head_room(subject, arrangement, split=True)
    room = arrangement.scale.on_wall(max(0.0, height - running_height(told, figures) - above))
    return room if is_complete(drawn, told) else 0


def note_window(subject: Subject, arrangement: Arrangement, window: Window) -> tuple[str, ...]:
    """What finds no room on a window's own openings."""
    return note_openings(View(subject.job, subject.wall, window, arrangement.scale, 0.0, 0.0, subject.face))


def place_across(subject: Subject, arrangement: Arrangement, window: Window, width: float) -> View:
    """A window in the middle of ``width`` mm from the border on, with its figures left and right; its y still 0."""
    left, right = side_widths(subject.job, subject.wall, arrangement.figures, subject.face)
    wide = arrangement.scale.on_paper(window.right - window.left)
    x = BORDER + left + max(0.0, width - left - right - wide) / 2
    return View(subject.job, subject.wall, window, arrangement.scale, x, 0.0, subject.face, (BORDER, BORDER + width))


def _has_long_table(subject: Subject, arrangement: Arrangement) -> bool:
    table = set_cuts(subject.cuts, panel_widths(arrangement)[1], 0.0)
    return table.height > LONGEST_TABLE * arrangement.paper.usable_height


def panel_widths(arrangement: Arrangement) -> tuple[float, float]:
    """Widths of the title block and of the cut table, mm."""
    if arrangement.beside:
        return COLUMN, COLUMN
    title = (arrangement.paper.usable_width - GAP) / 2
    return title, title


def set_panels(subject: Subject, arrangement: Arrangement, sheet: Sheet, notes: tuple[str, ...],
               apart: bool) -> Panels:
    """The panels of one sheet."""
    full = arrangement.paper.usable_width
    width, table = panel_widths(arrangement)
    title = set_title_block(subject.wall, subject.job, arrangement.scale, sheet, width, subject.face)
    key = set_key(subject.wall, subject.tally, table, split=bool(sheet.shows))
    cuts = (set_lines((Line(CUTS_APART),), table) if apart
            else set_cuts(subject.cuts, table, title.height - key.height))
    return Panels(
        title, cuts, key,
        set_notes(subject.wall, subject.findings, notes, full),
        set_print_check(arrangement.scale, subject.job.measure, full),
    )


def find_room(subject: Subject, arrangement: Arrangement, panels: Panels) -> tuple[float, float]:
    """Width and height that the panels leave for the wall with its dimensions, mm; (0, 0) where they do not fit."""
    paper = arrangement.paper
    foot = panels.notes.height + panels.check.height
    table = panels.cuts.height + panels.key.height
    if not arrangement.beside:
        return paper.usable_width, paper.usable_height - foot - max(panels.title.height, table) - GAP
    if panels.title.height + table + GAP > paper.usable_height - foot:
        return 0.0, 0.0
    return paper.usable_width - COLUMN - GAP, paper.usable_height - foot - GAP


def head_room(subject: Subject, arrangement: Arrangement, *, split: bool) -> float:
    """Room over the wall for its top's height, letters with leaders, control joints and match lines, mm."""
    scale = arrangement.scale
    leaders = any(
        fit_letter(Box(0, 0, scale.on_paper(length), scale.on_paper(height)), mark) is None
        for length, height, mark in subject.tally.marked
    )
    lettered = split or subject.wall.wall.control_joints
    return max(0.6 * arrangement.figures, 8.5 if leaders else 0.0, 9.5 if lettered else 0.0)
