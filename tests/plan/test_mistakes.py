"""Every kind of mistake in a plan: the line and key that it is told for, and what is said.

Each case changes one passage of the kiosk; ``#!`` marks the line on which the mistake is to be told.
"""

from __future__ import annotations

import pytest

from tests.plan.kiosk import KIOSK, changed, marked_line, mistakes_in
from wallplan.lengths import print_length
from wallplan.plan.load import read_plan

DOOR = '  name = "Door"\n  from_left = "4\'"\n  width = "3\' 4"\n  height = "7\' 4"\n'
WINDOW = 'from_left = "10\' 8"\n  width = "4\'"\n  sill = "3\' 4"\n  height = "4\'"\n'
WATER = 'name = "Water side"\nlength = "12\'"\ncourses = 13\n'
UNIT = 'unit = "block-8"\n'
IN_DOOR = 'wall "Landing side", opening "Door"'
IN_WINDOW = 'wall "Landing side", opening "Window"'


def door(**keys: str) -> str:
    """The kiosk with its door written anew; keys are TOML."""
    return changed(DOOR, "".join(f"  {key} = {value}\n" for key, value in (
        {"name": '"Door"', "from_left": '"4\'"', "width": '"3\' 4"', "height": '"7\' 4"'} | keys).items()))


def water(*lines: str) -> str:
    """The kiosk with lines added to its second wall, which has no openings."""
    return changed(WATER, WATER + "".join(f"{line}\n" for line in lines))


def masonry(*lines: str) -> str:
    """The kiosk with lines added to its masonry."""
    return changed(UNIT, UNIT + "".join(f"{line}\n" for line in lines))


WORDS = [
    ('unknown key, a near one', changed('title = "Ferry landing"', 'titel = "x" #!\ntitle = "y"'), "",
     "titel: unknown key; the nearest is title"),
    ('unknown key, of another table', changed(UNIT, UNIT + "sill = 3 #!\n"), "masonry",
     "sill: unknown key here; it belongs under [[wall.opening]]"),
    ('unknown key, near none', water("zzz = 1 #!"), 'wall "Water side"', "zzz: unknown key; known here: name, length"),
    ('unknown table', changed(UNIT, UNIT + "[mortar] #!\nbags = 3\n"), "", "mortar: unknown key; known here"),
    ('unknown key in an opening', door(sil='"2\'" #!'), IN_DOOR, "sil: unknown key; the nearest is sill"),
    ('title is a number', changed('title = "Ferry landing"', "title = 3 #!"), "", "title: 3 is not text in quotes; write title ="),
    ('title is missing', changed('title = "Ferry landing"\n', ""). replace("measure =", "#!\nmeasure =", 1), "",
     'title: missing; write title = "Ferry landing'),
    ('measure is unknown', changed('measure = "feet"', 'measure = "foot" #!'), "",
     'measure: "foot" is not known; allowed: feet or metric; write measure = "feet"'),
    ('sizes are unknown', changed('measure = "feet"', 'measure = "feet"\nsizes = "nom" #!'), "",
     'sizes: "nom" is not known; allowed: actual or nominal'),
    ('bond is unknown', masonry('bond = "haalf" #!'), "masonry",
     'bond: "haalf" is not known; allowed: half, third, quarter, stack, flemish, english, english garden wall, flemish garden wall, common or header; write bond = "half"'),
    ('leads are text', masonry('leads = "5" #!'), "masonry", 'leads: "5" is not a whole number; write leads = 5'),
    ('leads are a fraction', masonry("leads = 5.0 #!"), "masonry", "leads: 5.0 is not a whole number"),
    ('leads are true', masonry("leads = true #!"), "masonry", "leads: true is not a whole number"),
    ('no courses in a lead', masonry("leads = 0 #!"), "masonry", "leads: 0; a lead has 1 to 50 courses; write leads = 5"),
    ('unit is unknown', changed(UNIT, 'unit = "block8" #!\n'), "masonry",
     'unit: "block8" is no unit of the catalogue; nearest: block-8'),
    ('unit is missing', changed("[masonry]\n" + UNIT, "[masonry] #!\n"), "masonry", 'unit: missing; write unit = "block-8"'),
    ('an end is unknown', water('left = "corner" #!'), 'wall "Water side"',
     'left: "corner" is not known; allowed: end, outside corner, inside corner or straight'),
    ('lintel is unknown', door(lintel='"blok" #!'), IN_DOOR,
     'lintel: "blok" is not known; allowed: block, precast, steel or none; write lintel = "block"'),
    ('one wall in single brackets', 'wall = 3 #!\ntitle = "x"\nmeasure = "feet"\nmasonry.unit = "block-8"', "",
     "wall: 3 is not a list in brackets; write [[wall]]"),
    ('one opening in single brackets', water("[wall.opening] #!", 'from_left = "4\'"'), 'wall "Water side"',
     "opening: one table; write its heading in double brackets, [[wall.opening]]"),
    ('masonry in double brackets', changed("[masonry]", "[[masonry]] #!"), "", "masonry: a list is not a table; write [masonry]"),
    ('control joints are no list', water('control_joints = "6\'" #!'), 'wall "Water side"',
     'control_joints: "6\'" is not a list in brackets; write control_joints = ["6\'"]'),
    ('an opening under no wall', changed('  [[wall.opening]]\n  name = "Door"', '  [[opening]] #!\n  name = "Door"'), "",
     "opening: unknown key here; it belongs under [[wall]], below a heading [[wall.opening]]"),
    ('the unit of length as the measure', changed('measure = "feet"', 'measure = "mm" #!'), "",
     'measure: "mm" is not known; allowed: feet or metric; write measure = "metric"'),
    ('a corner that may be one of two', water('left = "corner" #!'), 'wall "Water side"',
     'left: "corner" is not known; allowed: end, outside corner, inside corner or straight; write left = "outside corner" or '
     '"inside corner"'),
    ('curly quotes', changed('"Water side"', "\u201cWater side\u201d #!"), 'wall "Water side"',
     "name: \u201cWater side\u201d stands in curly quotes, which some programs put in by themselves; write straight ones, name = "),
    ('date is a number', changed('measure = "feet"', 'measure = "feet"\ndate = 3 #!'), "",
     "date: 3 is not a date; write date = 2031-04-02, or a text in quotes"),
]

