"""Openings: masonry meets the sill, the lintel stands on the head and bears on both sides."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wallplan.findings import Finding
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.job import Opening
from wallplan.rules.as_laid import ROUNDING, AsLaid
from wallplan.rules.reporting import Break, exact, height, note_first, report_breaks, report_held, size
from wallplan.rules.sources import BEARING, OPENINGS

ASK = "ask whoever sized it"
"""What is said of a lintel that bears less than publications have."""

SHAPES = {"block": "lintel", "precast": "precast"}


def check_openings(wall: AsLaid) -> tuple[Finding, ...]:
    """Sill, lintel and bearings of every opening. A wall without openings: held."""
    openings = wall.layout.wall.openings
    if not openings:
        return (report_held(wall, "openings", OPENINGS, "none", "none"),)
    lintels = [_bearing(wall, opening) for opening in openings]
    notice = " ".join(f"{opening.name}: lintel {figure}." for opening, (_, figure) in zip(openings, lintels, strict=True)
                      if figure.endswith(ASK))
    broken = (
        *report_breaks(wall, "openings", OPENINGS, [one for opening in openings for one in _off_sill(wall, opening)]),
        *report_breaks(wall, "openings", BEARING, [one for breaks, _ in lintels for one in breaks]),
    )
    figures = "; ".join(f"{opening.name}: {figure}" for opening, (_, figure) in zip(openings, lintels, strict=True))
    held = report_held(wall, "openings", BEARING, figures, "the plan's bearing each side", notice)
    return note_first(broken, notice) or (held,)


def _off_sill(wall: AsLaid, opening: Opening) -> Iterator[Break]:
    if opening.bottom <= wall.beds[1]:
        return
    under = (wall.left < opening.right) & (wall.right > opening.left) & (wall.top <= opening.bottom + ROUNDING)
    near = np.flatnonzero(under & (wall.top > opening.bottom - wall.hole))
    covered = (
        (wall.left[near][:, None] < wall.right[near][None, :]) & (wall.right[near][:, None] > wall.left[near][None, :])
        & (wall.top[near][:, None] < wall.top[near][None, :])
    ).any(axis=1)
    low = near[(opening.bottom - wall.top[near] > wall.beds[1]) & ~covered]
    if len(low):
        gap = int((opening.bottom - wall.top[low]).max())
        yield Break(
            int(wall.course[low[0]]), opening.left, f"masonry ends {size(wall, gap)} under the sill of {opening.name}",
            f"at most a bed, {size(wall, wall.beds[1] - ROUNDING)}",
            f"lower the sill by {size(wall, gap)} or rip a course for it",
        )


def _bearing(wall: AsLaid, opening: Opening) -> tuple[list[Break], str]:
    """What is broken at an opening's head, and the figure reached."""
    if opening.top >= wall.layout.wall.height - wall.beds[1]:
        return [], "open to the top, no lintel"
    if opening.lintel not in SHAPES:
        told = {"steel": "steel lintel, no unit to look for", "none": "no lintel asked for"}[opening.lintel]
        return list(_open_over_head(wall, opening)), told
    span = _lintel_span(wall, opening)
    if span is None:
        return [_off_head(wall, opening)], "none"
    course, left, right = span
    low, high = _stands_between(wall, opening)
    reached = opening.left - max(left, low), min(right, high) - opening.right
    breaks = [
        _short_bearing(wall, opening, course, side, at, bearing)
        for side, at, bearing in (("left", opening.left, reached[0]), ("right", opening.right, reached[1]))
        if bearing < opening.bearing
    ]
    told = _tell_published(wall, opening, min(reached))
    return breaks, f"bears {size(wall, reached[0])} and {size(wall, reached[1])}{told}"


def _stands_between(wall: AsLaid, opening: Opening) -> tuple[int, int]:
    """How far masonry goes on beside an opening right under its head: to the wall's ends, or to the next opening there."""
    beside = [other for other in wall.layout.wall.openings
              if other.bottom < opening.top and other.top >= opening.top - ROUNDING]
    return (max((other.right for other in beside if other.right <= opening.left), default=wall.start),
            min((other.left for other in beside if other.left >= opening.right), default=wall.end))


