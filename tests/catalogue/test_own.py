"""A plan's own unit: specified or measured, its defaults, and each way it can be impossible."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallplan.catalogue.own import own_unit
from wallplan.catalogue.own_rules import OwnUnitError
from wallplan.catalogue.unit import Unit
from wallplan.lengths import from_inches, from_mm, read_length

MM = 960


def inches(text: str) -> int:
    return read_length(text, "feet")


def landing_block(**changes: Any) -> Unit:
    """The 8 in. block of the landing's pump house, written out by hand."""
    given_: dict[str, Any] = {
        "measure": "feet", "kind": "block", "length": inches("15 5/8"), "height": inches("7 5/8"),
        "thickness": inches("7 5/8"), "joint": inches("3/8"),
    }
    return own_unit("landing-block", **(given_ | changes))


def kiosk_brick(**changes: Any) -> Unit:
    """The reclaimed brick of the ticket kiosk: 230 x 110 x 68 mm on 10 mm joints."""
    given_: dict[str, Any] = {
        "measure": "metric", "kind": "brick", "length": 230 * MM, "height": 68 * MM, "thickness": 110 * MM,
        "joint": 10 * MM,
    }
    return own_unit("kiosk-brick", **(given_ | changes))


def mistakes(make: Any, **changes: Any) -> dict[str, str]:
    with pytest.raises(OwnUnitError) as caught:
        make(**changes)
    assert str(caught.value) == "\n".join(f"{field}: {text}" for field, text in caught.value.mistakes)
    return dict(caught.value.mistakes)


def test_only_sizes_and_joint_make_a_whole_block() -> None:
    block = landing_block()
    assert (block.key, block.name, block.kind, block.country) == ("landing-block", "landing-block", "block", "own")
    assert block.gauge == inches("8") and block.module == inches("16") and block.bed_joint == inches("3/8")
    assert (block.tightest_joint, block.widest_joint) == (inches("1/4"), inches("1/2"))
    assert [(piece.name, piece.length, piece.sawn) for piece in block.pieces] == [
        ("full", inches("15 5/8"), False), ("half", inches("7 5/8"), False)]
    assert (block.leads, block.solid, block.half_high) == (5, False, None)
    assert block.shapes == ("stretcher", "corner", "sash", "bond beam", "lintel")
    assert block.net_litres is None and block.mass_kg is None
    assert block.source == "the plan's own unit, as specified"


def test_only_sizes_and_joint_make_a_whole_brick_with_a_sawn_bat() -> None:
    brick = kiosk_brick()
    assert brick.gauge == 78 * MM and brick.module == 240 * MM
    assert (brick.tightest_joint, brick.widest_joint) == (7 * MM, 13 * MM)
    assert [(piece.name, piece.length, piece.sawn) for piece in brick.pieces] == [
        ("full", 230 * MM, False), ("half", 110 * MM, True)]
    assert (brick.leads, brick.solid, brick.shapes) == (7, True, ("stretcher",))


def test_thin_joint_plays_no_more_than_a_third() -> None:
    thin = kiosk_brick(joint=3 * MM)
    assert (thin.tightest_joint, thin.widest_joint) == (2 * MM, 4 * MM)


def test_every_field_that_is_told_is_kept() -> None:
    block = landing_block(
        name="Pump house block", tightest_joint=inches("5/16"), widest_joint=inches("7/16"), half=inches("7 1/2"),
        three_quarter=inches("11 5/8"), quarter=inches("3 5/8"), half_high=inches("3 5/8"), leads=4, solid=True,
        shapes=("stretcher", "corner"), gauge=inches("8 1/16"))
    assert [(piece.name, piece.length, piece.sawn) for piece in block.pieces] == [
        ("full", inches("15 5/8"), False), ("three-quarter", inches("11 5/8"), False),
        ("half", inches("7 1/2"), False), ("quarter", inches("3 5/8"), False)]
    assert (block.tightest_joint, block.widest_joint) == (inches("5/16"), inches("7/16"))
    assert (block.name, block.leads, block.solid, block.half_high) == ("Pump house block", 4, True, inches("3 5/8"))
    assert block.shapes == ("stretcher", "corner") and block.gauge == inches("8 1/16")


def test_a_unit_without_halves_stocks_only_the_full() -> None:
    assert [piece.name for piece in landing_block(half=False).pieces] == ["full"]