LENGTHS = [
    ('length is doubtful', door(from_left='"4-0" #!'), IN_DOOR, 'from_left: "4-0" is not a length; write feet and inches as "4\' 0"'),
    ('length has a comma', door(width='"3,5 ft" #!'), IN_DOOR,
     "width: \"3,5 ft\" is not a length; write a decimal point, no comma, \"3.5 ft\""),
    ('length is a list', door(width='["3\'"] #!'), IN_DOOR, "width: a list is not a length"),
    ('length is true', door(width="true #!"), IN_DOOR, "width: true is not a length"),
    ('length is a time', door(width="07:32:00 #!"), IN_DOOR, "width: 07:32:00 is not a length"),
    ('length is NaN', door(width="nan #!"), IN_DOOR, "width: nan is not a length"),
    ('length is infinite', door(width="-inf #!"), IN_DOOR, "width: -inf is not a length"),
    ('length is 1e400', door(width="1e400 #!"), IN_DOOR, "width: inf is not a length"),
    ('length is negative', door(from_left='"-4\'" #!'), IN_DOOR, "from_left: \"-4'\" is negative"),
    ('length of 900 digits', door(width="9" * 900 + " #!"), IN_DOOR, "width: a number of over 60 digits is over 3,000 m"),
    ('length in hexadecimal', door(width="0x" + "f" * 5000 + " #!"), IN_DOOR, "width: a number of over 60 digits is over"),
    ('length is missing', door(name='"Door"').replace('  from_left = "4\'"\n', "").replace(
        '  [[wall.opening]]\n  name = "Door"', '  [[wall.opening]] #!\n  name = "Door"'), IN_DOOR,
     "from_left: missing; write from_left = \"6' 8\""),
    ('no width', door(width='"0" #!'), IN_DOOR, 'width: 0" is nothing; write a length of more than nothing'),
    ('no height', door(height="0 #!"), IN_DOOR, 'height: 0" is nothing'),
    ('no bearing', door(bearing="0 #!"), IN_DOOR, 'bearing: 0" is nothing'),
    ('no length of wall', changed("length = \"12'\"", "length = 0 #!"), 'wall "Water side"', 'length: 0" is nothing'),
    ('a control joint that is no length', water('control_joints = ["6\'", "x"] #!'), 'wall "Water side"',
     'control_joints 2: "x" is not a length'),
]

