"""Hatches stay in their piece and off its lettering, and no two look alike."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from shapely.geometry import LineString, box

from wallplan.drawing.hatching import hatch_cut, hatch_half, hatch_part
from wallplan.drawing.primitives import Box, Segment

PIECE = Box(10, 20, 22.4, 26.1)
BLANK = Box(14, 21, 18, 25.5)
HATCHES = [hatch_cut, hatch_half, hatch_part]


@pytest.mark.parametrize("hatch", HATCHES)
def test_a_hatch_stays_inside_its_piece_and_off_the_blank(hatch: Callable[..., list[Segment]]) -> None:
    inside, blank = box(*PIECE).buffer(1e-9), box(*BLANK).buffer(-1e-9)
    lines = [LineString([(a, b), (c, d)]) for a, b, c, d in hatch(PIECE, BLANK)]
    assert lines
    assert all(inside.covers(line) and not line.intersects(blank) for line in lines)


@pytest.mark.parametrize("hatch", HATCHES)
def test_a_blank_takes_only_what_lies_in_it(hatch: Callable[..., list[Segment]]) -> None:
    def length(segments: list[Segment]) -> float:
        return sum(math.dist(s[:2], s[2:]) for s in segments)

    whole = [LineString([s[:2], s[2:]]) for s in hatch(PIECE, None)]
    lost = sum(line.intersection(box(*BLANK)).length for line in whole)
    assert length(hatch(PIECE, BLANK)) == pytest.approx(sum(line.length for line in whole) - lost)
    assert lost > 0


def test_the_hatches_of_cuts_and_halves_rise_and_fall_and_differ_in_closeness() -> None:
    cut, half = hatch_cut(PIECE, None), hatch_half(PIECE)
    assert all(s.y2 < s.y1 for s in cut)
    assert all(s.y2 > s.y1 for s in half)
    assert len(cut) >= 2 * len(half)


@pytest.mark.parametrize("hatch", HATCHES)
def test_an_empty_piece_has_no_hatch_to_speak_of(hatch: Callable[..., list[Segment]]) -> None:
    assert all(math.dist(s[:2], s[2:]) == 0 for s in hatch(Box(1, 1, 1, 1), None))
