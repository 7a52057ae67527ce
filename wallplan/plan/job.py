"""The job: what a plan file asks for, checked and resolved. All lengths are ticks, as actual sizes.

Distances run from the wall's left end as its drawn (outside) face is seen, heights from the top of the footing.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from wallplan.catalogue.unit import Unit
from wallplan.lengths import Measure
from wallplan.plan.order_wishes import OrderWishes

Bond = Literal["half", "third", "quarter", "stack", "flemish", "english", "english garden wall", "flemish garden wall",
               "common", "header"]
ONE_BRICK = ("flemish", "english", "english garden wall", "flemish garden wall", "common", "header")
"""Bonds of walls one brick thick: stretchers in pairs, headers through."""

HEADER_COURSES = {"english garden wall": 3, "common": 5}
"""Bonds with a course of headers after so many courses of stretchers, where the plan gives no other number."""

LintelKind = Literal["block", "precast", "steel", "none"]
EndKind = Literal["end", "outside corner", "inside corner", "straight", "abuts"]
CornerUnit = Literal["plain", "L", "L where it saves"]
Tie = Literal["interlocked", "straps", "control joint"]


@dataclass(frozen=True)
class Masonry:
    """Unit, bond, joints and limits, with every default filled in. ``least_piece`` is nominal (with a joint).

    ``keep_bond`` is True where the plan wants half bond exact rather than fewest cuts. ``corner_unit`` says whether corners
    are turned with plain units, with L corner units, or with those where they save cutting. ``stretcher_courses`` stand
    between two courses of headers in English garden wall and common bond; 0 in other bonds.
    """

    unit: Unit
    bond: Bond
    joint: int
    tightest_joint: int
    widest_joint: int
    least_lap: int
    least_piece: int
    leads: int
    keep_bond: bool = False
    corner_unit: CornerUnit = "plain"
    stretcher_courses: int = 0

    @property
    def module(self) -> int:
        """Unit length with one head joint as aimed for, in ticks."""
        return self.unit.length + self.joint

    @property
    def one_brick(self) -> bool:
        """True where walls are as thick as the unit is long, in a bond with headers."""
        return self.bond in ONE_BRICK

    @property
    def thickness(self) -> int:
        """How thick walls are, in ticks."""
        return self.unit.length if self.one_brick else self.unit.thickness

    @property
    def bond_name(self) -> str:
        """The bond in words: ``half bond``, ``Flemish bond``."""
        return f"{self.bond.capitalize() if self.one_brick else self.bond} bond"

    @property
    def ideal_lap(self) -> int:
        """The bond's own lap between neighbouring courses, in ticks (0 for stack bond)."""
        parts = {"half": 2, "third": 3, "stack": 0}.get(self.bond, 4)
        return self.module // parts if parts else 0


@dataclass(frozen=True)
class Opening:
    """A masonry opening, jamb to jamb and sill to the underside of the lintel."""

    name: str
    left: int
    right: int
    bottom: int
    top: int
    lintel: LintelKind
    bearing: int


Place = tuple[int, int]
"""A point of a wall's outline: distance from its left end, height over the datum."""


@dataclass(frozen=True)
class Outline:
    """How a wall that is no rectangle begins on its footing and ends at its top.

    ``footing`` and ``top`` run from the left end to the right one; two places at one distance are a step. ``coursed`` is
    the height that whole courses close: the highest level top, under a gable the eaves. ``bonded_under`` is a top from which
    the bond is carried through in place of ``top``, None where it is that.
    """

    footing: tuple[Place, ...]
    top: tuple[Place, ...]
    coursed: int
    bonded_under: tuple[Place, ...] | None = None


@dataclass(frozen=True)
class Abutment:
    """An end of a wall that abuts another: which wall, and how far from that wall's left end this one begins along it.

    ``inside`` is True where it stands behind the other's outside face. ``strap_spacing`` is the height between straps.
    """

    end: Literal["left", "right"]
    meets: str
    at: int
    inside: bool
    tie: Tie
    strap_spacing: int | None = None


@dataclass(frozen=True)
class Pier:
    """A pier built into a wall, wider or thicker than it: from ``left``, ``width`` along the wall, as high as the wall.

    It stands ``front`` before the wall's outside face and ``back`` behind its inside face; either may be 0.
    """

    name: str
    left: int
    width: int
    front: int
    back: int

    @property
    def right(self) -> int:
        """Its right side, ticks from the wall's left end."""
        return self.left + self.width


@dataclass(frozen=True)
class LaidWith:
    """What sets the courses of walls that meet where no whole courses close their heights: the highest level top among them,
    and all their sills and heads."""

    height: int
    levels: tuple[int, ...]


@dataclass(frozen=True)
class Wall:
    """One straight wall. ``height`` is that of its highest place; ``outline`` None stands for a rectangle.

    Heights are over the datum: the top of the lowest footing, of this wall or of those that it meets. ``parts``: where each
    of the plan's walls begins of which it is made, where they go straight on; () for a wall of one. ``piers`` are those that
    are built into it, wider or thicker than it; others stand among the walls. ``laid_with`` None: the wall's own height sets
    its courses.
    """

    name: str
    length: int
    height: int
    left_end: EndKind
    right_end: EndKind
    control_joints: tuple[int, ...]
    bond_beams: tuple[int, ...]
    openings: tuple[Opening, ...]
    parts: tuple[tuple[str, int], ...] = ()
    outline: Outline | None = None
    abuts: tuple[Abutment, ...] = ()
    piers: tuple[Pier, ...] = ()
    laid_with: LaidWith | None = None


@dataclass(frozen=True)
class Movable:
    """What advice may move, in the words of the plan's ``move``, how far, and the least pier, in ticks.

    ``step`` None offers only distances that make something fit; a step offers its multiples besides.
    """

    kinds: tuple[str, ...]
    farthest: int
    step: int | None
    least_pier: int


@dataclass(frozen=True)
class Tolerances:
    """Within what a pupil's wall is marked, each more or less, in ticks: sizes, plumb, level, joints, and head joints
    over each other."""

    dimension: int
    plumb: int
    level: int
    joint: int
    bond: int


@dataclass(frozen=True)
class Job:
    """One plan: title, measure, whether its sizes were given nominal, masonry and walls. ``date`` as written.

    ``movable`` is what advice may move; None stands for the usual. ``order`` is what the plan asks of its order list.
    ``teaching`` is within what a pupil's wall is marked; None stands for the usual.
    """

    title: str
    measure: Measure
    sizes: Literal["actual", "nominal"]
    date: str | None
    masonry: Masonry
    walls: tuple[Wall, ...]
    movable: Movable | None = None
    order: OrderWishes = field(default_factory=OrderWishes)
    teaching: Tolerances | None = None