MASONRY = [
    ('tightest over joint', masonry('tightest_joint = "7/16" #!'), "masonry",
     'tightest_joint: the range from tightest_joint, 7/16", to widest_joint, 1/2", does not hold the joint, 3/8"'),
    ('widest under joint', masonry('widest_joint = "1/4" #!'), "masonry", "widest_joint: the range from"),
    ('joint outside the default range', masonry('joint = "5/8" #!'), "masonry",
     'joint: the range from tightest_joint, 1/4", to widest_joint, 1/2", does not hold the joint, 5/8"'),
    ('no joint', masonry('joint = 0 #!', "tightest_joint = 0"), "masonry", 'joint: nothing; write a joint, for this unit 3/8"'),
    ('widest over a quarter unit', masonry('widest_joint = "4" #!'), "masonry",
     'widest_joint: 4" is over a quarter of the unit; write at most 3 7/8"'),
    ('lap over half a module', masonry('least_lap = "8 1/16" #!'), "masonry",
     'least_lap: 8 1/16" is over half a unit and its joint: no bond laps more than half; write at most 8"'),
    ('piece over half a module', masonry("least_piece = 9 #!"), "masonry",
     'least_piece: 9" is over half a unit and its joint: halves could not be laid; write at most 8"'),
    ('no least piece', masonry("least_piece = 0 #!"), "masonry", 'least_piece: 0" is nothing'),
]

