"""Layout -> leads: each racked-back end as it is built first, course by course, both legs where walls meet at a corner."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.layout.corners import joined_to
from wallplan.layout.leads import OVERHANG
from wallplan.layout.model import Layout, Lead, Piece, WallLayout
from wallplan.plan.job import Pier


@dataclass(frozen=True)
class LeadCourse:
    """One course of a leg: its number, bottom and top in ticks, its pieces as they lie in the wall, and how many units stand
    behind them in a one-brick wall, and in the piers that it takes in."""

    number: int
    bottom: int
    top: int
    pieces: tuple[Piece, ...]
    behind: int = 0

    @property
    def units(self) -> int:
        """How many units of the wall's own are laid; a return is counted in its own wall."""
        return sum(piece.shape != "return" for piece in self.pieces) + self.behind


@dataclass(frozen=True)
class Leg:
    """A wall's part of a lead, in its first lift. ``side`` is the end of the wall that it stands at."""

    wall: WallLayout
    side: Lead
    courses: tuple[LeadCourse, ...]

    def off(self, ticks: int) -> int:
        """How far a distance along the wall is from the leg's own end."""
        return ticks if self.side == "left" else self.wall.wall.length - ticks

    def reach(self, number: int) -> int:
        """How far the leg reaches from its end in a course of the lift, counted from 1; 0 above its top."""
        if number > len(self.courses):
            return 0
        return max(max(self.off(piece.left), self.off(piece.right)) for piece in self.courses[number - 1].pieces)

    @property
    def shape(self) -> tuple[object, ...]:
        """Equal for two legs that are built alike."""
        return tuple((course.top, tuple(sorted((self.off(piece.left if self.side == "left" else piece.right), piece.length,
                                                piece.bottom, piece.shape == "return") for piece in course.pieces)))
                     for course in self.courses)


@dataclass(frozen=True)
class BuiltLead:
    """A lead: one leg at a free end, two at a corner, the left-hand one first. ``also`` names the others built alike."""

    legs: tuple[Leg, ...]
    also: tuple[str, ...]

    @property
    def name(self) -> str:
        """Where it stands, in words."""
        return _name(self.legs)

    @property
    def courses(self) -> int:
        """How many courses it has; one leg may end lower than the other."""
        return max(len(leg.courses) for leg in self.legs)

    def units_of(self, number: int) -> tuple[int, ...]:
        """Units of each leg in a course, counted from 1. A return is the other leg's, unless that ends below it."""
        whole = all(number <= len(leg.courses) for leg in self.legs)
        here = [leg.courses[number - 1] if number <= len(leg.courses) else None for leg in self.legs]
        return tuple(0 if course is None else course.units if whole else len(course.pieces) + course.behind
                     for course in here)

    @property
    def units(self) -> int:
        """All units of its first lift."""
        return sum(sum(self.units_of(number)) for number in range(1, self.courses + 1))


def list_leads(layout: Layout) -> tuple[BuiltLead, ...]:
    """The leads of a job, those built alike once; () where walls are too short for any."""
    groups: dict[tuple[object, ...], list[tuple[Leg, ...]]] = {}
    for legs in _find_legs(layout):
        key = (*((leg.side, leg.shape) for leg in legs),) if len(legs) == 2 else ("free", legs[0].shape)
        groups.setdefault(key, []).append(legs)
    return tuple(BuiltLead(found[0], tuple(_name(legs) for legs in found[1:])) for found in groups.values())


def _find_legs(layout: Layout) -> list[tuple[Leg, ...]]:
    found: list[tuple[Leg, ...]] = []
    for index, wall in enumerate(layout.walls):
        before, after = joined_to(layout.job, index)
        if before is None and (leg := _follow(wall, "left")):
            found.append((leg,))
        legs = [_follow(wall, "right")]
        if after is not None:
            legs.append(_follow(layout.walls[after], "left"))
        standing = tuple(leg for leg in legs if leg)
        if standing:
            found.append(standing)
    return found


def _follow(wall: WallLayout, side: Lead) -> Leg | None:
    """The leg's first lift: courses from the lowest up, while none stands out over the one under it."""
    courses: list[LeadCourse] = []
    last = 10**12
    for course in wall.courses:
        pieces = tuple(piece for piece in course.pieces if piece.lead == side)
        if not pieces or len({piece.bottom for piece in pieces}) > 1:
            break
        far = max(piece.right if side == "left" else wall.wall.length - piece.left for piece in pieces)
        if far > last + OVERHANG:
            break
        last = far
        behind = sum(piece.lead == side for piece in course.backing) + _count_in_piers(wall, course.number, side, far)
        courses.append(LeadCourse(course.number, course.bottom, course.top, pieces, behind))
    return Leg(wall, side, tuple(courses)) if courses else None


def _count_in_piers(wall: WallLayout, number: int, side: Lead, far: int) -> int:
    """Units of the piers that a lead reaches over, in a course; a pier that it takes in by half is built in the fill."""
    def reach(pier: Pier) -> int:
        return pier.right if side == "left" else wall.wall.length - pier.left

    return sum(len(course.pieces) for pier in wall.piers if reach(pier.pier) <= far
               for course in pier.courses if course.number == number)


def _name(legs: tuple[Leg, ...]) -> str:
    if len(legs) == 1:
        return f"{legs[0].side} end of {legs[0].wall.wall.name}"
    return f"corner {legs[0].wall.wall.name} / {legs[1].wall.wall.name}"
