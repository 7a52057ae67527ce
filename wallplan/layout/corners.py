"""Corners and junctions: how a wall ends in odd and in even courses, where one wall runs through and the other stops.

At an outside corner the wall that runs through shows its unit's end in the other's elevation, as wide as the wall is
thick, or as the L corner unit returns; at an inside corner it runs on behind the other wall's face, out of sight of its own
elevation. A wall that abuts another ends like one at an inside corner: in the courses that tie it in, it runs on through the
other, which parts there and shows its end.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from wallplan.layout.spots import Spot
from wallplan.plan.coursing import Row
from wallplan.plan.ground import join_corners
from wallplan.plan.job import EndKind, Job, Masonry, Wall

Laid = tuple[int, int]
"""Underside and top of a course's units over the datum."""


class OutOfTurn(NamedTuple):
    """Courses (bits) in which walls that meet do not run through in turn, one being lower than the other there.

    ``runs``: this wall runs through whatever the turn; ``stops``: it stops. ``opens``: the other lays nothing there.
    ``seen``: course, underside and top of the other's units where this wall stops.
    """

    runs: int = 0
    stops: int = 0
    opens: int = 0
    seen: tuple[tuple[int, int, int], ...] = ()


IN_TURN = OutOfTurn(), OutOfTurn()
"""Both ends of a wall whose courses all go in turn."""


class WallEnd(NamedTuple):
    """One end of a wall. ``at`` is where its own masonry ends in odd and in even courses, ticks from its left end.

    ``returns`` is (left, right) of the other wall's unit in courses where that one runs through, None where there is
    no corner; ``through`` says in which courses this wall runs through. ``other`` is the other wall's name. ``ell`` is True
    where the unit that runs through is an L corner unit. ``out_of_turn`` are courses that go out of turn.
    """

    at: tuple[int, int]
    returns: tuple[int, int] | None
    through: tuple[bool, bool]
    other: str | None
    ell: bool = False
    out_of_turn: OutOfTurn = OutOfTurn()

    def runs_through(self, number: int) -> bool:
        """Whether this wall runs through in a course."""
        if (self.out_of_turn.runs | self.out_of_turn.stops) >> number & 1:
            return bool(self.out_of_turn.runs >> number & 1)
        return self.through[parity_of(number)]

    def at_in(self, number: int) -> int:
        """Where the wall's own masonry ends in a course."""
        runs = self.runs_through(number)
        return self.at[parity_of(number) if self.through[parity_of(number)] is runs else number % 2]


class Stem(NamedTuple):
    """What runs through a wall in every other course: a wall that abuts it, or a pier, ``width`` wide from ``left``.

    ``seen`` are the units that show in the wall's outside face, (left, right) of each; ``inner`` are the right ends of units
    at head joints of its own, from which the wall's joints keep a lap away; or ``kept_clear`` are the pier's cells before
    which it has none, since the wall was bonded first. ``but`` are courses (bits) in which it does not run through, since
    that wall or this one lays nothing there, or less than a course.
    """

    left: int
    width: int
    name: str
    seen: tuple[tuple[int, int], ...]
    inner: tuple[int, ...] = ()
    but: int = 0
    kept_clear: tuple[int, ...] = ()


class Crossing(NamedTuple):
    """A wall or pier that runs through this one, from ``left`` to ``right``, in odd courses (``parity`` 0) or even ones (1).

    ``seen``, ``inner`` and ``kept_clear`` as of its stem; not in the courses ``but`` (bits).
    """

    left: int
    right: int
    other: str
    parity: int
    seen: tuple[tuple[int, int], ...]
    inner: tuple[int, ...] = ()
    but: int = 0
    kept_clear: tuple[int, ...] = ()

    def is_in(self, number: int) -> bool:
        """Whether it runs through in a course."""
        return self.parity == parity_of(number) and not self.but >> number & 1


class WallEnds(NamedTuple):
    """Both ends of a wall, and the walls that run through it in between."""

    left: WallEnd
    right: WallEnd
    crossings: tuple[Crossing, ...] = ()

    @property
    def has_corners(self) -> bool:
        """True where the wall meets another at either end."""
        return self.left.returns is not None or self.right.returns is not None

    def other_at(self, left: int) -> str | None:
        """The wall whose unit returns with its left side at a distance, None where none does."""
        for end in (self.left, self.right):
            if end.returns is not None and end.returns[0] == left:
                return end.other
        return next((crossing.other for crossing in self.crossings
                    if any(seen == left for seen, _ in crossing.seen)), None)

    def span(self, number: int) -> tuple[int, int]:
        """Where the wall's own masonry begins and ends in a course."""
        return self.left.at_in(number), self.right.at_in(number)

    def gaps(self, number: int, joint: int) -> tuple[tuple[int, int], ...]:
        """What other walls take out of a course of this one, with a joint on both sides."""
        return tuple((one.left - joint, one.right + joint) for one in self.crossings if one.is_in(number))

    def ells(self, number: int) -> frozenset[int]:
        """Where the wall's own masonry ends in an L corner unit in a course."""
        return frozenset(end.at_in(number) for end in (self.left, self.right)
                         if end.ell and end.runs_through(number) and not end.out_of_turn.opens >> number & 1)


