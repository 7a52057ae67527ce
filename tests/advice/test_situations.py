"""Wall situations of common practice, invented and worked by hand: what the mason would say is what the advice says.

Of the eight, 1 (20 ft that are 15 block), 2 (the window whose piers are 37.5 mm over), 5 (piers at 3 m), 7 (sill and head off
the gauge) and 8 (the tie to an old wall) are here; 3 (bad steps) and 4 (the gable) in ``tests/layout/test_outline.py``, the
bays of 5 and the gauge of 8 in ``tests/layout/test_garden_walls.py``, and 6 (Flemish bond) in ``tests/layout/test_one_brick.py``.
"""

from fractions import Fraction

import pytest

from wallplan.advice.advise import Advice, advise, movable_of
from wallplan.advice.fit import Size, measure_fit
from wallplan.advice.moves import Thing, move_wall
from wallplan.advice.offers import offer_moves
from wallplan.advice.remedies import find_remedies
from wallplan.layout.build import lay
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.load import read_plan
from wallplan.rules.check import check


def advice_on(text: str) -> Advice:
    """Advice on a plan's text."""
    return advise(read_plan(text, "test.toml"))


def size_of(text: str, what: str, name: str | None = None) -> tuple[Size, tuple[str, ...]]:
    """One size of a plan's text with its remedies."""
    job = read_plan(text, "test.toml")
    (size,) = (one for one in measure_fit(job) if one.what == what and name in (None, one.name))
    return size, find_remedies(size, job)


LANDING = """
title = "Ferry landing"
measure = "feet"
[masonry]
unit = "block-8"
[[wall]]
name = "Landing"
length = "20'"
height = "4'"
"""