WALLS = [
    ('neither height nor courses', changed("[[wall]]\n" + WATER, '[[wall]] #!\nname = "Water side"\nlength = "12\'"\n'),
     'wall "Water side"', "height: missing; write height = \"8' 8\", or courses = 13"),
    ('courses and height disagree', changed("height = \"8' 8\"", "height = \"8' 8\"\ncourses = 14 #!"), 'wall "Landing side"',
     "courses: 14 courses are 9'-4\" high, the height is 8'-8\": 8\" less, which the beds cannot take"),
    ('courses that thin beds would take, but that are not laid', changed("courses = 13", "height = \"42'\"\ncourses = 64 #!"),
     'wall "Water side"', "courses: 64 courses are 42'-8\" high, the height is 42'-0\": 8\" less"),
    ('courses of which one is ripped', changed("courses = 13", "height = \"8' 4\"\ncourses = 13 #!"), 'wall "Water side"',
     "courses: 13 courses are 8'-8\" high, the height is 8'-4\": 4\" less, which the beds cannot take; leave out one of the two"),
    ('no courses', changed("courses = 13", "courses = 0 #!"), 'wall "Water side"',
     "courses: 0 is not a number of courses from 1 to 5,000"),
    ('negative courses', changed("courses = 13", "courses = -1 #!"), 'wall "Water side"', "courses: -1 is not a number"),
    ('a million courses', changed("courses = 13", "courses = 1_000_000 #!"), 'wall "Water side"', "courses: 1000000 is not"),
    ('height under a rip', changed("courses = 13", 'height = "1" #!'), 'wall "Water side"',
     'height: 1" is lower than one course can be ripped; write at least 1 3/8"'),
    ('length under a piece', changed("length = \"12'\"", 'length = "3" #!'), 'wall "Water side"',
     'length: 3" of masonry is shorter than the least piece; write at least 3 5/8" (a bare number is inches, "12\'" is feet)'),
    ('control joint outside', water('control_joints = ["6\'", "12\'"] #!'), 'wall "Water side"',
     "control_joints 2: 12'-0\" is not inside the wall, which is 12'-0\" long"),
    ('control joint at an end', water('control_joints = ["3"] #!'), 'wall "Water side"',
     'control_joints 1: 3" leaves less than the least piece to the wall\'s left end'),
    ('control joint at the right end', water('control_joints = ["11\' 9"] #!'), 'wall "Water side"',
     "control_joints 1: 11'-9\" leaves less than the least piece to the wall's right end"),
    ('control joints close together', water('control_joints = ["6\' 3", "6\'"] #!'), 'wall "Water side"',
     "control_joints 1: 6'-3\" is 3\" from the control joint at 6'-0\", under the least piece"),
    ('control joint twice', water('control_joints = ["6\'", "6\'"] #!'), 'wall "Water side"',
     "control_joints 2: 6'-0\" is 0\" from the control joint at 6'-0\""),
    ('bond beam over the last', water("bond_beams = [7, 14] #!"), 'wall "Water side"',
     'bond_beams 2: course 14 is over the last, which is 13; write a lower number, or "top"'),
    ('bond beam negative', water("bond_beams = [-1] #!"), 'wall "Water side"', "bond_beams 1: -1 is not a course"),
    ('bond beam nought', water("bond_beams = [0] #!"), 'wall "Water side"', "bond_beams 1: 0 is not a course"),
    ('bond beam true', water("bond_beams = [true] #!"), 'wall "Water side"', "bond_beams 1: true is not a course"),
    ('bond beam in words', water('bond_beams = ["last"] #!'), 'wall "Water side"', 'bond_beams 1: "last" is not a course'),
    ('bond beam in a list', water("bond_beams = [[1]] #!"), 'wall "Water side"', "bond_beams 1: a list is not a course"),
    ('bond beam twice', water("bond_beams = [7, 7] #!"), 'wall "Water side"', "bond_beams 2: course 7 is given twice"),
    ('bond beam twice by name', water('bond_beams = [13, "top"] #!'), 'wall "Water side"', "bond_beams 2: course 13 is given"),
    ('bond beams of 400 digits', water(f"bond_beams = [{'9' * 400}] #!"), 'wall "Water side"',
     "bond_beams 1: course a number of over 60 digits is over the last"),
    ('more bond beams than courses can be', water(f"bond_beams = [{'1, ' * 5001}] #!"), 'wall "Water side"',
     "bond_beams: more than 5,000 are not laid"),
    ('more pieces than are laid', water("[[wall]]", 'name = "Mole"', 'length = "2999 m" #!', "courses = 3000"), 'wall "Mole"',
     "length: with this wall the plan holds about 22,1"),
    ('a name twice', changed('name = "Water side"', 'name = "Landing side" #!'), 'wall "Landing side"',
     'name: "Landing side" is the name of another wall'),
    ('names that make one file', changed('name = "Water side"', 'name = "landing-side!" #!'), 'wall "landing-side!"',
     'name: "landing-side!" and "Landing side" would name the same file'),
    ('a name without letters', changed('name = "Water side"', 'name = "--" #!'), 'wall "--"',
     'name: "--" has no letter or digit to name a file after'),
    ('an empty name', changed('name = "Water side"', 'name = " " #!'), "wall 2", "name: empty; write what it is called"),
    ('a long name', changed('name = "Water side"', f'name = "{"x" * 81}" #!'), f'wall "{"x" * 57}..."',
     "name: 81 characters; write at most 80"),
    ('an empty title', changed('title = "Ferry landing"', 'title = "" #!'), "", "title: empty; write"),
    ('a title of two lines', changed('title = "Ferry landing"', r'title = "Ferry\nlanding" #!'), "",
     'title: "Ferry?landing" holds a character that cannot be printed'),
    ('a lone end that is a corner', changed('name = "Landing side"', 'left = "outside corner" #!\nname = "Landing side"'),
     'wall "Landing side"',
     'left: wall "Water side" ends on the right with "end", but the left of wall "Landing side" is "outside corner"'),
]