class Turn(NamedTuple):
    """What happens at an end where walls meet: whether this wall runs through in odd courses, and whether by an L unit."""

    through: bool
    ell: bool = False


class Choice(NamedTuple):
    """What happens at the left and the right end, None where no choice is; and in which courses others run through."""

    left: Turn | None
    right: Turn | None
    crossed: int | None = None


def parity_of(number: int) -> int:
    """0 for an odd course, 1 for an even one."""
    return 1 - number % 2


def end_wall(wall: Wall, masonry: Masonry, choice: Choice, others: tuple[str | None, str | None],
             stems: tuple[Stem, ...] = (), out_of_turn: tuple[OutOfTurn, OutOfTurn] = IN_TURN) -> WallEnds:
    """The ends of a wall for one choice. ``stems`` are the walls and piers that run through it."""
    left = _end(wall.left_end, masonry, choice.left, others[0])._replace(out_of_turn=out_of_turn[0])
    right = _end(wall.right_end, masonry, choice.right, others[1])._replace(out_of_turn=out_of_turn[1])
    crossings = () if choice.crossed is None else tuple(
        Crossing(stem.left, stem.left + stem.width, stem.name, choice.crossed, stem.seen, stem.inner, stem.but)
        for stem in stems)
    return WallEnds(left, _mirror(right, wall.length), crossings)


def _end(kind: EndKind, masonry: Masonry, turn: Turn | None, other: str | None) -> WallEnd:
    """A left end; the wall's outside corner, or the face that it abuts, is at 0."""
    thick, joint = masonry.thickness, masonry.joint
    if turn is None:
        begin = joint if kind == "abuts" else 0
        return WallEnd((begin, begin), None, (True, True), None)
    # A one-brick corner is turned by a quoin brick, as wide as it is thick, not as the wall is.
    wide = masonry.unit.ell_return or thick if turn.ell else masonry.unit.thickness
    behind = 0 if kind == "outside corner" else thick
    stops = wide - behind + joint
    through = (turn.through, not turn.through)
    at = -behind if through[0] else stops, -behind if through[1] else stops
    return WallEnd(at, (-behind, wide - behind), through, other, turn.ell)


def _mirror(end: WallEnd, length: int) -> WallEnd:
    returns = None if end.returns is None else (length - end.returns[1], length - end.returns[0])
    return end._replace(at=(length - end.at[0], length - end.at[1]), returns=returns)


def free_ends(wall: Wall) -> WallEnds:
    """The ends of a wall that meets no other."""
    left, right = (WallEnd((at, at), None, (True, True), None) for at in (0, wall.length))
    return WallEnds(left, right)


def make_returns(ends: WallEnds, row: Row, laid: tuple[Laid | None, Laid | None],
                 levels: Callable[[int, int], Laid]) -> list[Spot]:
    """The other walls' units that stand in this wall's elevation: seen end-on, or behind an inside corner.

    ``laid`` is the underside and the top of what is laid at the wall's left and right end, None where nothing is; ``levels``
    tells them between two distances.
    """
    seen = []
    for end, here in zip((ends.left, ends.right), laid, strict=True):
        if end.returns is None or end.runs_through(row.number) or end.out_of_turn.opens >> row.number & 1:
            continue
        here = next(((low, high) for number, low, high in end.out_of_turn.seen if number == row.number), here)
        if here is not None:
            left, right = end.returns
            seen.append(Spot(left, right - left, here[0] - row.bottom, here[1] - here[0], "full", "return", None))
    for crossing in ends.crossings:
        if crossing.is_in(row.number):
            low, high = levels(crossing.left, crossing.right)
            seen += [Spot(left, right - left, low - row.bottom, high - low, "full", "return", None)
                     for left, right in crossing.seen]
    return seen


def joined_to(job: Job, index: int) -> tuple[int | None, int | None]:
    """Which walls a wall meets at its left and right corner, by their places in the job; None at a free end."""
    joined = join_corners([(wall.left_end, wall.right_end) for wall in job.walls])
    return joined.index(index) if index in joined else None, joined[index]