def test_twenty_feet_exactly_are_fifteen_blocks_and_three_eighths_that_fourteen_joints_hide() -> None:
    """The nominal trap. By hand: ask "20 ft exactly or 15 blocks?"; if exact, 3/8 over 14 joints, unseen."""
    size, remedies = size_of(LANDING, "length")
    assert (size.off, size.joints, size.taken) == (3 * TICKS_PER_INCH // 8, 14, "unnoticed")
    assert remedies[0] == "make it 19'-11 5/8\""
    # 3/8 in. + 3/8 in. / 14 = 0.402 in.
    assert remedies[1] == '14 head joints of 0.402"'
    assert advice_on(LANDING).fits


CYCLE = """
title = "Cycle shelter"
measure = "metric"
[masonry]
unit = "brick-uk"
{joints}
[[wall]]
name = "Back"
length = 5615
courses = 24
[[wall.opening]]
name = "Window"
from_left = 1790
width = 1210
sill = 600
height = 900
lintel = "steel"
"""


def test_the_right_pier_of_the_window_is_told_to_be_half_a_brick_less_three_eighths() -> None:
    """By hand: piers sum to 37.5 mm over; true piers are 1,790 and 2,577.5, the wall then 5,577.5."""
    text = CYCLE.format(joints="")
    left, right = (size for size in measure_fit(read_plan(text, "t")) if size.what == "pier")
    assert (left.off, left.taken) == (0, "fits")
    assert (right.size, right.off) == (2615 * TICKS_PER_MM, Fraction(75, 2) * TICKS_PER_MM)
    assert right.fitting == Fraction(5155, 2) * TICKS_PER_MM
    # 37.5 mm over the 11 joints of 11 1/2 bricks is 3.4 mm each: more than a joint may take.
    assert right.taken == "broken"
    _, remedies = size_of(text, "pier", "Window to right end")
    assert remedies[0] == "make it 2577.5 mm"


@pytest.mark.parametrize("joints", ["", "tightest_joint = 10\nwidest_joint = 10"])
def test_where_the_wall_can_shrink_by_37_5_mm_that_is_proposed_first(joints: str) -> None:
    """By hand, as above: the wall 37.5 mm shorter, and a broken bond only over and under the window."""
    advice = advice_on(CYCLE.format(joints=joints))
    first = advice.proposals[0]
    assert [(move.thing.kind, move.by) for move in first.moves] == [("right end", -Fraction(75, 2) * TICKS_PER_MM)]
    assert first.after.cutting < first.before.cutting
    # 24 courses less the 12 of the window: by hand two cuts in each of them, and no more.
    assert 0 < first.after.cutting <= 2 * 12


HEADS = """
title = "Kiosk"
measure = "feet"
[masonry]
unit = "brick-modular"
[[wall]]
name = "Front"
length = "15' 11 5/8"
courses = 36
[[wall.opening]]
name = "Window"
from_left = "5' 3 5/8"
width = "4' 0 3/8"
sill = "2' 9"
height = "4' 4"
lintel = "steel"
"""


def test_sill_and_head_go_to_course_lines() -> None:
    """By hand: three courses to 8 in.; 12 courses are 32 in., so the sill at 33 misses by 1; the head at 85 is 1/3 in. under 32 courses."""
    sill, to_be = size_of(HEADS, "sill")
    assert (sill.off, to_be[0]) == (TICKS_PER_INCH, "make it 2'-8\"")
    head, _ = size_of(HEADS, "head")
    assert head.off == -TICKS_PER_INCH // 3
    advice = advice_on(HEADS)
    best = advice.proposals[0]
    wall = move_wall(advice.job.walls[0], best.moves)
    assert (wall.openings[0].bottom, best.after.grade) == (32 * TICKS_PER_INCH, (0, 0))
    assert {move.thing.kind for move in best.moves} <= {"sill", "head"}


PIERS = """
title = "Boat store"
measure = "feet"
[masonry]
unit = "brick-modular"
[[wall]]
name = "Gate side"
length = "10' 11 5/8"
courses = 30
[[wall.opening]]
name = "Door"
from_left = '29 5/8"'
width = "6' 0 3/8"
height = "6'"
lintel = "steel"
"""


def test_a_door_centred_between_piers_that_do_not_fit_is_moved_by_two_inches() -> None:
    """By hand: a 6 ft door centred in 11 ft leaves 30 in. piers, so a cut in every course; 2 in. to a side, 28 and 32, fit."""
    advice = advice_on(PIERS)
    first = advice.proposals[0]
    assert [(move.thing.kind, abs(move.by)) for move in first.moves] == [("opening", 2 * TICKS_PER_INCH)]
    assert first.before.cutting >= 27 and first.after.grade == (0, 0)


PANEL = """
title = "Garden wall"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "Panel"
length = 2540
courses = 20
"""


def test_the_panel_between_piers_at_3_m_is_told_both_centres_that_fit() -> None:
    """Piers of 440 asked at 3.0 m centres: between faces 2,560, so 2,540 of masonry and a joint to each pier.

    By hand: 11.33 bricks; 2,925 centres (11 bricks, 2,485 between faces) or 3,037.5 (11 1/2), the nearer first.
    """
    size, remedies = size_of(PANEL, "length")
    assert (size.fitting, size.taken) == (Fraction(5155, 2) * TICKS_PER_MM, "broken")
    assert remedies[0] == "make it 2577.5 mm"
    first = advice_on(PANEL).proposals[0]
    assert [(move.thing.kind, move.by) for move in first.moves] == [("right end", Fraction(75, 2) * TICKS_PER_MM)]
    assert first.after.grade == (0, 0)
    wall = read_plan(PANEL, "t").walls[0]
    offers = offer_moves(wall, read_plan(PANEL, "t").masonry, movable_of(read_plan(PANEL, "t")))
    assert {Fraction(by, TICKS_PER_MM) for by in offers[Thing("right end")]} == {Fraction(75, 2), -75}


OLD_WALL = """
title = "Slipway wall"
measure = "metric"
[own_unit]
key = "old-brick"
kind = "brick"
length = 230
height = 68
thickness = 110
joint = 10
gauge = 330
gauge_courses = 4
[masonry]
unit = "old-brick"
[[wall]]
name = "Extension"
length = 3860
courses = 30
[[wall.opening]]
name = "Door"
from_left = 1430
width = 970
height = 2100
lintel = "steel"
"""


def test_a_wall_tied_to_an_old_one_is_told_30_mm_shorter_or_wider_perps_and_the_lintel_at_a_course() -> None:
    """By hand: 3,860 and a joint are 32 halves of 120 and 30 over; shared by the joints they are 11.9 to 12 mm, noticed.
    The gauge is 82.5: 2,100 lands at 25.45 courses, so the lintel goes to 25 courses, 2,062.5, or 26, 2,145."""
    length, remedies = size_of(OLD_WALL, "length")
    assert (length.off, length.joints, length.taken) == (30 * TICKS_PER_MM, 15, "noticed")
    assert remedies == ("make it 3830 mm", "15 head joints of 12 mm, and it shows")
    head, to_be = size_of(OLD_WALL, "head")
    assert (head.off, to_be[0]) == (Fraction(75, 2) * TICKS_PER_MM, "make it 2062.5 mm")
    job = read_plan(OLD_WALL, "t")
    offers = offer_moves(job.walls[0], job.masonry, movable_of(job))
    assert {Fraction(by, TICKS_PER_MM) for by in offers[Thing("head", 0)]} == {-Fraction(75, 2), 45}
    moved = [{move.thing.kind for move in one.moves} for one in advise(job).proposals[:2]]
    assert any("head" in kinds for kinds in moved)


@pytest.mark.parametrize("text", [CYCLE.format(joints=""), HEADS, PIERS, PANEL, OLD_WALL])
def test_no_situation_is_mended_by_breaking_another_rule(text: str) -> None:
    advice = advice_on(text)
    held = {one.rule for one in check(lay(advice.job)) if one.held}
    assert held <= {one.rule for one in check(lay(advice.advised)) if one.held}
    assert advice.after.grade < advice.figures.grade
