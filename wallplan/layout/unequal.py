"""Walls of unequal height that meet: in which courses both stand where they meet, and which goes on where one ends.

Courses in which both stand there as high run through in turn. Where one lays nothing, the other runs through in every
course: its end over the lower wall is a free one. Where one is ripped, or cut off by its slope, the other runs through.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from wallplan.layout.corners import OutOfTurn, parity_of
from wallplan.layout.outline import find_bays
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Wall


class Stance(NamedTuple):
    """What a wall lays in one course where another meets it: underside and top of its units over the datum, whether a
    slope or a step leaves only a part of the place to it, and whether even its bed has less than half of it."""

    low: int
    high: int
    partly: bool = False
    little: bool = False


Stances = Mapping[int, Stance]
"""By course; courses in which nothing is laid there are left out."""


def find_stances(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], left: int, right: int, within: int = 0) -> Stances:
    """What a wall lays from ``left`` to ``right`` along it, which may reach past its ends; the whole of the place is its
    where nothing of it is missing ``within`` so much of both."""
    begin, end = max(left, 0), min(right, wall.length)
    found = {}
    for row in rows:
        for bay in find_bays(wall, masonry, row):
            if bay.left < end and bay.right > begin:
                least = max(left + within, 0), min(right - within, wall.length)
                whole = bay.left + bay.rakes[0] <= least[0] and bay.right - bay.rakes[1] >= least[1]
                taken = min(bay.right, least[1]) - max(bay.left, least[0])
                found[row.number] = Stance(bay.low, bay.high, not whole, not whole and 2 * taken < least[1] - least[0])
                break
    return found


def compare(mine: Stances, other: Stances) -> OutOfTurn:
    """The courses of one wall that go out of turn where another meets it."""
    runs = stops = opens = 0
    seen = list[tuple[int, int, int]]()
    for number, here in mine.items():
        there, bit = other.get(number), 1 << number
        if there is None:
            opens, runs = opens | bit, runs | bit
        elif here.little != there.little or here.partly != there.partly or (here.high != there.high and not here.partly):
            higher = there.little if here.little != there.little else not here.partly and (
                there.partly or here.high > there.high)
            runs, stops = (runs | bit, stops) if higher else (runs, stops | bit)
            seen += [] if higher else [(number, there.low, there.high)]
    return OutOfTurn(runs, stops, opens, tuple(seen))


def list_single(mine: Stances, other: Stances, courses: int) -> int:
    """Of so many courses those (bits) in which the one does not go through the other: not both stand where they meet, as
    high. Where only a slope of the other reaches there, that one parts."""
    parted = {number for number, there in other.items() if number in mine and there.partly and not mine[number].partly}
    return sum(1 << number for number in range(1, courses + 1)
               if number not in mine or (mine[number] != other.get(number) and number not in parted))


def count_running(through: tuple[bool, bool], odd: OutOfTurn) -> int:
    """How often a joint runs up a corner through two courses, where one went out of turn below another that both lay."""
    apart = (odd.runs | odd.stops) & ~odd.opens
    count, number = 0, 1
    while apart >> number:
        if apart >> number & 1 and number > 1 and not odd.opens >> number - 1 & 1:
            now, before = (bool(odd.runs >> at & 1) if apart >> at & 1 else through[parity_of(at)]
                           for at in (number, number - 1))
            count += now is before
        number += 1
    return count
