"""What the search is given: the terms of the bond, and for each track the stretches its courses must fill."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True)
class Terms:
    """Numbers of the bond, nominal ticks. ``stock`` are lengths that cost nothing, the full unit first.

    A joint may close by ``close`` and open by ``open`` from the one aimed for. ``lap`` 0 asks for no lap.
    ``keeps_bond`` is True where the bond's own lap goes before cutting. ``most`` is what the joints of a run may take
    together at most, None where only a quarter of a module bounds it. What is no longer than ``joint``, the one aimed for,
    is no piece.
    """

    module: int
    stock: tuple[int, ...]
    least: int
    lap: int
    ideal: int
    close: int
    open: int
    keeps_bond: bool = False
    most: int | None = None
    joint: int = 0

    @property
    def fixed(self) -> bool:
        """True where joints can neither open nor close."""
        return not (self.close or self.open)

    def absorbs(self, difference: int, joints: int) -> bool:
        """Whether so many joints can open (difference > 0) or close by it together."""
        return -joints * self.close <= difference <= joints * self.open

    def share(self, joints: int) -> int:
        """The most that so many joints are asked to give or take together.

        Never over a quarter of a module, however many joints there are: beyond it another stock length is nearer,
        and the drift would eat the lap.
        """
        return min(joints * max(self.close, self.open), self.module // 4 if self.most is None else self.most)

    def least_joints(self, length: int) -> int:
        """The fewest joints in a run of this nominal length: units at their longest, joints at their widest."""
        return max(0, -(-(length + self.open) // (self.module + self.open)) - 1)

    def departure(self, gap: int) -> int:
        """How far a distance between joints of neighbouring courses is from the bond's own lap."""
        return min(abs(gap - self.ideal), abs(gap - self.module + self.ideal))


@dataclass(frozen=True)
class Stretch:
    """One run of a track from ``start`` to ``end``, in the courses whose bits ``courses`` has.

    ``start_shows`` and ``end_shows`` rank how much a cut is seen at that end (2 a jamb, 3 a wall's end).
    """

    start: int
    end: int
    courses: int
    start_shows: int
    end_shows: int

    @cached_property
    def weight(self) -> int:
        """How many courses it stands for."""
        return self.courses.bit_count()


Spots = tuple[tuple[tuple[int, int], ...], tuple[tuple[int, int], ...]]
"""For each track places with the courses (bits) that they matter to."""


@dataclass(frozen=True)
class Problem:
    """One wall for the search: odd and even tracks, the positions no piece may cross, where cuts show least.

    ``fixed`` are positions, from first to last, at which both tracks begin anew (ends, control joints,
    jambs of openings as high as the wall). ``covered`` are stretches of length above and below openings.
    ``ends`` are each track's own first and last position where they differ, between those of ``fixed``. ``joined`` are
    ends of a track that are head joints themselves, against what another wall lays there. ``kept_clear`` are places from
    which a track's joints keep a lap away in the courses (bits) beside them, joints of another kind standing below;
    ``bridged`` are such places over a mere edge, from which they keep away where it costs nothing.
    ``own`` are positions at which one track alone begins anew.
    """

    terms: Terms
    tracks: tuple[tuple[Stretch, ...], tuple[Stretch, ...]]
    fixed: tuple[int, ...]
    covered: tuple[tuple[int, int], ...]
    ends: tuple[tuple[int, int], tuple[int, int]] | None = None
    joined: tuple[frozenset[int], frozenset[int]] = (frozenset(), frozenset())
    kept_clear: Spots = ((), ())
    bridged: Spots = ((), ())
    own: tuple[tuple[int, ...], tuple[int, ...]] = ((), ())

    def ends_of(self, which: int) -> tuple[int, int]:
        """Where a track begins and ends."""
        return (self.fixed[0], self.fixed[-1]) if self.ends is None else self.ends[which]

    def fixed_of(self, which: int) -> tuple[int, ...]:
        """Where a track begins anew, its own ends included."""
        first, last = self.ends_of(which)
        inside = {*self.fixed, *self.own[which]}
        return (first, *sorted(at for at in inside if first < at < last), last)


def adjoining(one: int, other: int) -> int:
    """How many pairs of neighbouring courses two sets of courses (bits) make."""
    return ((one << 1) & other).bit_count() + ((one >> 1) & other).bit_count()


def merge_stretches(covered: tuple[tuple[int, int], ...]) -> list[tuple[int, int]]:
    """Stretches of length in order, those that overlap as one."""
    merged = list[tuple[int, int]]()
    for left, right in sorted(covered):
        if merged and left < merged[-1][1]:
            merged[-1] = merged[-1][0], max(right, merged[-1][1])
        else:
            merged.append((left, right))
    return merged