OPENINGS = [
    ('no masonry left of it', door(from_left="0 #!"), IN_DOOR, "from_left: no masonry is left between the wall's left end"),
    ('past the right end', changed('  width = "4\'"', '  width = "10\'" #!'), IN_WINDOW,
     "width: the opening reaches from 10'-8\" to 20'-8\", 8\" past the wall's right end at 20'-0\""),
    ('up to the right end', changed('  width = "4\'"', '  width = "9\' 4" #!'), IN_WINDOW,
     "width: the opening reaches from 10'-8\" to 20'-0\", up to the wall's right end"),
    ('outside the wall', changed('from_left = "10\' 8"', 'from_left = "21\'" #!'), IN_WINDOW,
     "from_left: the opening reaches from 21'-0\" to 25'-0\", 5'-0\" past"),
    ('over the top', door(height='"9\'" #!'), IN_DOOR,
     "height: the opening reaches 9'-0\" high, 4\" over the wall's top; write at most 8'-8\""),
    ('sill over the top', changed('sill = "3\' 4"', 'sill = "9\'" #!'), IN_WINDOW,
     "sill: 9'-0\" is not under the wall's top at 8'-8\""),
    ('to the top with a lintel', door(height='"8\' 8"', lintel='"steel" #!'), IN_DOOR,
     "lintel: the opening reaches the wall's top"),
    ('over another', changed('from_left = "10\' 8"', 'from_left = "7\'" #!'), IN_WINDOW,
     "from_left: the opening meets opening \"Door\" by 4\" across and 4'-0\" up"),
    ('over a later one', door(from_left='"8\'"').replace('"10\' 8"', '"10\' 8" #!'), IN_WINDOW,
     "from_left: the opening meets opening \"Door\" by 8\" across and 4'-0\" up"),
    ('touching another', changed('from_left = "10\' 8"', 'from_left = "7\' 4" #!'), IN_WINDOW,
     "from_left: the opening meets opening \"Door\" along an edge"),
    ('a name twice', changed('name = "Window"', 'name = "Door" #!'), IN_DOOR,
     'name: "Door" is the name of another opening of this wall'),
    ('a name that a nameless one has', changed('  name = "Window"\n', "").replace('name = "Door"', 'name = "opening 2"').replace(
        '  [[wall.opening]]\n  from_left', '  [[wall.opening]] #!\n  from_left'), 'wall "Landing side", opening 2',
     'name: "opening 2" is the name of another opening'),
    ('an empty name', door(name='"" #!'), 'wall "Landing side", opening 1', "name: empty"),
    ('lintel units that brick has not', door(lintel='"block" #!').replace("block-8", "brick-modular"), IN_DOOR,
     'lintel: "block" needs lintel units, and brick-modular does not come in them; write "precast", "steel" or "none"'),
    ('control joint in it', door(from_left='"4\'" #!').replace("height = \"8' 8\"", "height = \"8' 8\"\ncontrol_joints = [\"5'\"]"),
     IN_DOOR, "from_left: the opening reaches the control joint at 5'-0\""),
    ('control joint at its jamb', door(from_left='"4\'" #!', lintel='"none"').replace(
        "height = \"8' 8\"", "height = \"8' 8\"\ncontrol_joints = [\"7' 4 1/2\"]"), IN_DOOR,
     "from_left: the opening reaches the control joint at 7'-4 1/2\""),
    ('control joint under its lintel', door(from_left='"4\'" #!').replace(
        "height = \"8' 8\"", "height = \"8' 8\"\ncontrol_joints = [\"7' 11\"]"), IN_DOOR,
     "from_left: the opening has a lintel that bears across the control joint at 7'-11\"; move one of them, so that 8 3/16\" at "
     "least lie between jamb and joint, or write a bearing of at most 6 13/16\""),
    # Both at once would be told as 9/16 in., the joint and half of it, and then as 8 3/16 in.
    ('control joint at the jamb of a door with a lintel', door(from_left='"4\'" #!').replace(
        "height = \"8' 8\"", "height = \"8' 8\"\ncontrol_joints = [\"4'\"]"), IN_DOOR,
     "from_left: the opening reaches the control joint at 4'-0\"; move one of them, so that 8 3/16\" at least lie between jamb"),
    ('one on top of another', changed('sill = "3\' 4"\n  height = "4\'"', 'sill = "7\' 4" #!\n  height = "8"').replace(
        'from_left = "10\' 8"', 'from_left = "4\'"'),
     IN_WINDOW, "sill: the opening meets opening \"Door\" along an edge; move one, so that masonry is left between them, or write "
     "one opening in place of both"),
]


