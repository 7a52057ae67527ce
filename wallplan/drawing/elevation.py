"""The elevation: every piece of a wall as it is seen, with its openings, lintels, leads and control joints."""

from __future__ import annotations

from collections.abc import Iterable

from wallplan.drawing.board import Board
from wallplan.drawing.hatching import hatch_cut, hatch_half, hatch_part
from wallplan.drawing.lettering import FIGURES, Placer, centre_text, measure_text
from wallplan.drawing.letters import Ground, letter_cuts, room_in
from wallplan.drawing.opening_labels import letter_openings, name_openings
from wallplan.drawing.outlines import CONTROL_WIDTH, HEAVY_LINE, THIN_LINE, UNIT_LINE, Cell, find_cells
from wallplan.drawing.paper import BORDER
from wallplan.drawing.piers_in_face import projection
from wallplan.drawing.primitives import Box, Dash, Segment, Text
from wallplan.drawing.view import View
from wallplan.drawing.wall_shape import clip_hatch, free_paper, letter_levels, outline_lines
from wallplan.lengths import print_length

LINTEL_LINE = 0.5
"""Outline of a lintel, mm."""

BEAM_DASH: Dash = (3.0, 1.0, 0.7, 1.0)
"""Along the units of a bond-beam course."""

MATCH_DASH: Dash = (6.0, 1.2, 1.2, 1.2)
"""A match line's."""


def draw_elevation(board: Board, view: View) -> tuple[str, ...]:
    """Draw the window's part of the wall; a line is given back for each stack of cuts whose letter found no room."""
    cells = find_cells(view)
    holes = tuple(view.hole(opening) for opening in view.openings)
    edges = edge_lines(view)
    mark_control_joints(board, view)
    letter_match_lines(board, view)
    letter_openings(board, view)
    board.placer.take_lines(lead_lines(view, cells))
    levels = letter_levels(board, view)
    outline_cells(board, cells, UNIT_LINE)
    outline = view.outline
    band = Box(outline.left, BORDER, outline.right, outline.top - HEAVY_LINE)
    free = () if view.wall.wall.outline is None else free_paper(view, view.wall.wall.outline)
    missing = letter_cuts(board, cells, Ground((*holes, *free), band, tuple(edges) if view.wall.wall.outline else ()))
    name_openings(board, view)
    letter_precast(board, cells)
    hatch_cells(board, cells)
    mark_beams(board, view, cells)
    board.outline([cell.box for cell in cells if cell.piece.shape in ("lintel", "precast")], LINTEL_LINE)
    board.stroke(lead_lines(view, cells), HEAVY_LINE)
    steel = [part for line in steel_lintels(view) for part in board.placer.spare(line, 0.5)]  # a head off the coursing
    board.stroke([*edges, *steel], HEAVY_LINE)
    draw_match_lines(board, view)
    board.placer.take(outline)
    return (*levels, *(tell_stack(stack, view) for stack in missing))


def outline_cells(board: Board, cells: Iterable[Cell], width: float) -> None:
    """The outlines of pieces, each of a raked or notched one's own shape, in lines of ``width`` mm; nothing for no cells."""
    shown = tuple(cells)
    board.outline([cell.box for cell in shown if not cell.shape], width)
    board.stroke([line for cell in shown for line in cell.edges if cell.shape], width)


def tell_stack(stack: tuple[Cell, ...], view: View) -> str:
    """Where cuts of one letter stand plumb over each other, in words."""
    piece, courses = stack[0].piece, [cell.course for cell in stack]
    rows = f"course {courses[0]}" if len(courses) == 1 else f"every other course from {courses[0]} to {courses[-1]}"
    left = view.face.told_left(piece.left, piece.right)
    return f"{piece.mark} also at {print_length(left, view.job.measure)}, {rows}"


