"""Lettering: how wide a text is, and where it may stand without touching other lettering or a line.

Heights are of the capitals in mm: 2.5, 3.5, 5 and 7 are ISO 3098-1's steps. The letters are DejaVu Sans.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from wallplan.drawing.letter_widths import ADVANCES, CAPITALS, UNITS, UNMEASURED, has_letter
from wallplan.drawing.primitives import Box, Segment, Text

SMALLEST = 2.5
"""Nothing on a sheet is lettered smaller, mm."""

FIGURES = 3.5
"""Marks, course numbers and cut sizes are never smaller, mm ..."""

LARGE_FIGURES = 5.0
"""... and this high where there is room, mm."""

TIED = "\u00a0"
"""A space that keeps its two sides on one line."""

DOTS = "..."
"""For what was left out. One letter outside Latin-1 would have the PDF embed a second font."""

_HAIR = 1e-6
_RISE = 1.05
_ACCENTED_RISE = 1.3
_FALL = 0.33
_REST = 0.03
_HANGING = frozenset("gjpqy,;()[]{}|/_@$QJ")
_LEANING = 0.08


def font_size(height: float) -> float:
    """Font size whose capitals are ``height`` mm high, mm."""
    return height * UNITS / CAPITALS


@lru_cache(maxsize=20_000)
def measure(text: str, height: float) -> float:
    """Width of a text whose capitals are ``height`` mm high, without kerning, mm; 0 for no text."""
    return sum(ADVANCES.get(letter, UNMEASURED) for letter in text) * height / CAPITALS


def measure_text(text: Text) -> Box:
    """The rectangle that a text covers, with what rises over its capitals and hangs under its line."""
    width = measure(text.text, text.height)
    start = {"start": 0.0, "middle": -width / 2, "end": -width}[text.anchor]
    if text.text[:1] in ("J", "j"):  # the one letter that reaches back over where it starts
        start, width = start - _LEANING * text.height, width + _LEANING * text.height
    rise = (_RISE if text.text.isascii() else _ACCENTED_RISE) * text.height
    fall = (_REST if _HANGING.isdisjoint(text.text) else _FALL) * text.height
    if text.upright:
        return Box(text.x - rise, text.y - start - width, text.x + fall, text.y - start)
    return Box(text.x + start, text.y - rise, text.x + start + width, text.y + fall)


def centre_text(box: Box, text: str, height: float, *, upright: bool = False) -> Text:
    """A text whose capitals stand in the middle of a box."""
    middle = box.centre
    if upright:
        return Text(middle.x + height / 2, middle.y, text, height, "middle", upright=True)
    return Text(middle.x, middle.y + height / 2, text, height, "middle")


def tie(text: str) -> str:
    """The text as one word for ``wrap``: a length such as 7 5/8" is not broken over two lines."""
    return text.replace(" ", TIED)


def clean(text: str) -> str:
    """A text from a plan as it can be drawn: letters that do not print, or that the font lacks, as question marks."""
    return "".join(letter if letter.isprintable() and has_letter(letter) else "?" for letter in text)


def shorten(text: str, height: float, width: float) -> str:
    """The text, or as much of it as fits ``width`` mm with three dots after it."""
    if measure(text, height) <= width:
        return text
    kept = text
    while kept and measure(f"{kept}{DOTS}", height) > width:
        kept = kept[:-1]
    return f"{kept.rstrip()}{DOTS}"


def fit_heading(text: str, heights: tuple[float, ...], width: float) -> tuple[str, float]:
    """The text and the largest of ``heights``, mm, at which it fits ``width`` mm; else that of at least 3.5 mm at which it
    fits two lines; as much as fits about two lines of the last if it fits at none."""
    one = (height for height in heights if height >= FIGURES and measure(text, height) <= width)
    two = (height for height in reversed(heights) if height >= FIGURES and len(wrap(text, height, width)) <= 2)
    found = next(one, None) or next(two, heights[-1])
    return shorten(text, found, 1.85 * width) if found < FIGURES else text, found


