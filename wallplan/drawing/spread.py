"""Spreading: figures that belong to places close together are moved apart, in order, as little as they must."""

from __future__ import annotations

from collections.abc import Sequence


def spread(places: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Places in rising order moved to stand at least ``gap`` apart between ``low`` and ``high``, by least squares.

    Neighbours that would be nearer are pooled and share their mean (Ayer and others, Annals of Mathematical Statistics,
    1955). Where they cannot all stand between the ends they stand closer, evenly. [] for no places.
    """
    if not places:
        return []
    if gap * (len(places) - 1) > high - low:
        step = (high - low) / max(1, len(places) - 1)
        return [low + step * number for number in range(len(places))]
    pools: list[tuple[float, int]] = []
    for number, place in enumerate(places):
        total, count = place - gap * number, 1
        while pools and pools[-1][0] / pools[-1][1] > total / count:
            before = pools.pop()
            total, count = total + before[0], count + before[1]
        pools.append((total, count))
    even = [total / count for total, count in pools for _ in range(count)]
    top = high - gap * (len(places) - 1)
    return [min(max(place, low), top) + gap * number for number, place in enumerate(even)]
