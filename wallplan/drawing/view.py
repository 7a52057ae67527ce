"""A view: which part of a wall stands on a sheet, at which scale and where on the paper."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.face import OUTSIDE, Face
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box
from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.plan.job import Job, Opening


@dataclass(frozen=True)
class Window:
    """The part of a wall that one sheet shows, ticks. ``courses`` are the first and last course number.

    ``left`` to ``right`` and ``bottom`` to ``top`` bound what is drawn; ``matches`` are the distances of match lines
    from the wall's left end, ``levels`` the heights of match lines, none where the whole wall is on the sheet.
    """

    left: int
    right: int
    bottom: int
    top: int
    courses: tuple[int, int]
    matches: tuple[int, ...] = ()
    levels: tuple[int, ...] = ()


@dataclass(frozen=True)
class View:
    """A window on the paper: (``x``, ``y``) is where its lower left corner stands, mm. ``wall`` is as ``face`` shows
    it; figures under it may stand from one x of ``reach`` to the other."""

    job: Job
    wall: WallLayout
    window: Window
    scale: Scale
    x: float
    y: float
    face: Face = OUTSIDE
    reach: tuple[float, float] = (-1e6, 1e6)

    def across(self, ticks: int) -> float:
        """x on the paper of a distance from the wall's left end."""
        return self.x + self.scale.on_paper(ticks - self.window.left)

    def up(self, ticks: int) -> float:
        """y on the paper of a height above the footing."""
        return self.y - self.scale.on_paper(ticks - self.window.bottom)

    def box(self, left: int, right: int, bottom: int, top: int) -> Box:
        """A rectangle of the wall on the paper."""
        return Box(self.across(left), self.up(top), self.across(right), self.up(bottom))

    @property
    def outline(self) -> Box:
        """The window on the paper."""
        return self.box(self.window.left, self.window.right, self.window.bottom, self.window.top)

    @property
    def courses(self) -> tuple[Course, ...]:
        """The courses in the window, lowest first."""
        first, last = self.window.courses
        return self.wall.courses[first - 1 : last]

    def shown(self, piece: Piece) -> bool:
        """Whether a piece of a course in the window is drawn: it is whole within the window."""
        return self.window.left <= piece.left and piece.right <= self.window.right

    @property
    def openings(self) -> tuple[Opening, ...]:
        """The openings that reach into the window."""
        window = self.window
        return tuple(
            opening for opening in self.wall.wall.openings
            if opening.left < window.right and opening.right > window.left
            and opening.bottom < window.top and opening.top > window.bottom
        )

    def hole(self, opening: Opening) -> Box:
        """As much of an opening as the window shows, on the paper."""
        window = self.window
        return self.box(max(opening.left, window.left), min(opening.right, window.right),
                        max(opening.bottom, window.bottom), min(opening.top, window.top))


def whole(wall: WallLayout) -> Window:
    """The window that shows all of a wall."""
    top = max(wall.wall.height, wall.courses[-1].top) if wall.courses else wall.wall.height
    return Window(0, wall.wall.length, 0, top, (1, len(wall.courses)))
