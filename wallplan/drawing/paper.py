"""Paper and drawing scales: values, chosen without drawing anything.

Letter and tabloid are ANSI/ASME Y14.1 sizes A and B, A4 and A3 are ISO 216. The scales are those that an
architect's scale carries in feet, and ISO 5455's in metric.
"""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.lengths import Measure

BORDER = 15.0
"""Blank on every side for tape and clips, mm."""


@dataclass(frozen=True)
class Paper:
    """A sheet of paper as it is held, mm."""

    name: str
    width: float
    height: float

    @property
    def usable_width(self) -> float:
        """Width inside the border, mm."""
        return self.width - 2 * BORDER

    @property
    def usable_height(self) -> float:
        """Height inside the border, mm."""
        return self.height - 2 * BORDER

    def turned(self) -> Paper:
        """The same sheet turned a quarter."""
        return Paper(self.name, self.height, self.width)


PAPERS = {
    paper.name: paper
    for paper in (
        Paper("letter", 279.4, 215.9), Paper("tabloid", 431.8, 279.4), Paper("A4", 297.0, 210.0),
        Paper("A3", 420.0, 297.0),
    )
}
"""The papers by name, lying (landscape)."""


class UnknownPaper(ValueError):
    """A paper that is not one of PAPERS; the text names them."""


def find_paper(name: str | None, measure: Measure) -> Paper:
    """The paper of a name in any case, lying; None gives letter for feet and A4 for metric. Raises UnknownPaper."""
    if name is None:
        return PAPERS["letter" if measure == "feet" else "A4"]
    for known, paper in PAPERS.items():
        if known.lower() == name.strip().lower():
            return paper
    shown = "".join(letter if letter.isprintable() else "?" for letter in name[:60])
    raise UnknownPaper(f'"{shown}" is no paper that sheets are drawn on; write one of {", ".join(PAPERS)}')


@dataclass(frozen=True)
class Scale:
    """A drawing scale: ``ratio`` mm of wall to one mm of paper."""

    name: str
    ratio: int

    def on_paper(self, ticks: int) -> float:
        """A length of wall in ticks as mm of paper."""
        return ticks / (960 * self.ratio)

    def on_wall(self, millimetres: float) -> int:
        """Millimetres of paper as ticks of wall, rounded down."""
        return int(millimetres * 960 * self.ratio)


SCALES: dict[Measure, tuple[Scale, ...]] = {
    "feet": (
        Scale("1/2 in = 1 ft", 24), Scale("3/8 in = 1 ft", 32), Scale("1/4 in = 1 ft", 48),
        Scale("3/16 in = 1 ft", 64), Scale("1/8 in = 1 ft", 96),
    ),
    "metric": (Scale("1:10", 10), Scale("1:20", 20), Scale("1:25", 25), Scale("1:50", 50), Scale("1:100", 100)),
}
"""The scales that sheets are drawn at, the largest first."""

LEAST_READABLE = 50
"""A ratio over this is a last resort for a whole wall: its courses cannot be lettered one by one."""

LEAST_COURSE = 2.0
"""A course is at least this high on a readable sheet, mm: every other or every fifth one can be numbered."""


def readable_scales(measure: Measure, gauge: int) -> tuple[Scale, ...]:
    """The scales at which courses of ``gauge`` ticks can be read, the largest first; at least the largest of all."""
    found = tuple(
        scale for scale in SCALES[measure]
        if scale.ratio <= LEAST_READABLE and scale.on_paper(gauge) >= LEAST_COURSE
    )
    return found or SCALES[measure][:1]
