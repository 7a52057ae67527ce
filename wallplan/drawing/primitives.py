"""What a page is made of: six primitives in paper millimetres.

The origin is the page's upper left corner, x runs right and y runs down. Everything is black on white; a shape is
empty, white or black. Both back ends draw these and know nothing else, so a page looks the same in SVG and in PDF.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from wallplan.drawing.paper import Paper

Anchor = Literal["start", "middle", "end"]
Dash = tuple[float, ...]
Fill = Literal["white", "black"]

SOLID: Dash = ()


class Point(NamedTuple):
    """A place on the page, mm."""

    x: float
    y: float


class Box(NamedTuple):
    """An upright rectangle, mm; ``top`` is the smaller y."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Width, mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Height, mm."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return Point((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def shrunk(self, by: float) -> Box:
        """The box with ``by`` mm taken off every side (grown where ``by`` is negative)."""
        return Box(self.left + by, self.top + by, self.right - by, self.bottom - by)

    def holds(self, other: Box) -> bool:
        """Whether ``other`` lies inside, edges allowed."""
        return (self.left <= other.left and other.right <= self.right
                and self.top <= other.top and other.bottom <= self.bottom)

    def meets(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        return (self.left < other.right and other.left < self.right
                and self.top < other.bottom and other.top < self.bottom)


class Segment(NamedTuple):
    """A straight line from (x1, y1) to (x2, y2), mm."""

    x1: float
    y1: float
    x2: float
    y2: float


@dataclass(frozen=True)
class Strokes:
    """Straight lines of one width; ``dash`` holds mm of line and gap in turn, () for a solid line."""

    segments: tuple[Segment, ...]
    width: float
    dash: Dash = SOLID


@dataclass(frozen=True)
class Outlines:
    """Upright rectangles, each with an outline of one width, empty inside."""

    boxes: tuple[Box, ...]
    width: float


@dataclass(frozen=True)
class Area:
    """A filled rectangle without an outline."""

    box: Box
    fill: Fill


@dataclass(frozen=True)
class Dot:
    """A filled black circle."""

    x: float
    y: float
    radius: float


@dataclass(frozen=True)
class Text:
    """One line of lettering. ``height`` is the height of its capitals (ISO 3098-1), mm; (x, y) is on its baseline.

    With ``upright`` the line reads from the bottom up, turned a quarter round (x, y).
    """

    x: float
    y: float
    text: str
    height: float
    anchor: Anchor = "start"
    upright: bool = False


Primitive = Strokes | Outlines | Area | Dot | Text


@dataclass(frozen=True)
class Page:
    """One sheet. ``name`` is the end of its file name, ``title`` and ``description`` are read out to who cannot see."""

    paper: Paper
    name: str
    title: str
    description: str
    ink: tuple[Primitive, ...]


@dataclass(frozen=True)
class Drawing:
    """Sheets that belong together, in order."""

    title: str
    pages: tuple[Page, ...]


def move(item: Primitive, right: float, down: float) -> Primitive:
    """The primitive moved on the page, mm."""
    match item:
        case Strokes():
            return Strokes(tuple(Segment(a + right, b + down, c + right, d + down) for a, b, c, d in item.segments),
                           item.width, item.dash)
        case Outlines():
            return Outlines(tuple(_move_box(box, right, down) for box in item.boxes), item.width)
        case Area():
            return Area(_move_box(item.box, right, down), item.fill)
        case Dot():
            return Dot(item.x + right, item.y + down, item.radius)
        case Text():
            return Text(item.x + right, item.y + down, item.text, item.height, item.anchor, item.upright)


def _move_box(box: Box, right: float, down: float) -> Box:
    return Box(box.left + right, box.top + down, box.right + right, box.bottom + down)