@lru_cache(maxsize=2_000)
def wrap(text: str, height: float, width: float) -> tuple[str, ...]:
    """The text in lines of at most ``width`` mm; a word that is wider alone is shortened. () for no text.

    A tied space is never a line's end.
    """
    lines: list[str] = []
    for word in filter(None, text.split(" ")):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and measure(longer, height) <= width:
            lines[-1] = longer
        else:
            lines.append(shorten(word, height, width))
    return tuple(line.replace(TIED, " ") for line in lines)


class Placer:
    """What a page already holds: lettering that nothing may meet, and lines that lettering may not meet."""

    def __init__(self, bounds: Box) -> None:
        self.bounds = bounds
        self._boxes: list[Box] = []
        self._lines: list[Segment] = []

    def is_free(self, box: Box, gap: float = 0.6) -> bool:
        """Whether lettering in ``box`` stands inside the bounds, ``gap`` mm clear of lettering and lines."""
        wide = box.shrunk(-gap)
        return (self.bounds.holds(box) and not any(wide.meets(other) for other in self._boxes)
                and not any(meets_box(line, wide) for line in self._lines))

    def is_clear(self, line: Segment, gap: float = 0.4) -> bool:
        """Whether a line passes no lettering within ``gap`` mm."""
        reach = Box(min(line.x1, line.x2), min(line.y1, line.y2), max(line.x1, line.x2), max(line.y1, line.y2))
        near = reach.shrunk(-gap - _HAIR)
        return not any(near.meets(box) and meets_box(line, box.shrunk(-gap)) for box in self._boxes)

    def find_in(self, box: Box) -> Box | None:
        """The lettering that reaches into ``box`` from any side, None where there is none."""
        return next((other for other in self._boxes if other.meets(box)), None)

    def all_in(self, box: Box) -> list[Box]:
        """All the lettering that reaches into ``box``."""
        return [other for other in self._boxes if other.meets(box)]

    def spare(self, line: Segment, gap: float) -> list[Segment]:
        """A level or upright line, from its lesser end, without the parts within ``gap`` mm of lettering."""
        level = line.y1 == line.y2
        start, end = (line.x1, line.x2) if level else (line.y1, line.y2)
        parts = []
        reach = Box(line.x1 - gap, line.y1 - gap, line.x2 + gap, line.y2 + gap)
        boxes = [box.shrunk(-gap) for box in self._boxes if reach.meets(box)]
        for low, high in sorted((box.left, box.right) if level else (box.top, box.bottom) for box in boxes):
            parts.append((start, low))
            start = max(start, high)
        parts.append((start, end))
        return [Segment(a, line.y1, b, line.y1) if level else Segment(line.x1, a, line.x1, b)
                for a, b in parts if b > a]

    def crosses(self, line: Segment) -> bool:
        """Whether a line crosses one that is kept off lettering."""
        return any(_cross(line, other) for other in self._lines)

    def take(self, *boxes: Box) -> None:
        """Keep boxes of lettering free from now on."""
        self._boxes.extend(boxes)

    def take_lines(self, lines: Iterable[Segment]) -> None:
        """Keep lettering off these lines from now on."""
        self._lines.extend(lines)


def _cross(one: Segment, other: Segment) -> bool:
    """Whether two straight lines cross, or one ends on the other."""
    def side(line: Segment, x: float, y: float) -> float:
        return (line.x2 - line.x1) * (y - line.y1) - (line.y2 - line.y1) * (x - line.x1)

    return (side(one, other.x1, other.y1) * side(one, other.x2, other.y2) <= 0
            and side(other, one.x1, one.y1) * side(other, one.x2, one.y2) <= 0)


def meets_box(line: Segment, box: Box) -> bool:
    """Whether a straight line runs through the inside of a box (Liang and Barsky, ACM Trans. Graphics, 1984)."""
    if max(line.x1, line.x2) < box.left or min(line.x1, line.x2) > box.right:
        return False
    enters, leaves = 0.0, 1.0
    across, down = line.x2 - line.x1, line.y2 - line.y1
    for step, room in ((-across, line.x1 - box.left), (across, box.right - line.x1),
                       (-down, line.y1 - box.top), (down, box.bottom - line.y1)):
        if step == 0:
            if room <= 0:
                return False
        elif step < 0:
            enters = max(enters, room / step)
        else:
            leaves = min(leaves, room / step)
    return enters < leaves