def hatch_cells(board: Board, cells: tuple[Cell, ...]) -> None:
    """Hatch what is not a full unit, with a blank round its lettering; nothing for no cells."""
    lines: list[Segment] = []
    for cell in cells:
        if cell.piece.piece == "full":
            continue
        box = cell.box.shrunk(UNIT_LINE / 2)
        blank = _lettering_in(board, cell.box)
        if cell.shape:
            blanks = [lettered.shrunk(-0.35) for lettered in board.placer.all_in(cell.box)]
            lines.extend(clip_hatch(hatch_cut(box, None), cell.shape, blanks))
        elif cell.piece.piece in ("cut", "closer"):
            lines.extend(hatch_cut(box, blank))
        elif cell.piece.piece == "half":
            lines.extend(hatch_half(box, blank))
        else:
            lines.extend(hatch_part(box, blank))
    board.stroke(lines, THIN_LINE)


def _lettering_in(board: Board, box: Box) -> Box | None:
    """What a piece's lettering covers, with a little round it."""
    found = board.placer.find_in(box)
    return found.shrunk(-0.35) if found else None


def mark_beams(board: Board, view: View, cells: tuple[Cell, ...]) -> None:
    """A chain line along the units of each bond beam, broken where a piece is lettered."""
    lines: list[Segment] = []
    for cell in cells:
        if cell.piece.shape == "bond beam" or cell.course in view.wall.wall.bond_beams:
            y = cell.box.centre.y
            lines.extend(board.placer.spare(Segment(cell.box.left, y, cell.box.right, y), 0.5))
    board.stroke(lines, UNIT_LINE, BEAM_DASH)


def letter_precast(board: Board, cells: tuple[Cell, ...]) -> None:
    """Letter the precast lintels that have room for it."""
    for cell in cells:
        if cell.piece.shape == "precast":
            for words in ("PRECAST LINTEL", "PRECAST"):
                text = centre_text(cell.box, words, FIGURES)
                if room_in(cell.box).holds(measure_text(text).shrunk(0.3)) and board.letter_if_free(text):
                    break


def edge_lines(view: View) -> list[Segment]:
    """The wall's own edges and the openings' edges in view; a side cut by a match line is left open."""
    window, wall = view.window, view.wall.wall
    lines = outline_lines(view, wall.outline) if wall.outline else _sides(view, view.outline, (
        window.left == 0, window.right == wall.length, window.bottom == 0, window.top >= view.wall.courses[-1].top))
    for opening in view.openings:
        lines += _sides(view, view.hole(opening), (
            opening.left >= window.left, opening.right <= window.right, window.bottom <= opening.bottom != 0,
            opening.top <= window.top,
        ))
    return lines + _pier_sides(view)


def _pier_sides(view: View) -> list[Segment]:
    """The sides of piers that stand out of the face, where they are in view."""
    window, lines = view.window, list[Segment]()
    reaches = {pier.pier.name: pier.reach for pier in view.wall.piers}
    for pier in view.wall.wall.piers:
        low, high = reaches.get(pier.name, (window.bottom, window.top))
        low, high = max(low, window.bottom), min(high, window.top)
        lines += [Segment(view.across(side), view.up(high), view.across(side), view.up(low))
                  for side in (pier.left, pier.right)
                  if projection(pier, view.face.name) and window.left < side < window.right and low < high]
    return lines


def _sides(view: View, box: Box, drawn: tuple[bool, bool, bool, bool]) -> list[Segment]:
    half = HEAVY_LINE / 2  # corners are closed
    sides = (
        Segment(box.left, box.top - half, box.left, box.bottom + half),
        Segment(box.right, box.top - half, box.right, box.bottom + half),
        Segment(box.left, box.bottom, box.right, box.bottom), Segment(box.left, box.top, box.right, box.top),
    )
    return [side for side, seen in zip(sides, drawn, strict=True) if seen]


