"""Letters of cuts: inside the piece where there is room, else beside it with a leader.

A leader's letter stands for the pieces plumb above or below it in every other course: they are one cut. Each
place for such a letter is free paper: a whole unit beside the piece, an opening, or the sheet above the wall.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, centre_text, measure, measure_text, meets_box
from wallplan.drawing.outlines import HEAVY_LINE, Cell
from wallplan.drawing.primitives import Box, Segment, Text

CLEARANCE = 0.4
"""Between a letter and the line round its piece, mm ..."""

HATCH_CLEARANCE = 0.65
"""... and for letters over 3.5 mm, which are kept low enough for the hatch to be seen."""

LONGEST_LEADER = 60.0
"""A longer one is lost between the pieces it crosses, mm."""

PITCH = 1.7
"""Between rows of lettering, in heights of their capitals."""

FARTHEST_HOLE = 15.0
"""From a stack to an opening over or under it that its letter may stand in, mm."""

_SIZES = (LARGE_FIGURES, 4.5, 4.0, FIGURES)
_SHIFTS = (0.0, 2.5, -2.5, 5.0, -5.0, 8.0, -8.0, 12.0, -12.0)


def room_in(box: Box, clearance: float = CLEARANCE) -> Box:
    """The part of a piece's box that lettering may use: clear of a lead's heavy line round it."""
    return box.shrunk(HEAVY_LINE / 2 + clearance)


def fit_letter(box: Box, mark: str) -> Text | None:
    """A mark in the middle of a box, as high as it fits between 5 and 3.5 mm; None where it does not fit."""
    for height in _SIZES:
        room = room_in(box, HATCH_CLEARANCE if height > FIGURES else CLEARANCE)
        text = centre_text(box, mark, height)
        if height <= room.height and measure(mark, height) <= room.width and box.shrunk(0.3).holds(measure_text(text)):
            return text
    return None


@dataclass(frozen=True)
class Ground:
    """Free paper round the pieces: the openings in view, and the band above the wall. ``edges`` are the wall's where they
    slope, which lettering keeps off."""

    holes: tuple[Box, ...]
    band: Box
    edges: tuple[Segment, ...] = ()

    def is_clear(self, text: Text) -> bool:
        """Whether a text keeps off the wall's edges, and does not stand beside the wall, among its heights."""
        box = measure_text(text).shrunk(-0.45)
        beside = bool(self.edges) and (box.left < self.band.left or box.right > self.band.right)
        return not beside and not any(meets_box(edge, box) for edge in self.edges)


def letter_cuts(board: Board, cells: tuple[Cell, ...], ground: Ground) -> tuple[tuple[Cell, ...], ...]:
    """Letter every cut; the stacks of cuts that found no place are given back, () unless a sheet is crowded."""
    small: list[Cell] = []
    for cell in cells:
        if cell.piece.mark:
            text = fit_letter(cell.room, cell.piece.mark)
            text = text if text is None or ground.is_clear(text) else None
            if text is None and not _letter_at_slope(board, cell, ground):
                small.append(cell)
            elif text is None:
                continue
            else:
                board.letter(text)
    rows = _rows(cells)
    whole = max((cell.piece.height for cell in cells), default=0)
    rest = [cell for cell in small if not _letter_beside(board, cell, rows[cell.course])]
    return tuple(tuple(stack) for stack in _stacks(rest, whole) if not _letter_stack(board, stack, ground))


def _letter_at_slope(board: Board, cell: Cell, ground: Ground) -> bool:
    """Letter a raked cut just outside of its foot, over the slope of the course below."""
    if cell.piece.hand not in ("left", "right") or not cell.shape:
        return False
    assert cell.piece.mark and cell.piece.rake
    left, base = cell.piece.hand == "left", cell.box.centre.y
    toe = 5 * min(cell.piece.rake.left, cell.piece.rake.right) < cell.piece.height
    for height in _SIZES if toe else ():
        side, over = (cell.box.left, -1.0) if left else (cell.box.right, 1.0)
        if height + CLEARANCE <= cell.box.height:
            beside = Text(side + over, base + height / 2, cell.piece.mark, height, "end" if left else "start")
            above = Text(side, cell.box.top - 0.5, cell.piece.mark, height, "start" if left else "end")
            if any(ground.is_clear(text) and board.letter_if_free(text, 0.15) for text in (beside, above)):
                return True
    return _lead_off_slope(board, cell, left, ground)


def _lead_off_slope(board: Board, cell: Cell, left: bool, ground: Ground) -> bool:
    """Letter a raked cut farther off its slope, with a leader."""
    assert cell.piece.mark
    (x, y), way = cell.middle, -1.0 if left else 1.0
    for out, up in product((3.0, 6.0, 9.0, 12.0), (3.5, 6.5, 9.5, 13.0)):
        text = Text(x + way * out, y - up, cell.piece.mark, FIGURES, "middle")
        leader = _leader(x, y, text)
        clear = board.placer.is_clear(leader) and not board.placer.crosses(leader)
        if clear and ground.is_clear(text) and board.placer.is_free(measure_text(text), 0.3):
            _lead_to(board, x, y, text)
            return True
    return False


