"""Piers on walls that are no rectangles: how high each stands, and that no step of the footing is under it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from wallplan.plan.found import print_name
from wallplan.plan.job import Masonry, Outline
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.outline import level_at, reach_between
from wallplan.plan.wall_table import ReadWall

LEAST_COURSES = 2
"""A pier is tied in by every other course, so it has two at least."""


def settle_piers(walls: Sequence[ReadWall], masonry: Masonry | None) -> tuple[ReadWall, ...]:
    """The walls with piers that are short walls as high as the wall that they are tied into is where they stand."""
    known, settled = {wall.name: wall for wall in walls}, list(walls)
    for place, pier in enumerate(walls):
        main = known.get(pier.abuts[0][1].meets) if pier.is_pier and pier.abuts else None
        if main is None or main.outline is None or masonry is None or pier.length is None:
            continue
        at = pier.abuts[0][1].at
        foot = level_at(main.outline.footing, at)
        top = top_of_pier(main.outline, at, at + masonry.thickness, masonry)
        outline = Outline(((0, foot), (pier.length, foot)), ((0, top), (pier.length, top)), main.outline.coursed)
        settled[place] = replace(pier, outline=outline, height=top)
    return tuple(settled)


def top_of_pier(outline: Outline, left: int, right: int, masonry: Masonry) -> int:
    """How high a pier stands from ``left`` to ``right`` along a wall: up to its top there, the lower one where it steps,
    under a slope by whole courses over the eaves. Ticks over the datum."""
    top, beside = reach_between(outline.top, left, right)[0], masonry.joint + masonry.least_piece
    if not _is_sloped(outline, left - beside, right + beside):
        return top
    # A piece of the wall fits beside it in its last course.
    wide = max(left - beside, outline.top[0][0]), min(right + beside, outline.top[-1][0])
    top = reach_between(outline.top, *wide)[0]
    if top <= outline.coursed:
        return top
    count = 0
    while outline.coursed + masonry.unit.height_of_courses(count + 1) <= top:
        count += 1
    return outline.coursed + masonry.unit.height_of_courses(count)


def _is_sloped(outline: Outline, left: int, right: int) -> bool:
    return any(low != high and begin < right and end > left and begin < end
               for (begin, low), (end, high) in pairwise(outline.top))


def check_steps_at(main: ReadWall, key: KeyPath, place: tuple[int, int], masonry: Masonry, notebook: Notebook, *,
                   flush: bool) -> None:
    """Note a pier that stands on or beside a step of its wall so that no course could be laid there. ``place`` is from where
    to where it stands along the wall; ``flush``: it may stand at the end of courses that end at a step."""
    if main.outline is None:
        return
    (left, right), least = place, (masonry.joint + masonry.least_piece, flush)
    called = f'wall "{print_name(main.name or "")}"'
    for at, before, after in _risers(main.outline.footing):
        if left < at < right:
            _tell_astride(key, place, (at, before < after), least, called, notebook)
            return
        _check_sliver(key, (at - right, left - at), before < after, least, f"the step of the footing at {notebook.show(at)}",
                      notebook)
    for at, before, after in _risers(main.outline.top):
        _check_sliver(key, (at - right, left - at), before > after, least, f"the step of the top at {notebook.show(at)}",
                      notebook)
    foot, top = reach_between(main.outline.footing, left, right)[1], top_of_pier(main.outline, left, right, masonry)
    if top - foot < LEAST_COURSES * masonry.unit.gauge:
        notebook.note(key, f"{called} is {notebook.show(max(top - foot, 0))} high there; a pier is tied in by every other "
                      f"course and needs two of them: write a place where it is higher")


def _tell_astride(key: KeyPath, place: tuple[int, int], step: tuple[int, bool], wanted: tuple[int, bool], called: str,
                  notebook: Notebook) -> None:
    """``step``: where the footing steps, and whether up. On its lower side a pier keeps clear, unless it may stand flush."""
    (left, right), (at, rises), (least, flush) = place, step, wanted
    before, after = (0 if flush or clear else least for clear in (not rises, rises))
    lower, show = at - before - (right - left), notebook.show
    instead = f"{notebook.show_most(lower)} or less, or " if lower >= 0 else ""
    notebook.note(key, f"from {show(left)} to {show(right)} it stands astride the step of the footing of {called} at "
                  f"{show(at)}; write {instead}{notebook.show_least(at + after)} or more, or move the step")


def _check_sliver(key: KeyPath, away: tuple[int, int], ends_right: bool, wanted: tuple[int, bool], step: str,
                  notebook: Notebook) -> None:
    """Courses that end at a step beside a pier have room for a piece there. ``away``: how far the step is to its right, and
    to its left; ``ends_right``: they end at the step's left side; ``wanted``: the least, and whether none will do."""
    clear, (least, flush) = away[0] if ends_right else away[1], wanted
    if 0 < clear < least or (clear == 0 and not flush):
        notebook.note(key, f"{notebook.show(clear)} of wall are left between it and {step}; leave "
                      f"{'none, or ' if flush else ''}{notebook.show_least(least)} at least")


def _risers(line: tuple[tuple[int, int], ...]) -> list[tuple[int, int, int]]:
    """The upright places of a line inside the wall: where, and the heights left and right of each."""
    return [(at, before, after) for (at, before), (also, after) in pairwise(line)
            if at == also and line[0][0] < at < line[-1][0]]