def steel_lintels(view: View) -> list[Segment]:
    """A heavy line over each opening that a steel lintel spans, from bearing to bearing."""
    return [
        Segment(view.across(max(opening.left - opening.bearing, view.window.left)), view.up(opening.top),
                view.across(min(opening.right + opening.bearing, view.window.right)), view.up(opening.top))
        for opening in view.openings if opening.lintel == "steel" and opening.top <= view.window.top
    ]


def lead_lines(view: View, cells: tuple[Cell, ...]) -> list[Segment]:
    """The racked-back edge of both leads, course by course; [] where the wall has none."""
    inner: dict[str, dict[int, float]] = {"left": {}, "right": {}}
    for cell in cells:
        if cell.piece.lead == "left":
            inner["left"][cell.course] = max(cell.box.right, inner["left"].get(cell.course, 0))
        elif cell.piece.lead == "right":
            inner["right"][cell.course] = min(cell.box.left, inner["right"].get(cell.course, cell.box.left))
    ends = {"left": view.outline.left, "right": view.outline.right}
    holes = Placer(view.outline)
    holes.take(*(view.hole(opening) for opening in view.openings))
    whole = view.job.masonry.unit.height  # a lead that ends at a jamb runs over the rips under the sill
    holes.take(*(cell.box.shrunk(UNIT_LINE) for cell in cells if cell.piece.height < whole))
    return [part for side, edges in inner.items() if edges
            for line in _stair(view, edges, ends[side]) for part in holes.spare(line, 0.0)]


def _stair(view: View, edges: dict[int, float], end: float) -> list[Segment]:
    lines = []
    before = None
    for course in view.courses:
        x = edges.get(course.number, end)
        low = view.up(course.bottom + (view.wall.bed // 2 if course.bottom else 0))
        top = view.up(course.top + (view.wall.bed // 2 if course is not view.wall.courses[-1] else 0))
        if before is not None and before != x:
            lines.append(Segment(min(before, x) - HEAVY_LINE / 2, low, max(before, x) + HEAVY_LINE / 2, low))
        if x != end:
            lines.append(Segment(x, top, x, low))
        before = x
    return lines


def mark_control_joints(board: Board, view: View) -> None:
    """Two lines standing over the wall at each control joint in view, lettered CJ."""
    half = max(CONTROL_WIDTH, view.scale.on_paper(view.job.masonry.joint)) / 2
    box = view.outline
    for joint in view.wall.wall.control_joints:
        if view.window.left < joint < view.window.right:
            x = view.across(joint)
            lines = [Segment(side, box.top - 3.0, side, box.bottom) for side in (x - half, x + half)]
            board.stroke(lines, UNIT_LINE)
            board.placer.take_lines(lines)
            board.letter(Text(x, box.top - 4.0, "CJ", FIGURES, "middle"))


def letter_match_lines(board: Board, view: View) -> None:
    """The words over each match line, before anything else takes their place."""
    box = view.outline
    for match in view.window.matches:
        x = view.across(match)
        board.placer.take_lines([Segment(x, box.top - 9.0, x, box.top)])
        before = Text(x - 1.5, box.top - 5.0, "MATCH LINE", FIGURES, "end")
        after = Text(x + 1.5, box.top - 5.0, "MATCH LINE", FIGURES)
        if not board.letter_if_free(before, 0.3):
            board.letter_if_free(after, 0.3)
    for level in view.window.levels:
        y = view.up(level)
        board.placer.take_lines([Segment(box.left - 1.5, y, box.right + 1.5, y)])


def draw_match_lines(board: Board, view: View) -> None:
    """A chain line over or along the wall at each match line, broken where it would run through lettering."""
    box = view.outline
    lines = [Segment(x, box.top - 9.0, x, box.bottom) for x in map(view.across, view.window.matches)]
    lines += [Segment(box.left - 1.5, y, box.right + 1.5, y) for y in map(view.up, view.window.levels)]
    board.stroke([part for line in lines for part in board.placer.spare(line, 0.5)], HEAVY_LINE, MATCH_DASH)