def _tell_published(wall: AsLaid, opening: Opening, bearing: int) -> str:
    """What is to be said where a bearing is under what publications have; "" where it is not. The plan's bearing rules."""
    clear = opening.right - opening.left
    if wall.job.measure == "metric":
        least, name = (150 if clear > 1200 * TICKS_PER_MM else 100) * TICKS_PER_MM, "NHBC 6.1.12"
    else:
        least, name = 4 * TICKS_PER_INCH, "NCMA TEK 17-1B"
        if bearing >= least:
            least, name = max(6 * TICKS_PER_INCH, clear // 12), "the PCA handbook"
    return f", under the {size(wall, least)} of {name}: {ASK}" if bearing < least else ""


def _open_over_head(wall: AsLaid, opening: Opening) -> Iterator[Break]:
    """Masonry that begins more than a bed over the head of an opening whose lintel is no unit."""
    over = (wall.left < opening.right) & (wall.right > opening.left) & (wall.top > opening.top + ROUNDING)
    off = int(wall.bottom[over].min(initial=opening.top + wall.masonry.unit.gauge)) - opening.top
    if off > wall.beds[1]:
        line = height(wall, opening.top + off - wall.masonry.unit.bed_joint)
        yield Break(None, opening.left,
                    f"masonry begins {exact(wall, off, wall.beds[1] - ROUNDING)} over the head of {opening.name}",
                    f"at most a bed, {size(wall, wall.beds[1] - ROUNDING)}", f"put the head at {line}")


def _off_head(wall: AsLaid, opening: Opening) -> Break:
    """A head without its lintel, or the lintel nearest to it where one stands over or under it by less than a course."""
    limit = f"underside within a bed, {size(wall, wall.beds[1] - ROUNDING)}, above the head"
    over = (wall.left < opening.right) & (wall.right > opening.left) & (wall.shape == SHAPES[opening.lintel])
    found = np.unique(wall.bottom[over & (np.abs(wall.bottom - opening.top) < wall.masonry.unit.gauge)])
    if not len(found):
        return Break(None, opening.left, f"no {opening.lintel} lintel on the head of {opening.name}", limit,
                     f"lay a {opening.lintel} lintel at {size(wall, opening.top)}")
    underside = int(found[np.argmin(np.abs(found - opening.top))])
    off = underside - opening.top
    away = exact(wall, abs(off), wall.beds[1] - ROUNDING)
    figure = f"the lintel's underside is {away} {'above' if off > 0 else 'below'} the head of {opening.name}"
    level = underside - wall.masonry.unit.bed_joint if off > 0 else underside
    return Break(None, opening.left, figure, limit, f"put the head at {height(wall, level)}")


def _short_bearing(wall: AsLaid, opening: Opening, course: int, side: str, at: int, bearing: int) -> Break:
    if bearing <= 0:
        figure = f"no bearing on the {side} of {opening.name}"
    else:
        figure = f"{exact(wall, bearing, opening.bearing)} on the {side} of {opening.name}"
    more = size(wall, opening.bearing - bearing)
    low, high = _stands_between(wall, opening)
    room = at - low if side == "left" else high - at
    longer = f"lengthen the lintel by {more} on the {side}, or " if room >= opening.bearing else ""
    return Break(course, at, figure, size(wall, opening.bearing), f"{longer}move the jamb by {more} into the opening")


def _lintel_span(wall: AsLaid, opening: Opening) -> tuple[int, int, int] | None:
    """Course, left and right end of the lintel's pieces that stand on the head and follow each other without a break."""
    stands = (wall.bottom >= opening.top - ROUNDING) & (wall.bottom <= opening.top + wall.beds[1])
    found = np.flatnonzero(stands & (wall.shape == SHAPES[opening.lintel]))
    found = found[np.argsort(wall.left[found])]
    if not len(found):
        return None
    broken = np.flatnonzero(wall.left[found[1:]] - wall.right[found[:-1]] > wall.hole) + 1
    for group in np.split(found, broken):
        left, right = int(wall.left[group[0]]), int(wall.right[group[-1]])
        if left < opening.right and right > opening.left:
            return int(wall.course[group[0]]), left, right
    return None
