"""How a wall stands on a lesson's sheet: paper, scale and windows that leave room for what is lettered round it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from wallplan.drawing.course_sheet import SMALL_SCALES
from wallplan.drawing.dimensions import running_height, side_widths, stagger
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES
from wallplan.drawing.paper import LEAST_COURSE, SCALES, Paper, Scale
from wallplan.drawing.primitives import Box
from wallplan.drawing.sheet_frame import Heading, find_room
from wallplan.drawing.splitting import split_wall
from wallplan.drawing.tally import tally
from wallplan.drawing.view import View, Window, whole
from wallplan.layout.model import Layout, WallLayout

MOST_WINDOWS = 4
"""A wall that takes more sheets side by side is drawn smaller."""


class Room(NamedTuple):
    """What the sheets of a wall keep free: ``under`` gives the height of what stands under it on a paper, ``over`` is above
    it, ``right`` right of its heights, mm. ``headings`` are those of its sheets. ``together`` draws a wall smaller before it
    is split."""

    headings: Sequence[Heading]
    under: Callable[[Paper], float]
    over: float
    right: float = 0.0
    together: bool = False
    larger: tuple[Scale, ...] = ()


class Fit(NamedTuple):
    """Paper, scale, height of figures, and the windows side by side, each of the wall's full height."""

    paper: Paper
    scale: Scale
    figures: float
    windows: tuple[Window, ...]


def fit_wall(layout: Layout, wall: WallLayout, paper: Paper, room: Room) -> Fit:
    """The largest readable scale at which a wall fits one sheet; else split; else smaller. Always gives one."""
    measured, gauge = layout.job.measure, layout.job.masonry.unit.gauge
    usual = [*room.larger, *SCALES[measured]]
    readable = [scale for scale in usual if scale.on_paper(gauge) >= LEAST_COURSE] or usual[:1]
    smaller = [scale for scale in SCALES[measured] + SMALL_SCALES[measured] if scale not in readable]
    fit = _fit_whole(layout, wall, paper, room, readable + (smaller[:1] if room.together else []))
    if fit is not None:
        return fit
    split = [fit for scale in readable for fit in _try_scale(layout, wall, paper, room, scale)
             if len(fit.windows) <= MOST_WINDOWS]
    if split:
        return min(split, key=lambda fit: (len(fit.windows), fit.scale.ratio))
    return _fit_whole(layout, wall, paper, room, smaller) or Fit(paper, smaller[-1], FIGURES, (whole(wall),))


def _fit_whole(layout: Layout, wall: WallLayout, paper: Paper, room: Room, scales: Sequence[Scale]) -> Fit | None:
    """The first of these scales at which the wall stands on one sheet."""
    return next((fit for scale in scales for fit in _try_scale(layout, wall, paper, room, scale)
                 if len(fit.windows) == 1), None)


def _try_scale(layout: Layout, wall: WallLayout, paper: Paper, room: Room, scale: Scale) -> Iterator[Fit]:
    ways = (paper, paper.turned()) if wall.wall.length >= wall.wall.height else (paper.turned(), paper)
    for figures in (LARGE_FIGURES, FIGURES):
        left, right = side_widths(layout.job, wall, figures)
        for way in ways:
            view = View(layout.job, wall, whole(wall), scale, 0.0, 0.0)
            box = _least_room(layout, way, room, scale)
            low = running_height(stagger(view, figures), figures) + room.under(way)
            if room.over + view.outline.height + low > box.height:
                continue
            across = box.width - left - right - room.right
            if view.outline.width <= across:
                yield Fit(way, scale, figures, (view.window,))
            elif across > 0:
                windows = split_wall(wall, tally(wall), layout.job.masonry.module, scale.on_wall(across), 10**15)
                if windows:
                    yield Fit(way, scale, figures, windows)


def _least_room(layout: Layout, way: Paper, room: Room, scale: Scale) -> Box:
    return min((find_room(layout, way, heading, scale) for heading in room.headings), key=lambda box: box.height)


def place_wall(layout: Layout, wall: WallLayout, fit: Fit, room: Room, window: Window) -> View:
    """The window with its foot at the same place on every sheet, in the middle of the sheet's width."""
    box = find_room(layout, fit.paper, room.headings[0], fit.scale)
    left, right = side_widths(layout.job, wall, fit.figures)
    drawn = View(layout.job, wall, window, fit.scale, 0.0, 0.0)
    spare = box.width - left - right - room.right - drawn.outline.width
    high = fit.scale.on_paper(whole(wall).top)
    return View(layout.job, wall, window, fit.scale, box.left + left + max(0.0, spare / 2), box.top + room.over + high)
