"""Steps and gables: what is laid where, held against pencil work."""

from itertools import pairwise

from tests.jobs import broken, inches, make_job, make_masonry, make_wall, nominal_lengths, pieces_of
from tests.rules.breaking import change_course
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Notch
from wallplan.plan.job import Masonry, Outline, Wall
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

BAD_STEPS = """
title = "Slip wall"
measure = "feet"
sizes = "nominal"
masonry.unit = "block-8"
[[wall]]
name = "Slip"
length = "40'"
height = "6'"
step = [{at = "10'", down = "8"}, {at = "20'", down = "7"}, {at = "30'", down = "9"}]
"""
"""Four footing levels at 0, -8, -15 and -24 in.: the third was poured an inch high."""

GABLE = """
title = "Boat store"
measure = "feet"
sizes = "nominal"
masonry.unit = "block-8"
[[wall]]
name = "Water side"
length = "24'"
height = "8'"
gable = [{rise = "8'"}]
"""
"""24 ft wide, 8 in 12, 8 ft rise."""


def lay_text(text: str) -> Layout:
    return lay(read_plan(text, "plan.toml"))


def plain_masonry(**changes: object) -> Masonry:
    return make_masonry(joints_move=False, **changes)


def stepped(footing: list[tuple[str, str]], length: str, height: str, top: list[tuple[str, str]] | None = None) -> Wall:
    """A wall from its outline in inches."""
    foot = tuple((inches(at), inches(level)) for at, level in footing)
    tops = tuple((inches(at), inches(level)) for at, level in top or [("0", height), (length, height)])
    coursed = max(level for (at, level), (_, also) in pairwise(tops) if level == also)
    wall = make_wall(inches(length), max(level for _, level in tops))
    return Wall(**{**vars(wall), "outline": Outline(foot, tops, coursed)})


def test_the_step_poured_an_inch_high_is_met_by_a_rip_of_6_5_8() -> None:
    """The hand answer: the levels 0, -8 and -24 work; at -15 the bottom course is ripped to 6 5/8 on a 3/8 bed."""
    layout = lay_text(BAD_STEPS)
    assert broken(check(layout)) == []
    sawn = [(course.number, piece) for course in layout.walls[0].courses for piece in course.pieces if piece.mark]
    ripped = [piece for _, piece in sawn if not piece.notch]
    assert {number for number, _ in sawn} == {2}
    assert {(piece.bottom, piece.height) for piece in ripped} == {(inches("9 3/8"), inches("6 5/8"))}
    assert [piece.left for piece in ripped] == [inches(240 + 16 * place) for place in range(7)]
    # 120 in. are 7 1/2 block: the eighth bridges the riser, notched for its half on the high concrete.
    (notched,) = (piece for _, piece in sawn if piece.notch)
    assert (notched.left, notched.length) == (inches(352), inches("15 5/8"))
    assert notched.notch == Notch(0, inches(8), inches(1))


def test_one_bond_is_carried_through_the_steps_which_shift_it_half_a_block_each() -> None:
    layout = lay_text(BAD_STEPS)
    assert nominal_lengths(layout, 1) == [*[16] * 7, 8]
    assert nominal_lengths(layout, 3) == [*[16] * 22, 8]
    assert nominal_lengths(layout, 4) == [16] * 30
    assert nominal_lengths(layout, 5) == [8, *[16] * 29, 8]
    begins = [min(piece.left for piece in pieces_of(layout, course)) for course in (1, 2, 3, 4)]
    assert begins == [inches(at) for at in (360, 240, 120, 0)]


def test_the_check_names_the_step_off_the_coursing_and_what_would_mend_it() -> None:
    (steps,) = (finding for finding in check(lay_text(BAD_STEPS)) if finding.rule == "steps")
    assert steps.held
    assert '1" off the coursing: 7 pieces of course 2 are ripped to 6 5/8", 1 notched' in steps.figure
    assert steps.remedy.startswith('break 1" of the concrete away')


def test_no_joint_stands_over_a_riser() -> None:
    layout = lay_text(BAD_STEPS)
    for at, course in ((120, 4), (240, 3), (360, 2)):
        lap = min(abs(piece.right - inches(at)) for piece in pieces_of(layout, course))
        assert lap >= inches("7 5/8")


def test_the_gable_has_24_raked_cuts() -> None:
    """The hand answer: each course loses 12 in. a side; 12 courses, 24 raked cuts."""
    layout = lay_text(GABLE)
    assert broken(check(layout)) == []
    gable = layout.walls[0].courses[12:]
    assert [sum(piece.rake is not None for piece in course.pieces) for course in gable] == [2] * 12


def test_each_course_of_the_gable_loses_12_in_a_side() -> None:
    gable = lay_text(GABLE).walls[0].courses[12:]
    # 96 in. up over 143 13/16 in. along: 12 in. to a course but for the joint that the width leaves off.
    for one, other in pairwise(gable):
        assert abs(other.pieces[0].left - one.pieces[0].left - inches(12)) < inches("1/32")
        assert abs(one.pieces[-1].right - other.pieces[-1].right - inches(12)) < inches("1/32")