def test_gauge_by_courses_is_kept_as_it_was_told() -> None:
    # Four courses of the old kiosk wall measure 330 mm: a gauge of 82.5 mm.
    brick = kiosk_brick(gauge=(4, 330 * MM))
    assert brick.gauge == from_mm(82.5) and brick.coursing == (4, 330 * MM)
    assert brick.height_of_courses(4) == 330 * MM


def test_mean_of_measured_bricks() -> None:
    # 228 + 231 + 229 + 230 + 232 = 1150, a mean of 230; 67 + 68 + 68 + 70 = 273, a mean of 68.25.
    brick = kiosk_brick(length=tuple(mm * MM for mm in (228, 231, 229, 230, 232)),
                        height=tuple(mm * MM for mm in (67, 68, 68, 70)))
    assert brick.length == 230 * MM and brick.height == from_mm(68.25) and brick.gauge == from_mm(78.25)
    assert brick.source == "the plan's own unit, mean of 5 measured"


@given(st.lists(st.integers(200 * MM, 235 * MM), min_size=1, max_size=20))
def test_mean_stands_among_the_measurements_within_half_a_tick_of_exact(measured: list[int]) -> None:
    brick = kiosk_brick(length=tuple(measured))
    assert min(measured) <= brick.length <= max(measured)
    assert abs(brick.length * len(measured) - sum(measured)) * 2 <= len(measured)


@given(length=st.integers(100 * MM, 600 * MM), joint=st.integers(1, 20 * MM))
def test_two_bats_and_a_joint_never_overrun_the_brick(length: int, joint: int) -> None:
    brick = kiosk_brick(length=length, joint=joint)
    half = brick.pieces[1].length
    assert 0 <= length - (2 * half + joint) <= 1
    assert 0 < brick.tightest_joint <= joint <= brick.widest_joint


@pytest.mark.parametrize("field", ["length", "height", "thickness", "joint", "tightest_joint", "gauge", "half_high",
                                   "three_quarter", "quarter", "half"])
@pytest.mark.parametrize("nothing", [0, -5])
def test_nothing_may_be_nothing(field: str, nothing: int) -> None:
    assert mistakes(landing_block, **{field: nothing})[field] == "must be more than nothing"


@pytest.mark.parametrize(("changes", "field", "text"), [
    ({"gauge": from_inches(7.625)}, "height", '7 5/8" must be under gauge, which is 7 5/8"'),
    ({"gauge": (3, from_inches(8))}, "height", '7 5/8" must be under gauge, which is 2 11/16"'),
    ({"tightest_joint": from_inches(0.5)}, "tightest_joint", '1/2" must be no more than joint, which is 3/8"'),
    ({"widest_joint": from_inches(0.25)}, "joint", '3/8" must be no more than widest_joint, which is 1/4"'),
    ({"half": from_inches(16)}, "half", '16" must be under length, which is 15 5/8"'),
    ({"half_high": from_inches(7.625)}, "half_high", '7 5/8" must be under height, which is 7 5/8"'),
    ({"quarter": from_inches(8), "half": from_inches(7.625)}, "quarter", '8" must be under half, which is 7 5/8"'),
    ({"joint": from_inches(8), "length": from_inches(8)}, "joint", '8" must be under length, which is 8"'),
    ({"leads": 0}, "leads", "0 is too few courses for a lead; write at least 1"),
    ({"gauge": (0, from_inches(8))}, "gauge", "0 courses have no height; write at least 1 course"),
    ({"shapes": ("stretcher", "bullnose")}, "shapes",
     '"bullnose" is not a shape; write stretcher, corner, sash, bond beam, lintel'),
    ({"length": ()}, "length", "no measurement; measure at least one unit, better ten"),
    ({"height": (from_inches(7.625), from_inches(76))}, "height",
     'measurements of 7 5/8" and 76" are more than a fifth apart; measure again'),
])
def test_the_impossible_is_refused_in_words(changes: dict[str, Any], field: str, text: str) -> None:
    assert mistakes(landing_block, **changes)[field] == text


def test_metric_sizes_are_refused_in_millimetres() -> None:
    found = mistakes(kiosk_brick, widest_joint=8 * MM)
    assert found == {"joint": "10 mm must be no more than widest_joint, which is 8 mm"}


def test_every_mistake_is_told_at_once_and_a_wrong_size_blames_no_other() -> None:
    found = mistakes(landing_block, length=0, tightest_joint=inches("1"), leads=-1)
    assert set(found) == {"length", "tightest_joint", "leads"}
