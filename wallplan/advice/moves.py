"""Moves: what may be moved in a wall, by how much, and the wall that comes of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from wallplan.plan.job import Opening, Wall

Kind = Literal["left end", "right end", "opening", "width", "sill", "head", "top", "control joint"]


@dataclass(frozen=True, order=True)
class Thing:
    """What is moved: its kind, and which opening or control joint of the wall, from nought (0 for ends and top)."""

    kind: Kind
    index: int = 0


@dataclass(frozen=True)
class Move:
    """A thing moved ``by`` ticks: to the right or up; an end outwards or inwards alike, so that a left end moved to the
    right makes the wall shorter. Of a width, the right jamb moves alone.
    """

    thing: Thing
    by: int


def move_wall(wall: Wall, moves: Iterable[Move]) -> Wall:
    """The wall after all of these moves at once, measured from its own left end again. No moves: the wall as it is.

    Whether it can be built is not asked.
    """
    by = {move.thing: move.by for move in moves}
    start = by.get(Thing("left end"), 0)
    return replace(
        wall, length=wall.length + by.get(Thing("right end"), 0) - start, height=wall.height + by.get(Thing("top"), 0),
        control_joints=tuple(centre + by.get(Thing("control joint", number), 0) - start
                             for number, centre in enumerate(wall.control_joints)),
        openings=tuple(_move_opening(opening, number, by, start) for number, opening in enumerate(wall.openings)),
    )


def _move_opening(opening: Opening, number: int, by: dict[Thing, int], start: int) -> Opening:
    left = opening.left + by.get(Thing("opening", number), 0) - start
    width = opening.right - opening.left + by.get(Thing("width", number), 0)
    return replace(
        opening, left=left, right=left + width, bottom=opening.bottom + by.get(Thing("sill", number), 0),
        top=opening.top + by.get(Thing("head", number), 0),
    )


def distance(moves: Sequence[Move]) -> int:
    """How far all of the moves go together, in ticks."""
    return sum(abs(move.by) for move in moves)
