"""Packing: nothing overlaps, nothing is lost, nothing leaves its sheet."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from wallplan.drawing.packing import pack
from wallplan.drawing.primitives import Box


@given(st.lists(st.tuples(st.floats(1, 100), st.floats(1, 80)), min_size=1, max_size=12))
def test_all_stand_apart_on_their_sheets(sizes: list[tuple[float, float]]) -> None:
    sheets = pack(sizes, 100.0, 80.0)
    assert [stand.number for sheet in sheets for stand in sheet] == list(range(len(sizes)))
    for sheet in sheets:
        boxes = [Box(s.x, s.y, s.x + sizes[s.number][0], s.y + sizes[s.number][1]) for s in sheet]
        assert all(Box(0, 0, 100 + 1e-6, 80 + 1e-6).holds(box) for box in boxes)
        assert not any(one.shrunk(1e-6).meets(other) for place, one in enumerate(boxes) for other in boxes[:place])


def test_one_too_large_is_told() -> None:
    assert pack([(101.0, 1.0)], 100.0, 80.0) == ()
    assert pack([], 100.0, 80.0) == ()