def _rows(cells: tuple[Cell, ...]) -> dict[int, list[Cell]]:
    rows: dict[int, list[Cell]] = {}
    for cell in cells:
        rows.setdefault(cell.course, []).append(cell)
    return rows


def _letter_beside(board: Board, cell: Cell, row: list[Cell]) -> bool:
    """Letter a small cut in the whole unit next to it, with a leader across their joint."""
    assert cell.piece.mark
    middle = cell.middle
    for other in row:
        beside = abs(other.box.left - cell.box.right) < 2 or abs(cell.box.left - other.box.right) < 2
        if not beside or other.piece.piece != "full" or abs(other.box.centre.y - middle.y) > 1:
            continue
        text = fit_letter(other.box.shrunk(1.0)._replace(top=other.box.top, bottom=other.box.bottom), cell.piece.mark)
        if text is not None and board.placer.is_free(measure_text(text), 0.2):
            _lead_to(board, middle.x, middle.y, text)
            return True
    return False


def _stacks(cells: list[Cell], whole: int) -> Iterator[list[Cell]]:
    """Cuts of one mark plumb over each other in every other course, lowest first; and rips (lower than ``whole``) of
    one mark side by side in a course."""
    stacks: dict[tuple[str | None, int, int], list[Cell]] = {}
    for cell in cells:
        piece = cell.piece
        ripped = piece.height < whole
        key = (piece.mark, -1, cell.course) if ripped else (piece.mark, piece.left, piece.length)
        found = stacks.setdefault(key, [])
        if found and (piece.left - found[-1].piece.right > whole if ripped else cell.course - found[-1].course > 2):
            yield found
            found = stacks[key] = []
        found.append(cell)
    yield from stacks.values()


def _letter_stack(board: Board, stack: list[Cell], ground: Ground) -> bool:
    mark = stack[0].piece.mark
    assert mark
    for (crossing, gap), height in product(((False, 2.0), (False, 0.6), (True, 0.6)), (LARGE_FIGURES, FIGURES)):
        for cell, text in _places(stack, mark, height, ground):
            x, y = cell.middle
            leader = _leader(x, y, text)
            clear = board.placer.is_clear(leader) and (crossing or not board.placer.crosses(leader))
            near = abs(leader.x2 - x) + abs(leader.y2 - y) <= LONGEST_LEADER
            if near and clear and board.placer.is_free(measure_text(text), gap):
                _lead_to(board, x, y, text)
                return True
    return False


def _places(stack: list[Cell], mark: str, height: float, ground: Ground) -> Iterator[tuple[Cell, Text]]:
    """Where a stack's letter may stand, the best first: in an opening beside it, or above or below the stack."""
    width = measure(mark, height)
    for cell in stack:
        for hole in ground.holes:
            yield from ((cell, text) for text in _beside_hole(cell, hole, mark, height))
    for cell, room, upward in _rooms(stack, ground):
        for row in range(6):
            for shift in _SHIFTS:
                drop = row * PITCH * height
                base = room.bottom - 1.5 - drop if upward else room.top + 2.0 + height + drop
                text = Text(cell.box.centre.x + shift, base, mark, height, "middle")
                box = measure_text(text)
                if room.holds(box.shrunk(-0.5)) or (room is ground.band and box.top > 15 and width < room.width):
                    yield cell, text


def _beside_hole(cell: Cell, hole: Box, mark: str, height: float) -> Iterator[Text]:
    base = cell.box.centre.y + height / 2
    if hole.top + 1.5 > base - height or base > hole.bottom - 1.5:
        return
    texts = []
    if abs(cell.box.right - hole.left) < 1:
        texts.append(Text(hole.left + 3.5, base, mark, height, "start"))
    if abs(cell.box.left - hole.right) < 1:
        texts.append(Text(hole.right - 3.5, base, mark, height, "end"))
    yield from (text for text in texts if hole.shrunk(1.0).holds(measure_text(text)))


def _rooms(stack: list[Cell], ground: Ground) -> list[tuple[Cell, Box, bool]]:
    """Free paper over and under a stack, the nearest first, with the piece that the leader starts from."""
    top, low = stack[-1], stack[0]
    found = [(top.box.top - ground.band.bottom, top, ground.band, True)]
    for hole in ground.holes:
        if hole.left < top.box.centre.x < hole.right:
            if -1 <= top.box.top - hole.bottom <= FARTHEST_HOLE:
                found.append((top.box.top - hole.bottom, top, hole, True))
            if -1 <= hole.top - low.box.bottom <= FARTHEST_HOLE:
                found.append((hole.top - low.box.bottom, low, hole, False))
    return [(cell, room, upward) for _, cell, room, upward in sorted(found, key=lambda item: item[0])]


def _leader(x: float, y: float, text: Text) -> Segment:
    """From a place in a piece to the near side of a letter, a little short of it."""
    box = measure_text(text)
    if box.top <= y <= box.bottom:
        return Segment(x, y, box.left - 0.7 if x < box.left else box.right + 0.7, y)
    return Segment(x, y, box.centre.x, box.bottom + 0.8 if y > box.bottom else box.top - 0.8)


def _lead_to(board: Board, x: float, y: float, text: Text) -> None:
    board.lead(_leader(x, y, text))
    board.letter(text)
