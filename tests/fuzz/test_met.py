"""Plans that long runs met and that were dealt with wrongly once: each goes the whole way now."""

from __future__ import annotations

import pytest

from tests.fuzz.walk import walk_plan

HEAD = 'title = "Ferry landing"\nmeasure = "metric"\n'


def wall(name: str, length: str, courses: int, left: str = "outside corner", right: str = "outside corner") -> str:
    return f'[[wall]]\nname = "{name}"\nlength = "{length}"\ncourses = {courses}\nleft = "{left}"\nright = "{right}"\n'


def own_brick(height: str, thickness: str, length: str, joint: str, *more: str) -> str:
    sizes = f'height = "{height}"\nthickness = "{thickness}"\nlength = "{length}"\njoint = "{joint}"\n'
    return '[own_unit]\nkey = "quay"\nkind = "brick"\n' + sizes + "".join(f"{line}\n" for line in more)


MET = {
    # Third bond laps 135 mm of 406; a closed store may keep 186 all the same, which only the last attempt finds.
    "a lap over the bond's own": HEAD + '[masonry]\nunit = "block-8"\nbond = "third"\nleast_lap = "0.186 m"\n'
    + wall("Side 1", "2438.4 mm", 4) + wall("Side 2", "2844.8 mm", 4) + wall("Side 3", "2438.4 mm", 4) + wall("Side 4", "2844.8 mm", 4),
    # A quarter of 283 + 8 mm is 72.75; the moulded quarter is 64 + 8 = 72.
    "moulded quarters a hair short": HEAD + 'sizes = "nominal"\n' + own_brick("71 mm", "172 mm", "283 mm", "8 mm", 'quarter = "64 mm"')
    + '[masonry]\nunit = "quay"\n' + wall("Side 1", "2700 mm", 4, "end") + wall("Side 2", "2700 mm", 4, right="end"),
    "moulded quarters under the least piece": HEAD + 'sizes = "nominal"\n'
    + own_brick("71 mm", "172 mm", "283 mm", "8 mm", 'quarter = "64 mm"')
    + '[masonry]\nunit = "quay"\nleast_piece = "75 mm"\n' + wall("Side 1", "2700 mm", 4, "end") + wall("Side 2", "2700 mm", 4, right="end"),
    # Four stretchers have three joints to open, not four: 10 mm over are 3.3 mm each, where 3 are allowed.
    "a stretcher course of as many bricks as joints": 'title = "Ferry landing"\nmeasure = "metric"\n[masonry]\nunit = "brick-nf"\n'
    'bond = "english"\n[[wall]]\nname = "Landing"\nlength = "1000 mm"\ncourses = 4\n',
    # Two blocks of 215 and their joints are a third of 1,340 and a joint.
    "a pier tied by two units of six": HEAD + '[masonry]\nunit = "block-uk-215"\n[[wall]]\nname = "Slip"\nlength = "2690 mm"\ncourses = 3\n'
    '[[wall.pier]]\nfrom_left = 0\nface = "outside"\nwidth = "1340 mm"\n',
}

# A joint from which nothing goes on costs more than any layout; less what the way there costs it still does.
DEAD_END = (HEAD + '[masonry]\nunit = "block-ca-140"\nbond = "third"\nkeep_bond = true\n' + "".join(
    wall(f"Side {side}", "1 m", 5) for side in (1, 2, 3, 4)) + '[[wall]]\nname = "Stem"\nlength = "720 mm"\ncourses = 5\n'
    '[[wall.abuts]]\nmeets = "Side 1"\nat = "599.999 mm"\n[[wall.abuts]]\nend = "right"\nmeets = "Side 3"\nat = "260.001 mm"\n'
    'tie = "control joint"\n')

# Laid with a rule broken, which must be told. Perpends of a run over an opening are plumb with those beside it as far as may be.
TOLD = {
    "a tee in a closed store in third bond": DEAD_END,
    "perpends over an opening in English bond": HEAD + '[masonry]\nunit = "brick-2df"\nbond = "english"\n[[wall]]\nname = "Landing"\n'
    'length = "1031.25 mm"\ncourses = 3\n[[wall.opening]]\nfrom_left = 250\nwidth = 250\nheight = 125\nlintel = "none"\n',
}


@pytest.mark.parametrize("plan", MET.values(), ids=MET.keys())
def test_a_plan_once_met_goes_the_whole_way(plan: str) -> None:
    walked = walk_plan(plan, draw=False, advise=False)
    assert [fault for fault in walked.faults if ": took" not in fault] == [] and walked.pieces > 20 and not walked.broken


@pytest.mark.parametrize("plan", TOLD.values(), ids=TOLD.keys())
def test_what_is_broken_is_told(plan: str) -> None:
    assert walk_plan(plan, draw=False, advise=False).faults == ()


@pytest.mark.parametrize(("width", "depth"), [("890 mm", "790 mm"), ("1090 mm", "390 mm"), ("90 mm", "590 mm")])
def test_piers_whose_sides_no_units_fill_are_refused(width: str, depth: str) -> None:
    # 300, 100 and 200 mm stand out on each side; a block is 200 wide: the first two widths would have to be whole blocks, the
    # third is less than one.
    plan = (f'{HEAD}[masonry]\nunit = "block-ca-190"\n[[wall]]\nname = "Slip"\nlength = "4990 mm"\ncourses = 3\n[[wall.pier]]\n'
            f'from_left = "2000 mm"\nface = "both"\nwidth = "{width}"\ndepth = "{depth}"\n')
    walked = walk_plan(plan, draw=False, advise=False)
    assert walked.faults == () and (walked.pieces, walked.mistakes) == (0, 1)


def test_the_legend_of_a_wall_with_lintels_and_a_corner_keeps_to_eighty_columns() -> None:
    door = '[[wall.opening]]\nfrom_left = "4 ft"\nwidth = "4 ft"\nheight = "40 in"\n'
    sides = wall("Side 1", "16 ft", 7, "end") + door + wall("Side 2", "8 ft", 7, right="end")
    plan = 'title = "Landing"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n' + sides
    assert walk_plan(plan, draw=False, advise=False).faults == ()


LONG = "Side to the water and the slip, along the old boundary of the ferry yard"


def test_a_wall_with_every_sign_and_long_names_keeps_to_eighty_columns() -> None:
    # Bond beam, lintel units, precast lintel, the end of another wall and a cut: their legend takes 102 columns in one line.
    door = '[[wall.opening]]\nname = "{}"\nfrom_left = "{}"\nwidth = "3 ft 4 in"\nheight = "40 in"\nlintel = "{}"\n'
    side = wall(LONG, "19 ft 3 in", 7, "end") + 'bond_beams = ["top"]\n' + door.format("Gate", "4 ft", "block") + door.format(
        LONG, "12 ft", "precast")
    plan = f'title = "{LONG}"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n' + side + wall("Side 2", "8 ft", 7, right="end")
    for text in (plan, plan.replace(LONG, "W" * 80, 2)):
        walked = walk_plan(text, draw=False, advise=False)
        assert [fault for fault in walked.faults if ": took" not in fault] == [] and walked.pieces > 100
