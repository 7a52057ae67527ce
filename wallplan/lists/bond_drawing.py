"""The bond drawn in characters: a line a course, the lowest at the bottom, as the wall is seen from outside.

A head joint is ``|``, a control joint ``!``, a raked end ``/`` or ``\\``. Between joints: ``_`` a unit, ``~`` a bond-beam
unit, ``=`` a lintel unit, ``#`` precast, ``:`` the end of another wall's unit at a corner; a cut carries its letter.
Openings are blank.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.plan.job import Masonry

FILL = {"bond beam": "~", "lintel": "=", "precast": "#", "return": ":"}
LEGEND = {
    "control joint": "! control joint",
    "bond beam": "~ bond beam", "lintel": "= lintel unit", "precast": "# precast lintel",
    "return": ": end of wall or pier",
}
MARGIN = 5
MOST_CHARACTERS, FEWEST_CHARACTERS = 8, 4
MOST_ROWS = 40
MOST_LENGTHS = 4


class Window(NamedTuple):
    """The part of a wall that one block of lines shows, ticks, and how many characters a tick takes."""

    left: int
    right: int
    scale: float
    control_joints: tuple[int, ...]

    def column(self, at: int) -> int:
        """The character that a distance from the wall's left end falls on."""
        return round((min(max(at, self.left), self.right) - self.left) * self.scale)


def draw_bond(layout: WallLayout, masonry: Masonry, width: int) -> list[str]:
    """The lines of the drawing, within ``width`` characters; several blocks, left to right, for a long wall."""
    windows = list(_open_windows(layout, masonry, width))
    lines: list[str] = []
    for index, window in enumerate(windows[:MOST_LENGTHS]):
        if index:
            lines.append("")
        lines.extend(_draw_window(layout, masonry, window))
    if len(windows) > MOST_LENGTHS:
        lines.append(f"     ... and so on: {len(windows) - MOST_LENGTHS} more lengths like these, all on the sheets")
    return lines


def _open_windows(layout: WallLayout, masonry: Masonry, width: int) -> Iterator[Window]:
    length, module = layout.wall.length, masonry.module
    room = width - 2 * MARGIN - 2
    per_module = min(MOST_CHARACTERS, room * module // max(length, 1)) // 2 * 2
    if per_module >= FEWEST_CHARACTERS:
        yield Window(0, length, per_module / module, layout.wall.control_joints)
        return
    most = room // FEWEST_CHARACTERS * module
    lengths = -(-length // most)
    step = -(-length // (lengths * module)) * module
    for left in range(0, length, step):
        yield Window(left, min(length, left + step), FEWEST_CHARACTERS / module, layout.wall.control_joints)


def _draw_window(layout: WallLayout, masonry: Masonry, window: Window) -> list[str]:
    courses = list(reversed(layout.courses))
    if len(courses) <= MOST_ROWS:
        return [line for course in courses for line in _draw_course(course, masonry, window, f"{course.number:>4}")]
    alike: dict[tuple[str, ...], list[Course]] = {}
    for course in courses:
        alike.setdefault(tuple(_draw_course(course, masonry, window, "")), []).append(course)
    lines = []
    for same in alike.values():
        numbers = print_courses(sorted(course.number for course in same))
        lines += _draw_course(same[0], masonry, window, f"{same[0].number:>4}")
        lines += [f"       as {numbers}"] if len(same) > 1 else []
    return lines[:2 * MOST_ROWS]


def _draw_course(course: Course, masonry: Masonry, window: Window, number: str) -> list[str]:
    """One line, or two where the course is laid in layers: the upper one without a number."""
    lowest = min((piece.bottom for piece in course.pieces), default=0)
    lower = [piece for piece in course.pieces if piece.bottom == lowest]
    upper = [piece for piece in course.pieces if piece.bottom != lowest]
    if not any(one.left < other.right and other.left < one.right for one in lower for other in upper):
        lower, upper = [*lower, *upper], []  # side by side, on steps of the footing
    lines = [f"{'':>4} {_draw_pieces(upper, masonry, window)}"] if upper else []
    return [line.rstrip() for line in (*lines, f"{number:>4} {_draw_pieces(lower, masonry, window)} {number.strip()}")]


def _draw_pieces(pieces: Sequence[Piece], masonry: Masonry, window: Window) -> str:
    canvas = [" "] * (window.column(window.right) + 1)
    for piece in pieces:
        if piece.right > window.left and piece.left < window.right:
            _draw_piece(canvas, piece, masonry, window)
    for at in window.control_joints:
        # Its middle: the pieces beside it are drawn up to its right side.
        place = window.column(at - masonry.joint // 2 + masonry.joint)
        canvas[place] = "!" if canvas[place] == "|" and window.left < at < window.right else canvas[place]
    return "".join(canvas)


def _draw_piece(canvas: list[str], piece: Piece, masonry: Masonry, window: Window) -> None:
    start, end = window.column(piece.left), window.column(piece.right + masonry.joint)
    for place in range(start + 1, end):
        canvas[place] = FILL.get(piece.shape, "_")
    canvas[start] = _side(piece, "left") if piece.left >= window.left else canvas[start]
    canvas[end] = _side(piece, "right")
    mark = piece.mark or ""
    middle = start + 1 + (end - start - 1 - len(mark)) // 2
    if mark and end - start > len(mark):
        canvas[middle:middle + len(mark)] = mark


def _side(piece: Piece, side: str) -> str:
    """How a side of a piece is drawn: upright, or sloping where it is raked."""
    if piece.hand in (side, "ridge"):
        return "/" if side == "left" else "\\"
    return "|"