def test_half_units_meet_a_half_step() -> None:
    wall = stepped([("0", "4"), ("80", "4"), ("80", "0"), ("159 5/8", "0")], "159 5/8", "40")
    layout = lay(make_job(plain_masonry(), wall))
    assert broken(check(layout)) == []
    low = [piece for piece in pieces_of(layout, 1) if piece.height == inches("3 5/8")]
    assert {(piece.bottom, piece.piece) for piece in low} <= {(inches("4 3/8"), "full"), (inches("4 3/8"), "half")}


def test_a_stepped_top_ends_its_upper_courses() -> None:
    wall = stepped([("0", "0"), ("159 5/8", "0")], "159 5/8", "40",
                   [("0", "40"), ("79 5/8", "40"), ("79 5/8", "24"), ("159 5/8", "24")])
    layout = lay(make_job(plain_masonry(), wall))
    assert broken(check(layout)) == []
    assert [pieces_of(layout, course)[-1].right for course in (3, 4, 5)] == [inches("159 5/8"), *[inches("79 5/8")] * 2]


SHED = """
title = "Shed on the bank"
measure = "feet"
sizes = "nominal"
masonry.unit = "block-8"
""" + "".join(f"""
[[wall]]
name = "{name}"
length = "{length}"
height = "8'"
left = "outside corner"
right = "outside corner"
{rest}
""" for name, length, rest in (
    ("South", "16'", 'gable = [{pitch = "6/12"}]'), ("East", "24'", """step = [{at = "8'", up = "8"}, {at = "16'", up = "8"}]"""),
    ("North", "16'", 'gable = [{pitch = "6/12"}]'),
    ("West", "24'", """step = [{at = "8'", down = "8"}, {at = "16'", down = "8"}]"""),
))
"""A closed shed on a sloping site: the footing climbs along two walls, and two end in gables."""


def test_a_building_on_a_stepped_footing_has_one_datum_and_holds_every_rule() -> None:
    layout = lay_text(SHED)
    assert broken(check(layout)) == []
    south, east, north, west = layout.walls
    assert [len(course.pieces) > 0 for course in north.courses[:3]] == [False, False, True]
    assert pieces_of(layout, 3, 2)[0].bottom == inches("16 3/8")
    # Courses of 8 in. to the eaves at 8 ft; 4 ft more to the ridges at 6 in 12.
    assert [len(wall.courses) for wall in (south, east, north, west)] == [18, 12, 18, 12]


def test_over_the_eaves_a_gable_goes_on_to_both_ends() -> None:
    """No other wall stands there: course 13 begins where the slope passes the underside of its units, a bed of 3/8 in. up."""
    layout = lay_text(SHED)
    for wall in (0, 2):
        first = pieces_of(layout, 13, wall)[0]
        assert first.left == inches("3/4") and first.hand == "left"


def test_half_steps_and_stepped_tops_go_round_a_building() -> None:
    """The footing climbs 4 in. along one wall, which half-high units meet on three sides; the tops come down 16 in."""
    text = SHED.replace('gable = [{pitch = "6/12"}]', "")
    text = text.replace("""step = [{at = "8'", up = "8"}, {at = "16'", up = "8"}]""",
                        """step = [{at = "10'", up = "4"}]\ntop_step = [{at = "12'", down = "16"}]""")
    text = text.replace("""step = [{at = "8'", down = "8"}, {at = "16'", down = "8"}]""",
                        """step = [{at = "14'", down = "4"}]\ntop_step = [{at = "12'", up = "16"}]""")
    north, west = text.index('name = "North"'), text.index('name = "West"')
    text = text[:north] + text[north:].replace("""height = "8'\"""", """height = "6' 8\"""")
    assert north < west
    layout = lay_text(text)
    assert broken(check(layout)) == []
    assert {piece.height for piece in pieces_of(layout, 1, 2)} == {inches("3 5/8")}


STEPPED_YARD = """
title = "Yard"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "R"
length = "20'"
height = "8'"
control_joints = [{}]
[[wall.step]]
at = "12'"
up = "8"
{}
"""

HATCH = """[[wall.opening]]
name = "Hatch"
from_left = "14'"
width = "2' 8"
sill = "4'"
height = "2'"
"""


def test_a_course_that_ends_at_a_riser_is_laid_whatever_parts_the_wall_beyond() -> None:
    # Course 1 is 12 ft of nine block; a control joint or a hatch on the higher step is none of its business.
    for joints, rest in (('"16\'"', ""), ("\"4'\", \"16'\"", ""), ("", HATCH)):
        layout = lay_text(STEPPED_YARD.format(joints, rest))
        first = layout.walls[0].courses[0].pieces
        assert (first[0].left, first[-1].right) == (0, inches("143 5/8"))
        assert not broken(check(layout))


def test_a_course_without_a_piece_is_told_and_stops_no_check() -> None:
    layout = change_course(lay_text(STEPPED_YARD.format("", "")), 1, lambda pieces: ())
    assert "cover" in {one.rule for one in broken(check(layout))}
