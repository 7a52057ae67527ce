"""Steps and gables in a plan: what they mean, and one clear line for each mistake."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import broken, inches
from wallplan.findings import PlanError
from wallplan.layout.build import lay
from wallplan.plan.job import Outline, Wall
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

SLIP = """title = "Slip"
measure = "feet"
sizes = "{sizes}"
masonry.unit = "block-8"
[[wall]]
name = "Slip"
length = "24'"
height = "8'"
"""


def read_wall(rest: str, sizes: str = "actual") -> Wall:
    return read_plan(SLIP.format(sizes=sizes) + rest, "slip.toml").walls[0]


def outline_of(rest: str, sizes: str = "actual") -> Outline:
    outline = read_wall(rest, sizes).outline
    assert outline is not None
    return outline


def in_inches(line: tuple[tuple[int, int], ...]) -> list[tuple[Fraction, Fraction]]:
    return [(Fraction(at, inches(1)), Fraction(level, inches(1))) for at, level in line]


def test_a_plain_wall_has_no_outline() -> None:
    assert read_wall("").outline is None


def test_levels_are_told_over_the_lowest_footing() -> None:
    outline = outline_of("""step = [{at = "8'", down = "8"}, {at = "16'", up = "16"}]""")
    assert in_inches(outline.footing) == [(0, 8), (96, 8), (96, 0), (192, 0), (192, 16), (288, 16)]
    assert in_inches(outline.top) == [(0, 96), (288, 96)]


def test_on_the_module_a_step_stands_where_a_piece_ends() -> None:
    """Masonry right of a riser begins on the module; left of one it ends a joint before."""
    outline = outline_of("""step = [{at = "8'", down = "8"}, {at = "16'", up = "8"}]
top_step = [{at = "8'", down = "8"}, {at = "16'", up = "8"}]""", "nominal")
    joint = Fraction(3, 8)
    assert [at for at, _ in in_inches(outline.footing)] == [0, 96, 96, 192 - joint, 192 - joint, 288 - joint]
    assert [at for at, _ in in_inches(outline.top)] == [0, 96 - joint, 96 - joint, 192, 192, 288 - joint]


def test_a_pitch_and_a_rise_make_the_same_gable() -> None:
    """8 in 12 over half of 24 ft rises 8 ft."""
    by_rise = outline_of("""gable = [{rise = "8'"}]""")
    assert outline_of('gable = [{pitch = "8/12"}]') == outline_of('gable = [{pitch = "8 in 12"}]') == by_rise
    assert in_inches(by_rise.top) == [(0, 96), (144, 192), (288, 96)]
    assert by_rise.coursed == inches(96)
    assert read_wall('gable = [{pitch = "45 deg"}]').height == inches(96 + 144)


def test_a_roof_of_one_slope_stands_upright_on_the_ridge_s_side() -> None:
    left = outline_of("""gable = [{rise = "4'", ridge = "0"}]""")
    assert in_inches(left.top) == [(0, 96), (0, 144), (288, 96)]
    right = outline_of("""gable = [{rise = "4'", ridge = "24'"}]""")
    assert in_inches(right.top) == [(0, 96), (288, 144), (288, 96)]


MISTAKES = {
    """step = [{at = "8'", down = "7 1/2"}]""": 'step 1: down: the footing comes to 7 1/2", which is 7 1/2" over a course line: '
        'too much for a bed, too little for a course ripped to an inch; make it 7/8" lower or 1/8" higher',
    """top_step = [{at = "8'", down = "7 1/2"}]""": "top_step 1: down: the top comes to 7'-4 1/2\"",
    """step = [{at = "8'", down = "8", up = "8"}]""": "step 1: up: both up and down are given; write one of them",
    """step = [{at = "8'"}]""": "step 1: up: neither up nor down is given",
    """step = [{down = "8"}]""": "step 1: at: missing; write at = \"10'\"",
    """step = [{at = "8'", down = "-8"}]""": 'step 1: down: "-8" is negative',
    """step = [{at = "30'", down = "8"}]""": "step 1: at: 30'-0\" is not inside the wall, which is 24'-0\" long",
    """step = [{at = "23' 10", down = "8"}]""": "step 1: at: 2\" of masonry is left to the wall's right end; stay 4\" away",
    """step = [{at = "8'", down = "8"}, {at = "8' 2", down = "8"}]""": "step 2: at: 2\" from the step at 8'-0\", under the least "
        "piece; make them one step",
    """step = [{at = "8'", up = "8'"}]""": "height: from 8'-0\" to 24'-0\" the footing is at 8'-0\" over the lowest and the top "
        "at 8'-0\": no room for a course; write at least 8'-1 3/8\"",
    """step = {at = "8'", up = "8"}""": "step: one table; write its heading in double brackets, [[wall.step]]",
    """gable = [{width = "26'", rise = "8'"}]""": "gable 1: width: the gable is 26'-0\" wide and reaches 26'-0\" from the wall's "
        "left end, but the wall is 24'-0\" long; write at most 24'-0\"",
    """gable = [{rise = "8'", pitch = "8/12"}]""": "gable 1: rise: both rise and pitch are given",
    "gable = [{}]": "gable 1: rise: neither rise nor pitch is given",
    'gable = [{pitch = "steep"}]': 'gable 1: pitch: "steep" is no pitch; write inches up and inches along, "8/12", or degrees',
    'gable = [{pitch = "0/12"}]': 'gable 1: pitch: "0/12" is no pitch',
    """gable = [{rise = "8'", ridge = "30'"}]""": "gable 1: ridge: 30'-0\" is past the gable's right foot",
    """gable = [{pitch = "8/12", ridge = "8'"}]""": "gable 1: pitch: the ridge is not in the middle, so the two slopes differ",
    """gable = [{width = "16'", rise = "4'"}, {from_left = "12'", rise = "4'"}]""": "gable 2: from_left: the gable meets the one "
        "before by 4'-0\"",
    """gable = [{rise = "8'"}]\ntop_step = [{at = "8'", down = "8"}]""": "top_step 1: at: the top steps at 8'-0\", under the gable "
        "from 0\" to 24'-0\"; a gable stands on a level top",
    """gable = [{rise = "8'"}]\nopening = [{from_left = "2'", width = "4'", sill = "8'", height = "2'"}]""":
        "opening 1: height: the opening reaches 10'-0\", and over it and its bearings the top comes down to",
    """step = [{at = "8'", up = "16"}]\nopening = [{from_left = "12'", width = "4'", height = "6' 8"}]""":
        "opening 1: sill: 0\", but the footing there is at 1'-4\" over the lowest, where heights start; write at least 1'-4\"",
}


@pytest.mark.parametrize("rest", MISTAKES)
def test_a_mistake_is_one_clear_line(rest: str) -> None:
    with pytest.raises(PlanError) as told:
        read_wall(rest)
    (mistake,) = told.value.mistakes
    assert mistake.line in (8, 9, 10)
    assert str(mistake).split('wall "Slip"')[1].lstrip(",: ").startswith(MISTAKES[rest])


def test_a_footing_that_does_not_come_round_level_is_told() -> None:
    side = """[[wall]]
