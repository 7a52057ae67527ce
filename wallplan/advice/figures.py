"""Figures of a wall or a job: what advice weighs. All are counts of a finished layout."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from wallplan.layout.model import WallLayout
from wallplan.lengths import print_size
from wallplan.plan.job import Job
from wallplan.rules.check import check_wall

HALF_MINUTES_A_CUT = 7
"""A marked saw cut takes 2 to 5 minutes with handling: 3 1/2; common practice, no source."""

UNCOUNTED = ("precast", "return")
"""What is no unit to lay in this wall: a precast lintel, and the other wall's unit seen end-on."""


@dataclass(frozen=True)
class Figures:
    """``broken`` counts broken places by rule. ``cutting`` counts a cut one, a short one two, as the layout does; ``sawn``
    are the sawn pieces and ``short`` those of them under half a unit. ``units`` are all that are laid here.
    ``settings`` are the sizes sawn, as printed.
    """

    broken: tuple[tuple[str, int], ...]
    cutting: int
    sawn: int
    short: int
    units: int
    settings: frozenset[tuple[str, str]]

    @property
    def broken_places(self) -> int:
        """Broken places of all rules."""
        return sum(count for _, count in self.broken)

    @property
    def saw_minutes(self) -> int:
        """Rough minutes at the saw."""
        return (self.sawn * HALF_MINUTES_A_CUT + 1) // 2

    @property
    def grade(self) -> tuple[int, int]:
        """What is weighed first: broken places, then cutting."""
        return self.broken_places, self.cutting

    def breaks_more_than(self, other: Figures) -> bool:
        """Whether some rule is broken in more places than in ``other``: then this is no advice against it."""
        known = dict(other.broken)
        return any(count > known.get(rule, 0) for rule, count in self.broken)


def take_figures(layout: WallLayout, job: Job) -> Figures:
    """The figures of one wall as laid. A wall without doubt is not measured against the rules: it keeps them."""
    masonry, measure = job.masonry, job.measure
    pieces = [piece for course in layout.courses for piece in (*course.bricks, *layout.pier_pieces(course.number))
              if piece.shape not in UNCOUNTED]
    sawn = [piece for piece in pieces if piece.mark is not None]
    found = check_wall(layout, job) if layout.doubtful else ()
    broken = Counter(finding.rule for finding in found if not finding.held)
    return Figures(
        broken=tuple(sorted(broken.items())), cutting=layout.cutting + sum(pier.cutting for pier in layout.piers),
        sawn=len(sawn), short=sum(2 * (piece.length + masonry.joint) < masonry.module for piece in sawn), units=len(pieces),
        settings=frozenset((print_size(piece.length, measure), print_size(piece.height, measure)) for piece in sawn),
    )


def add_figures(figures: Iterable[Figures]) -> Figures:
    """The figures of several walls together; none give nought of everything."""
    listed = tuple(figures)
    broken = Counter[str]()
    for one in listed:
        broken.update(dict(one.broken))
    return Figures(
        tuple(sorted(broken.items())), sum(one.cutting for one in listed), sum(one.sawn for one in listed),
        sum(one.short for one in listed), sum(one.units for one in listed),
        frozenset().union(*(one.settings for one in listed)),
    )
