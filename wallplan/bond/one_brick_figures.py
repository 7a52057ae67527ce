"""Walls one brick thick in numbers: the bond's grammar, a run with its ends, and what the search finds. Nominal ticks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

Kind = Literal["S", "H", "C", "P"]
"""A pair of stretchers, a header, a queen closer, a pair sawn to length."""

Rule = Literal["in turn", "three in turn", "stretchers", "headers"]
"""Headers and stretchers in turn; a header after three stretchers; one kind alone."""

PLUMB, JOINT, SAWN, OFF_CENTRE, DEPARTED, BROKEN = 1 << 32, 1 << 52, 1 << 76, 1 << 100, 1 << 124, 1 << 148
"""Grades of cost, each over any sum of those below it; where a departure shows is counted in ones."""

ROUNDING = 2
STRETCHED, HEADED, CLOSED, CLOSING, SECOND, THIRD, FIRST, FIRST_TWO, FIRST_THREE = range(9)
"""What a track laid last: what plays a stretcher, what plays a header, the closer of its left end, of its right end; where
three stretchers go between headers, the second and third of them, and those before the first header inside."""

NEITHER = 2
"""The parity of an end at which no track begins with a stretcher."""


@dataclass(frozen=True)
class Grammar:
    """Numbers of the bond, nominal ticks. ``rules`` are those of a track that begins with a stretcher and of one that does
    not. Of runs' joints each may close by ``close`` and open by ``open``. ``least`` is the least sawn pair;
    ``beside`` the lap that runs of other ends must have, whose joints open otherwise. ``quoins``: where one kind is laid
    alone, a quoin of the other is no departure, nor is a track that no course has laid.
    """

    stretcher: int
    lap: int
    least: int
    close: int
    open: int
    rules: tuple[Rule, Rule]
    beside: int = 0
    quoins: bool = False

    def quarters(self, count: int) -> int:
        """So many quarters of a stretcher: a closer is one, a header two."""
        return self.stretcher * count // 4


class End(NamedTuple):
    """An end of a run: the parity whose track begins there with a stretcher, and whether that is given by another wall."""

    stretcher: int
    given: bool = False


class Beside(NamedTuple):
    """A joint of another run: where, the track (parity) that it weighs on, in how many pairs of courses, and whether it is
    one of its own kind, to be plumb with, or stands above or below."""

    at: int
    parity: int
    weight: int
    plumb: bool


@dataclass(frozen=True)
class Span:
    """One run: nominal ``length``, its ends, how many odd and even courses it has, how many pairs of them adjoin, the
    stretches above or below openings, and other runs' joints beside it, from its own left end. ``anchors`` are ends of those
    runs within a quarter: pairs may be sawn to fall into step with them.
    """

    length: int
    ends: tuple[End, End]
    courses: tuple[int, int]
    adjoining: int
    covered: tuple[tuple[int, int], ...] = ()
    beside: tuple[Beside, ...] = ()
    anchors: tuple[int, ...] = ()


class Laid(NamedTuple):
    """A track's pieces, (kind, nominal length) from left to right."""

    pieces: tuple[tuple[Kind, int], ...]

    @property
    def joints(self) -> tuple[int, ...]:
        """Where pieces meet, nominal, from the run's left end."""
        at, found = 0, list[int]()
        for _, length in self.pieces[:-1]:
            at += length
            found.append(at)
        return tuple(found)


class Found(NamedTuple):
    """Both tracks, their cost, and by how much the run is longer than its pieces are nominally."""

    tracks: tuple[Laid, Laid]
    cost: int
    over: int


State = tuple[int, bool, int]
"""Of one track: where it is, whether counted from the run's right end, what it laid last."""


class Move(NamedTuple):
    """A piece that a track may lay next: where that takes it, its kind, and what it costs."""

    to: State
    kind: Kind
    cost: int