name = "{name}"
length = "16'"
height = "8'"
left = "outside corner"
right = "outside corner"
"""
    text = 'title = "Shed"\nmeasure = "feet"\nmasonry.unit = "block-8"\n' + "".join(
        side.format(name=name) for name in ("North", "East", "South")) + side.format(name="West") + """
step = [{at = "8'", up = "8"}]"""
    with pytest.raises(PlanError, match=r'the footing comes round the building 8" higher than it began'):
        read_plan(text, "shed.toml")


@pytest.mark.parametrize(("height", "rest", "told"), [
    # 8 ft 1 in.: twelve beds of 11/24 in., so courses of 8 1/12 in.; 7 in. leave 1 1/12 in. under the first line.
    ("8' 1", """step = [{at = "8'", up = "7"}]""", 'up: the footing comes to 7", which is 7" over a course line: too much for a '
     'bed, too little for a course ripped to an inch; make it 3/8" lower or 13/16" higher; whole courses come to 0" or '
     '8 1/16": write up = 8 1/16"'),
    # 8 ft and 7 in. more: 13 courses close 8 ft 7 in. with beds of 0.298 in., so twelve end at 7 ft 11 1/16 in.
    ("8'", """top_step = [{at = "8'", up = "7"}]""", 'up: the top comes to 8\'-0", which is 15/16" over a course line: too much '
     'for a bed, too little for a course ripped to an inch; make it 13/16" lower or 3/8" higher; whole courses come to '
     '7\'-11 1/16" or 8\'-7": write up = 8"'),
])
def test_a_step_that_no_course_can_meet_is_refused_where_beds_are_shared_out(height: str, rest: str, told: str) -> None:
    with pytest.raises(PlanError) as error:
        read_plan(SLIP.format(sizes="actual").replace('height = "8\'"', f'height = "{height}"') + rest, "slip.toml")
    assert [mistake.message for mistake in error.value.mistakes] == [told]


def test_the_course_that_is_ripped_is_the_one_that_meets_the_steps() -> None:
    # 8 ft 2 in.: twelve courses and one ripped to 1 5/8 in. Under them it would leave a footing at 1 in. without a course;
    # over them that footing is met by a rip of 6 5/8 in. less a bed.
    layout = lay(read_plan(SLIP.format(sizes="actual").replace("8'\"\n", "8' 2\"\n") + """step = [{at = "8'", up = "1"}]""", "slip.toml"))
    assert layout.walls[0].courses[0].top == inches(8)
    assert broken(check(layout)) == []
