"""Courses laid in layers: beside a sill or a head off the coursing, pieces are ripped to meet its level."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.reach import Reach
from wallplan.layout.spots import Namer, Spot, find_covering
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry


class Part(NamedTuple):
    """An opening's share of a course: its jambs, how far the masonry beside it is layered, and the level.

    ``level`` is where the lower layer ends, above the underside of the course's bed. ``above`` is True at a sill,
    where the opening lies above the level, and False at a head. ``joint`` is the run's head joint, as wide as it is laid.
    """

    reach: Reach
    left: int
    right: int
    zone: tuple[int, int]
    level: int
    above: bool
    joint: int = 0


def find_parts(row: Row, reaches: tuple[Reach, ...], masonry: Masonry) -> tuple[Part, ...]:
    """The openings that a course meets only in part, in the wall's order; () in most courses."""
    parts = []
    for reach in reaches:
        opening = reach.opening
        if reach.sill_course == row.number:
            level = _settle(reach.sill - row.bottom, row, masonry)
            parts.append(Part(reach, opening.left, opening.right, (opening.left, opening.right), level, above=True))
        if reach.head_course == row.number:
            bearing = 0 if opening.lintel == "none" else opening.bearing
            zone = (opening.left - bearing, opening.right + bearing)
            level = _settle(reach.head - row.bottom, row, masonry)
            parts.append(Part(reach, opening.left, opening.right, zone, level, above=False))
    return tuple(parts)


def _settle(level: int, row: Row, masonry: Masonry) -> int:
    """A level, lowered by no more than a bed if a half-high unit then fits below or above; a rip no bed high is dropped."""
    half = masonry.unit.half_high
    height = row.top - row.bottom
    if half is not None:
        for fitting in (row.bed + half, height - row.bed - half):
            if level - row.bed <= fitting <= level:
                return fitting
    return row.bed if level <= 2 * row.bed else level


def lay_in_layers(spots: list[Spot], parts: tuple[Part, ...], row: Row, masonry: Masonry, namer: Namer) -> list[Spot]:
    """One run of a course with its pieces split at the levels of the openings that it meets in part."""
    meeting = [wide for part in parts if (wide := _widen(part, spots, masonry))]
    touched = [(_find_layered(spots, part), part) for part in meeting]
    laid = []
    for index, spot in enumerate(spots):
        here = [part for covering, part in touched if index in covering]
        laid.extend(_split(spot, here, meeting, row, namer) if here else [spot])
    for part in meeting:
        laid = _meet_jamb(laid, part, part.left, masonry, namer)
        laid = _meet_jamb(laid, part, part.right, masonry, namer)
    return sorted(laid, key=lambda spot: (spot.rise, spot.left))


def _find_layered(spots: list[Spot], part: Part) -> set[int]:
    """The pieces that a part splits: at a head all that carry the lintel, at a sill only those that reach under it."""
    left, right = part.zone
    if part.above:
        return {index for index, spot in enumerate(spots) if spot.right > left and spot.left < right}
    return set(find_covering(spots, left, right))


def _widen(part: Part, spots: list[Spot], masonry: Masonry) -> Part | None:
    """The part with its zone one piece wider where a jamb would leave a sliver; None where it is in another run."""
    if not find_covering(spots, *part.zone):
        return None
    left, right = part.zone
    short = masonry.least_piece - masonry.joint
    before = [spot for spot in spots if spot.left < part.left]
    after = [spot for spot in spots if spot.right > part.right]
    if before and before[-1].right < part.left:
        left = min(left, before[-1].right - 1)
    if after and after[0].left > part.right:
        right = max(right, after[0].left + 1)
    if before and part.left - before[-1].left < short:
        left = min(left, before[-1].left - masonry.widest_joint - 1)
    if after and after[0].right - part.right < short:
        right = max(right, after[0].right + masonry.widest_joint + 1)
    joint = spots[1].left - spots[0].right if len(spots) > 1 else masonry.joint
    return part._replace(zone=(left, right), joint=joint)


def _split(spot: Spot, here: list[Part], parts: list[Part], row: Row, namer: Namer) -> list[Spot]:
    levels = sorted({part.level for part in here})
    lows = [row.bed, *(level + row.bed if level > row.bed else level for level in levels)]
    highs = [*levels, row.top - row.bottom]
    split = []
    for low, high in zip(lows, highs, strict=True):
        if high > low:
            open_here = [p for p in parts if (low >= p.level if p.above else high <= p.level)]
            for left, right in _clip(spot.left, spot.right, open_here):
                split.append(spot._replace(left=left, length=right - left, rise=low, height=high - low,
                                           piece=namer.name(right - left, high - low)))
    return split


def _clip(left: int, right: int, openings: list[Part]) -> list[tuple[int, int]]:
    kept = [(left, right)]
    for opening in openings:
        kept = [
            (start, end)
            for low, high in kept
            for start, end in ((low, min(high, opening.left)), (max(low, opening.right), high))
            if start < end
        ]
    return kept


def _meet_jamb(spots: list[Spot], part: Part, jamb: int, masonry: Masonry, namer: Namer) -> list[Spot]:
    """In each layer beside the opening, let the last piece end at the jamb: longer, joined with the next, or in two."""
    laid, left_of = spots, jamb == part.left
    layers = {
        (spot.rise, spot.height) for spot in spots
        if (spot.rise >= part.level if part.above else spot.top <= part.level)
    }
    for layer in sorted(layers):
        beside = [spot for spot in laid if (spot.rise, spot.height) == layer and _faces(spot, jamb, left_of, masonry)]
        if beside:
            last = (max if left_of else min)(beside, key=lambda spot: spot.left)
            laid = _fit_to_jamb(laid, last, part, jamb, masonry, namer)
    return laid


def _faces(spot: Spot, jamb: int, left_of: bool, masonry: Masonry) -> bool:
    reach = masonry.widest_joint
    return jamb - reach <= spot.right <= jamb if left_of else jamb <= spot.left <= jamb + reach


def _fit_to_jamb(spots: list[Spot], last: Spot, part: Part, jamb: int, masonry: Masonry, namer: Namer) -> list[Spot]:
    left_of = jamb == part.left
    least = masonry.least_piece - masonry.joint
    left, right = (last.left, jamb) if left_of else (jamb, last.right)
    taken = [last]
    if right - left < least and (beside := _neighbour(spots, last, left_of)) is not None:
        taken.append(beside)
        left, right = min(left, beside.left), max(right, beside.right)
    spans = [(left, right)]
    if right - left > masonry.unit.length:
        split = right - least if left_of else left + least + part.joint
        spans = [(left, split - part.joint), (split, right)]
    kept = [spot for spot in spots if spot not in taken]
    return kept + [
        last._replace(left=start, length=end - start, piece=namer.name(end - start, last.height)) for start, end in spans
    ]


def _neighbour(spots: list[Spot], last: Spot, left_of: bool) -> Spot | None:
    layer = [spot for spot in spots if (spot.rise, spot.height) == (last.rise, last.height)]
    if left_of:
        return max((spot for spot in layer if spot.right < last.left), key=lambda spot: spot.left, default=None)
    return min((spot for spot in layer if spot.left > last.right), key=lambda spot: spot.left, default=None)