@pytest.mark.parametrize(("text", "place", "said"), [
    pytest.param(text, place, said, id=name)
    for name, text, place, said in [*WORDS, *LENGTHS, *MASONRY, *WALLS, *OPENINGS]])
def test_a_mistake_is_told_once_where_it_stands(text: str, place: str, said: str) -> None:
    ((line, where, message),) = mistakes_in(text)
    assert message.startswith(said)
    assert (line, where) == (marked_line(text), place)


def test_courses_that_disagree_are_told_what_the_height_holds() -> None:
    ((_, _, message),) = mistakes_in(changed("courses = 13", "height = \"42'\"\ncourses = 64"))
    assert message.endswith("leave out one of the two, or write courses = 63")


def test_bond_beams_need_units_that_come_in_them() -> None:
    text = water('bond_beams = ["top"] #!').replace("block-8", "brick-modular")
    ((line, where, message),) = mistakes_in(text)
    assert (line, where) == (marked_line(text), 'wall "Water side"')
    assert message.startswith("bond_beams: brick-modular does not come in bond beam units")


def cornered(*walls: str) -> str:
    """A plan of 8 in. block whose walls are given as ``name, length, left, right`` and more lines after a bar."""
    text = 'title = "Pump house"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n'
    for wall in walls:
        given, _, more = wall.partition("|")
        name, length, left, right = (part.strip() for part in given.split(","))
        ends = "".join(f'{side} = "{end} corner"\n' for side, end in (("left", left), ("right", right)) if end)
        text += f'[[wall]]\nname = "{name}"\nlength = "{length}"\n{ends}' + (more or 'height = "8\'"') + "\n"
    return text


OUT = "outside"


@pytest.mark.parametrize(("walls", "where", "told"), [
    (("A, 20', , outside", "B, 11, outside, "), 'wall "B"',
     "length: 10 5/8\" leaves no piece beside the walls that it meets, which are 7 5/8\" thick; write at least 11 5/8\""),
    (("A, 20', outside, outside", "B, 10', outside, outside", "C, 20', outside, outside", "D, 12', outside, outside"),
     'wall "B"', "length: the building does not close: its walls end 2'-0\" short of where they began, measured along "
     "wall \"B\"; lengths are out to out on the outside face"),
    (("A, 20', outside, outside", "B, 10', outside, outside"), 'wall "B"',
     "right: the building does not close: its outside corners less its inside corners are 2, not 4; write its corners "
     "anew, or \"end\" where a wall stands free"),
    (tuple(f"{name}, 16', inside, inside" for name in "ABCD"), 'wall "D"',
     "right: the walls go round a yard with their outside turned in, and are drawn from outside; write each inside corner as "
     "an outside one and each outside corner as an inside one, with the lengths of the yard's outer faces"),
    (("A, 20', , outside", "B, 10', outside, | height = \"8'\"\n[[wall.opening]]\nfrom_left = \"8\"\nwidth = \"4'\"\n"
      "height = \"4'\"\n"), 'wall "B", opening 1',
     "from_left: a jamb stands 7 5/8\" from the left corner; the other wall takes 8\" of it, so stay 11 5/8\" away at least"),
])
def test_what_cannot_be_laid_at_a_corner_is_told(walls: tuple[str, ...], where: str, told: str) -> None:
    found = mistakes_in(cornered(*walls))
    assert [(place, message) for _, place, message in found] == [(where, told)]


