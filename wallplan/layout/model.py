"""The layout: every piece of every course, as laid. Frozen; all lengths are ticks from the wall's left end
and from the top of the footing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from wallplan.catalogue.unit import PieceName
from wallplan.plan.job import Job, Pier, Wall

Shape = Literal["stretcher", "corner", "corner L", "sash", "bond beam", "lintel", "precast", "return", "header", "closer"]
Lead = Literal["left", "right"]
Hand = Literal["left", "right", "ridge"]
Leaf = Literal["through", "front", "back"]
"""Where a brick lies in a wall one brick thick."""


class Rake(NamedTuple):
    """How the top of a piece is sawn to a slope, in ticks from the piece's lower left corner.

    Its sides are ``left`` and ``right`` high. It is as high as it gets from ``top_left`` to ``top_right``: both are the same
    where it has no level top.
    """

    left: int
    right: int
    top_left: int
    top_right: int

    @property
    def top_length(self) -> int:
        """Length of the level top; 0 where the piece comes to a point."""
        return self.top_right - self.top_left


class Notch(NamedTuple):
    """What is sawn out of a piece's underside where it bridges a riser: from ``left`` to ``right``, ticks from the piece's
    left end, ``height`` high."""

    left: int
    right: int
    height: int


class Piece(NamedTuple):
    """A unit as laid. ``piece`` "cut" is sawn to ``length``; a ripped piece has ``height`` under the unit's.

    ``mark`` is the letter of a cut (sawn in length or ripped) on sheets and lists, None for a piece that is
    not sawn. ``lead`` names the lead it belongs to. ``of`` is the wall that counts it. ``rake`` is None for a square
    piece; a raked one is ``length`` long at its bottom and ``height`` high where it is highest. ``notch`` is None for a
    piece with a level underside. ``leaf`` says in which leaf of a one-brick wall it lies, None in other walls: a header or a
    closer goes through.
    """

    left: int
    length: int
    bottom: int
    height: int
    piece: PieceName
    shape: Shape
    mark: str | None
    lead: Lead | None
    of: str
    rake: Rake | None = None
    notch: Notch | None = None
    leaf: Leaf | None = None

    @property
    def right(self) -> int:
        """Right end, ticks from the wall's left end."""
        return self.left + self.length

    @property
    def top(self) -> int:
        """Top, ticks above the footing."""
        return self.bottom + self.height

    @property
    def hand(self) -> Hand | None:
        """The side on which it is sawn to a slope, as the wall is seen from outside; None for a square piece."""
        if self.rake is None:
            return None
        return "right" if not self.rake.top_left else "left" if self.rake.top_right == self.length else "ridge"


@dataclass(frozen=True)
class Course:
    """One course. ``bottom`` is the underside of its bed joint and ``top`` the top of its units.

    ``joint`` of each run is what its pieces leave between them; ``pieces`` run left to right, lower layer
    first where the course is laid in two layers beside a sill or head off the coursing. ``backing`` are the bricks of a
    one-brick wall that stand behind those, () in other walls.
    """

    number: int
    bottom: int
    top: int
    pieces: tuple[Piece, ...]
    backing: tuple[Piece, ...] = ()

    @property
    def bricks(self) -> tuple[Piece, ...]:
        """Every piece, front and back."""
        return (*self.pieces, *self.backing) if self.backing else self.pieces


class PierPiece(NamedTuple):
    """A unit of a pier. ``piece`` is it as any unit is told: its left side along the wall, its own length as laid or sawn.

    In plan it begins ``near`` behind the wall's outside face, negative before it, takes ``along`` of the wall's length and
    goes ``deep`` through.
    """

    piece: Piece
    near: int
    along: int
    deep: int


class PierCourse(NamedTuple):
    """One course of a wall at a pier. Where it is ``tied`` the pier's units take all of it; else the wall goes on through
    it. No pieces: the pier stands on a higher footing, or ends lower."""

    number: int
    tied: bool
    pieces: tuple[PierPiece, ...]


@dataclass(frozen=True)
class PierLayout:
    """A pier built into a wall, laid out. ``straight`` is how much of a joint shows over a joint on its faces, and how much
    stands over one inside, to a pair of courses; ``cutting`` counts as a wall's; ``proven`` is False where less was not
    ruled out.
    """

    pier: Pier
    courses: tuple[PierCourse, ...]
    cutting: int
    straight: tuple[int, int]
    proven: bool

    @property
    def laid(self) -> tuple[PierCourse, ...]:
        """The courses that it has, lowest first; those of its wall under and over it left out."""
        return tuple(course for course in self.courses if course.pieces)

    @property
    def reach(self) -> tuple[int, int]:
        """From which height to which it stands, ticks over the datum, without the bed under it; (0, 0) for no courses."""
        pieces = [one.piece for course in self.courses for one in course.pieces]
        return min((one.bottom for one in pieces), default=0), max((one.top for one in pieces), default=0)


@dataclass(frozen=True)
class WallLayout:
    """One wall laid out. ``cutting`` and ``cutting_at_least`` count cuts as the objective does (short ones twice).

    ``why`` says where reached and bound differ, one sentence each; ``joints`` is the tightest and the widest
    head joint that any run came to; ``bed`` is the bed joint as laid; ``settings_proven`` is False where fewer saw
    settings at the same cutting were not ruled out, ``everywhere`` False where joints were not tried at every
    place that may matter.
    ``doubtful`` is True where a rule may be broken: the search found no layout that keeps them all, or something lies off
    the coursing. Only the check knows what is. ``piers`` are those built into it; their pieces are not among the courses'.
    """

    wall: Wall
    courses: tuple[Course, ...]
    cutting: int
    cutting_at_least: int
    joints: tuple[int, int]
    bed: int
    why: tuple[str, ...]
    settings_proven: bool = True
    everywhere: bool = True
    doubtful: bool = True
    piers: tuple[PierLayout, ...] = ()

    def pier_pieces(self, number: int) -> tuple[Piece, ...]:
        """What the wall's piers lay in a course, as pieces; () for no piers."""
        return tuple(one.piece for pier in self.piers for course in pier.courses if course.number == number
                     for one in course.pieces)


@dataclass(frozen=True)
class Layout:
    """The whole job laid out, one WallLayout a wall, in the plan's order."""

    job: Job
    walls: tuple[WallLayout, ...]
