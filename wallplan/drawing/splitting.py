"""Splitting: a wall too long or too tall for one sheet, in windows that overlap by a unit or a course."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from itertools import accumulate

from wallplan.drawing.tally import Tally
from wallplan.drawing.view import Window, whole
from wallplan.layout.model import WallLayout

Stretch = tuple[int, int, tuple[int, ...]]
"""From, to, and the match lines on it, in ticks."""


def split_wall(wall: WallLayout, counted: Tally, module: int, widest: int, highest: int) -> tuple[Window, ...]:
    """Windows of at most ``widest`` by ``highest`` ticks, lowest courses first and left to right; () where a
    window could not even hold the units and courses that neighbours share."""
    if not wall.courses:
        return (whole(wall),)
    columns = _balance(wall, counted, module, widest)
    rows = _split_up(wall, highest)
    return tuple(
        Window(left, right, bottom, top, courses, matches, levels)
        for courses, (bottom, top, levels) in rows for left, right, matches in columns
    )


def _balance(wall: WallLayout, counted: Tally, module: int, widest: int) -> tuple[Stretch, ...]:
    """The fewest stretches, about equally long."""
    fewest = _split_across(wall, counted, module, widest)
    if len(fewest) < 2:
        return fewest
    even = wall.wall.length // len(fewest) + 2 * module
    for most in range(even, widest, module):
        found = _split_across(wall, counted, module, most)
        if len(found) == len(fewest):
            return found
    return fewest


def _split_across(wall: WallLayout, counted: Tally, module: int, most: int) -> tuple[Stretch, ...]:
    """Stretches of at most ``most`` ticks that meet at head joints; () where that is too little.

    Pieces astride a match line are drawn on both sheets, and so is the unit before it.
    """
    length = wall.wall.length
    lefts = [left for left, _ in counted.spans]
    reaches = list(accumulate((right for _, right in counted.spans), max))
    stretches: list[Stretch] = []
    left = 0
    before: tuple[int, ...] = ()
    while length - left > most:
        least = (before[0] if before else 0) + 2 * module
        joints = counted.joints[bisect_right(counted.joints, least) : bisect_left(counted.joints, left + most)]
        fitting = [joint for joint in joints if reaches[bisect_left(lefts, joint) - 1] - left <= most]
        if not fitting:
            return ()
        clear = [joint for joint in fitting if _is_clear(wall, joint, module)]
        match = max(clear if clear and max(clear) > left + most // 2 else fitting)
        stretches.append((left, reaches[bisect_left(lefts, match) - 1], (*before, match)))
        left = lefts[bisect_right(reaches, match - module)]
        before = (match,)
    return (*stretches, (left, length, before))


def _is_clear(wall: WallLayout, joint: int, module: int) -> bool:
    """Whether a match line would pass all openings with their lintels, and all control joints."""
    around = [(opening.left - module, opening.right + module) for opening in wall.wall.openings]
    around += [(centre - module, centre + module) for centre in wall.wall.control_joints]
    return not any(left < joint < right for left, right in around)


def _split_up(wall: WallLayout, most: int) -> tuple[tuple[tuple[int, int], Stretch], ...]:
    """Course numbers and heights of rows of at most ``most`` ticks; the course over a match line is on both sheets.

    A row holds at least two courses, however low the sheet.
    """
    courses = wall.courses
    rows = []
    first = 0
    levels: tuple[int, ...] = ()
    while True:
        fitting = [place for place in range(first, len(courses)) if courses[place].top - courses[first].bottom <= most]
        last = max(fitting[-1] if fitting else first, min(first + 1, len(courses) - 1))
        done = last == len(courses) - 1
        match: tuple[int, ...] = () if done else (courses[last].bottom,)
        stretch = (courses[first].bottom, courses[last].top, (*levels, *match))
        rows.append(((courses[first].number, courses[last].number), stretch))
        if done:
            return tuple(rows)
        first, levels = last, match