def test_jambs_as_near_to_either_corner_are_told_apart() -> None:
    found = mistakes_in(cornered(
        "A, 20', , outside", "B, 10', outside, outside | height = \"8'\"\n[[wall.opening]]\nfrom_left = \"8\"\nwidth = \"8' 8\"\n"
        "height = \"4'\"\n", "C, 20', outside, "))
    assert [message.partition("; ")[0].rpartition(" from ")[2] for _, _, message in found] == ["the left corner", "the right corner"]


def test_a_corner_that_is_not_square_is_told() -> None:
    text = water("angle = 60 #!")
    (found,) = mistakes_in(text)
    assert found == (marked_line(text), 'wall "Water side"', "angle: walls are laid that meet square, at outside and inside "
                     "corners; a wall at another angle is written as one that stands free, and its corner set out by hand: leave "
                     "this out")


def test_a_building_that_closes_is_laid_and_a_joint_comes_off_by_its_corners() -> None:
    text = cornered("S, 8', outside, outside", "E, 2' 8, outside, outside", "N, 4', outside, inside",
                    "E2, 2' 8, inside, outside", "N2, 4', outside, outside", "W, 5' 4, outside, outside")
    walls = read_plan(text, "plan.toml").walls
    # Out to out between outside corners a joint less; between an outside and an inside corner whole modules.
    assert [print_length(wall.length, "feet") for wall in walls] == [
        "7'-11 5/8\"", "2'-7 5/8\"", "4'-0\"", "2'-8\"", "3'-11 5/8\"", "5'-3 5/8\""]


def test_a_wall_alone_has_no_corner() -> None:
    text = changed("[[wall]]\n" + WATER, "").replace('name = "Landing side"', 'name = "Landing side"\nright = "straight" #!')
    ((line, _, message),) = mistakes_in(text)
    assert line == marked_line(text)
    assert message.startswith("right: a wall that stands alone has no corner")


def test_lengths_wait_for_the_measure() -> None:
    ((line, _, message),) = mistakes_in(changed('measure = "feet"\n', "").replace('"4\'"', '"4-"'))
    assert line == 1
    assert message == 'measure: missing; write measure = "feet"; lengths are looked at when this is mended'


def test_a_plan_without_walls_is_told_so() -> None:
    assert mistakes_in('title = "x"\nmeasure = "feet"\nwall = []\n[masonry]\nunit = "block-8"\n') == [
        (3, "", "wall: no wall; write [[wall]] with a name, a length and a height")]


def test_an_empty_plan_is_told_what_it_needs() -> None:
    assert [message.split(":")[0] for _, _, message in mistakes_in("")] == ["title", "measure", "masonry", "wall"]


def test_all_mistakes_are_told_at_once_in_file_order() -> None:
    text = door(width='"0"', sill='"-1"').replace('"block-8"', '"block-9"').replace("courses = 13", "courses = 0\nfoo = 1")
    told = mistakes_in(text.replace('title = "Ferry landing"', "title = 1"))
    assert [line for line, _, _ in told] == sorted(line or 0 for line, _, _ in told)
    assert [message.split(":")[0] for _, _, message in told] == ["title", "unit", "width", "sill", "courses", "foo"]


def test_a_length_that_is_none_is_told_beside_an_unknown_unit() -> None:
    text = changed(UNIT, 'unit = "block-9"\nleast_lap = "-4"\n')
    assert [(line, message.split(":")[0]) for line, _, message in mistakes_in(text)] == [(5, "unit"), (6, "least_lap")]


@pytest.mark.parametrize(("heading", "key", "place"), [
    ("[[wall.pier]]\nfrom_left = \"4'\"", "name", 'wall "Water side", pier "'),
    ("[order]", "currency", "order"), ("[[order.item]]", "name", "order, item "),
])
def test_whatever_is_printed_must_be_text(heading: str, key: str, place: str) -> None:
    for written, told in (("post \\u0007 1", "holds a character that cannot be printed"), ("p" * 81, "81 characters; write at most 80")):
        ((_, where, message),) = mistakes_in(f'{KIOSK}{heading}\n{key} = "{written}"\n')
        assert where.startswith(place) and message.startswith(f"{key}: ") and told in message
