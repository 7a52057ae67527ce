"""Corners: how a wall ends in odd and in even courses, where one wall runs through and the other stops against it.

At an outside corner the wall that runs through shows its unit's end in the other's elevation, as wide as the wall is
thick; at an inside corner it runs on behind the other wall's face, out of sight of its own elevation.
"""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.coursing import Row
from wallplan.layout.spots import Spot
from wallplan.plan.job import EndKind, Job, Masonry, Wall

CORNERS: tuple[EndKind, ...] = ("outside corner", "inside corner")


Laid = tuple[int, int]
"""Underside and top of a course's units over the datum."""


class WallEnd(NamedTuple):
    """One end of a wall. ``at`` is where its own masonry ends in odd and in even courses, ticks from its left end.

    ``returns`` is (left, right) of the other wall's unit in courses where that one runs through, None where there is
    no corner; ``through`` says in which courses this wall runs through. ``other`` is the other wall's name.
    """

    at: tuple[int, int]
    returns: tuple[int, int] | None
    through: tuple[bool, bool]
    other: str | None


class WallEnds(NamedTuple):
    """Both ends of a wall."""

    left: WallEnd
    right: WallEnd

    @property
    def has_corners(self) -> bool:
        """True where the wall meets another at either end."""
        return self.left.returns is not None or self.right.returns is not None

    def other_at(self, left: int) -> str | None:
        """The wall whose unit returns with its left side at a distance, None where none does."""
        for end in (self.left, self.right):
            if end.returns is not None and end.returns[0] == left:
                return end.other
        return None

    def span(self, number: int) -> tuple[int, int]:
        """Where the wall's own masonry begins and ends in a course."""
        parity = parity_of(number)
        return self.left.at[parity], self.right.at[parity]


class Choice(NamedTuple):
    """Whether a wall runs through in odd courses at its left and at its right corner; None at a free end."""

    left: bool | None
    right: bool | None


def parity_of(number: int) -> int:
    """0 for an odd course, 1 for an even one."""
    return 1 - number % 2


def end_wall(wall: Wall, masonry: Masonry, choice: Choice, others: tuple[str | None, str | None]) -> WallEnds:
    """The ends of a wall for one choice of which wall runs through in odd courses."""
    left = _end(wall.left_end, masonry, choice.left, others[0])
    right = _end(wall.right_end, masonry, choice.right, others[1])
    return WallEnds(left, _mirror(right, wall.length))


def _end(kind: EndKind, masonry: Masonry, odd_through: bool | None, other: str | None) -> WallEnd:
    """A left end; the wall's outside corner is at 0."""
    if kind not in CORNERS or odd_through is None:
        return WallEnd((0, 0), None, (True, True), None)
    thick, joint = masonry.unit.thickness, masonry.joint
    runs_through = 0 if kind == "outside corner" else -thick
    stops = thick + joint if kind == "outside corner" else joint
    returns = (0, thick) if kind == "outside corner" else (-thick, 0)
    through = (odd_through, not odd_through)
    at = runs_through if through[0] else stops, runs_through if through[1] else stops
    return WallEnd(at, returns, through, other)


def _mirror(end: WallEnd, length: int) -> WallEnd:
    returns = None if end.returns is None else (length - end.returns[1], length - end.returns[0])
    return WallEnd((length - end.at[0], length - end.at[1]), returns, end.through, end.other)


def free_ends(wall: Wall) -> WallEnds:
    """The ends of a wall that meets no other."""
    left, right = (WallEnd((at, at), None, (True, True), None) for at in (0, wall.length))
    return WallEnds(left, right)


def make_returns(ends: WallEnds, row: Row, laid: tuple[Laid | None, Laid | None]) -> list[Spot]:
    """The other walls' units that stand in this wall's elevation: seen end-on, or behind an inside corner.

    ``laid`` is the underside and the top of what is laid at the wall's left and right end, None where nothing is.
    """
    parity = parity_of(row.number)
    return [
        Spot(end.returns[0], end.returns[1] - end.returns[0], here[0] - row.bottom, here[1] - here[0], "full", "return",
             None)
        for end, here in zip((ends.left, ends.right), laid, strict=True)
        if end.returns is not None and not end.through[parity] and here is not None
    ]


def joined_to(job: Job, index: int) -> tuple[int | None, int | None]:
    """Which walls a wall meets at its left and right corner, by their places in the job; None at a free end."""
    count, wall = len(job.walls), job.walls[index]
    left = (index - 1) % count if wall.left_end in CORNERS and count > 1 else None
    right = (index + 1) % count if wall.right_end in CORNERS and count > 1 else None
    return left, right
