"""The unit: a manufactured block or brick with the lengths its family stocks. All lengths are ticks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PieceName = Literal["full", "three-quarter", "half", "quarter", "cut", "closer"]


@dataclass(frozen=True)
class StockPiece:
    """A length that the family supplies, or that the trade breaks as routine without counting it as a cut.

    ``sawn`` is True where the mason makes it from a full unit (a half bat), False where it is moulded.
    """

    name: PieceName
    length: int
    sawn: bool


@dataclass(frozen=True)
class Unit:
    """One entry of the catalogue, or a unit of the plan's own. Specified (work) sizes in ticks.

    ``gauge`` is the height of one course with its bed joint: three modular bricks to 8 in is a gauge of
    8/3 in, whatever 2 1/4 in plus 3/8 in would come to. ``pieces`` always holds the full unit first.
    ``net_litres`` and ``mass_kg`` (low, high) are of the full unit; None where no source gives them.
    ``coursing`` is the gauge as the trade states it, (courses, their height): five courses to 16 in is no whole
    number of ticks a course, so ``gauge`` is its nearest tick and heights come from ``height_of_courses``.
    None means one course to the gauge. ``ell_return`` is the length of an L corner unit's shorter face; its longer one is as
    long as the unit. None where the family has no such unit.
    """

    key: str
    name: str
    kind: Literal["block", "brick"]
    country: str
    length: int
    height: int
    thickness: int
    joint: int
    tightest_joint: int
    widest_joint: int
    gauge: int
    pieces: tuple[StockPiece, ...]
    half_high: int | None
    shapes: tuple[str, ...]
    leads: int
    solid: bool
    net_litres: float | None
    mass_kg: tuple[float, float] | None
    source: str
    coursing: tuple[int, int] | None = None
    ell_return: int | None = None

    @property
    def module(self) -> int:
        """Length with one head joint, in ticks."""
        return self.length + self.joint

    @property
    def bed_joint(self) -> int:
        """Bed joint that the gauge leaves, in ticks."""
        return self.gauge - self.height

    def height_of_courses(self, courses: int) -> int:
        """Height of a number of courses with their bed joints: nearest tick of the exact figure, never a sum of
        rounded gauges. Nought for no courses."""
        count, height = self.coursing or (1, self.gauge)
        return (2 * courses * height + count) // (2 * count)
