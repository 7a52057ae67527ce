"""Keys and words that are not known: told once, as what they were meant to be, with the mistakes that hang on them."""

from __future__ import annotations

import pytest

from tests.plan.kiosk import KIOSK, changed, mistakes_in
from tests.plan.test_mistakes import DOOR, door, masonry, water
from wallplan.plan.load import read_plan


def said(text: str) -> list[str]:
    return [message for _, _, message in mistakes_in(text)]


def door_with(old: str, new: str) -> str:
    """The kiosk with one line of its door written otherwise."""
    assert DOOR.count(old) == 1
    return changed(DOOR, DOOR.replace(old, new))


@pytest.mark.parametrize(("text", "told"), [
    # A key that must be there, under another name: one line, and not a second one that it is missing.
    (door_with("from_left", "from-left"), "from-left: unknown key; the nearest is from_left"),
    (door_with("from_left", "fromLeft"), "fromLeft: unknown key; the nearest is from_left"),
    (door_with("from_left", "x"), "x: unknown key; write from_left"),
    (door_with("from_left", "position"), "position: unknown key; write from_left"),
    (door_with("  width", "  length"), "length: unknown key; write width"),
    (door_with("  height", "  high"), "high: unknown key; write height"),
    (door_with("from_left", "from_right"), "from_right: distances run from the wall's left end; write from_left, the wall's "
                                           "length less this and the width"),
    (door_with("  height", "  head"), "head: height is from the sill to the underside of the lintel; write that"),
    (changed("title =", "Title ="), "Title: unknown key; the nearest is title"),
    (changed("measure =", "units ="), "units: unknown key; write measure"),
    (changed("unit =", "brick ="), "brick: unknown key; write unit"),
    (changed("[masonry]", "[masonary]"), "masonary: unknown key; the nearest is masonry"),
    (KIOSK.replace("[[wall", "[[walls"), "walls: unknown key; the nearest is wall"),
    (KIOSK.replace("[[wall", "[[Wall"), "Wall: unknown key; the nearest is wall"),
    # What the trade calls it.
    (changed("[[wall.opening]]\n  name = \"Door\"", "[[wall.door]]\n  name = \"Door\""), "door: unknown key; write opening"),
    (door(sill_height='"1"'), "sill_height: unknown key; write sill"), (door(header='"steel"'), "header: unknown key; write lintel"),
    (masonry('mortar_joint = "3/8"'), "mortar_joint: unknown key; write joint"), (masonry("lap = 4"), "lap: unknown key; write least_lap"),
    (masonry('pattern = "half"'), "pattern: unknown key; write bond"),
    (masonry("thickness = 8"), 'thickness: a wall is as thick as its unit: choose the unit under [masonry], "block-8" say; leave '
                               "this out"),
    (water('note = "wet"'), "note: unknown key; a note of your own stands behind a #, on any line"),
    (water("[[wall.gable]]", 'slope = "8/12"'), "slope: unknown key; write pitch"),
    (water("[[wall.gable]]", 'height = "4\'"'), "height: unknown key; write rise"),
    (water("[[wall.gable]]", "pitch = 8"), 'pitch: 8 is not text in quotes; write pitch = "8/12"'),
    (water("[[wall.step]]", 'at = "6\'"', 'height = "8"'), "height: a step is met from the left; write up or down"),
    (water("[[wall.abuts]]", 'meets = "Landing side"', 'at = "8\'"', 'tie = "strap"', "strap_spacing = '16\"'"),
     'tie: "strap" is not known; allowed: interlocked, straps or control joint; write tie = "straps"'),
])
def test_an_unknown_key_is_one_line_that_says_what_to_write(text: str, told: str) -> None:
    assert said(text) == [told]


def test_what_stands_under_a_misspelt_heading_is_looked_at_too_with_its_line() -> None:
    text = KIOSK.replace("[[wall", "[[walls").replace("opening]]", "openings]]").replace('width = "4\'"', 'width = "4-"')
    assert [(line, place, message.partition(":")[0]) for line, place, message in mistakes_in(text)] == [
        (7, "", "walls"), (12, 'wall "Landing side"', "openings"), (21, 'wall "Landing side", opening "Window"', "width")]


def test_of_two_headings_that_are_no_lists_neither_is_missing() -> None:
    text = 'title="x"\nmeasure="feet"\n[masonry]\nunit="block-8"\n[wall1]\nname="A"\n[wall2]\nname="B"\n'
    assert said(text) == ["wall1: unknown key; the nearest is wall", "wall2: unknown key; the nearest is wall"]


def test_a_heading_of_several_parts_has_its_own_line() -> None:
    assert [line for line, _, _ in mistakes_in(KIOSK + '[gates.west]\nwidth = "4\'"\n')] == [KIOSK.count("\n") + 1]


@pytest.mark.parametrize(("text", "instead"), [
    (masonry('bond = "running"'), 'bond = "half"'), (masonry('bond = "stretcher bond"'), 'bond = "half"'),
    (masonry('bond = "1/3"'), 'bond = "third"'), (masonry('bond = "one third"'), 'bond = "third"'),
    (masonry('bond = "herringbone"'), 'one of them, such as bond = "half"'),
    (door(lintel='"concrete"'), 'lintel = "precast"'), (door(lintel='"steel angle"'), 'lintel = "steel"'),
    (door(lintel="false"), 'lintel = "none"'), (door(lintel='"timber"'), 'one of them, such as lintel = "precast"'),
    (masonry('keep_bond = "no"'), "keep_bond = false"), (masonry("keep_bond = 0"), "keep_bond = false"),
    (masonry('keep_bond = "maybe"'), "keep_bond = true or false"),
    (masonry('leads = "7"'), "leads = 7"), (masonry("leads = 6.0"), "leads = 6"),
    (changed("courses = 13", 'courses = "9"'), "courses = 9"),
    (KIOSK + '[order]\nspare = "7.5%"\n', "spare = 7.5"), (KIOSK + '[[order.item]]\nname = "x"\nprice = "2,35"\n', "price = 2.35"),
    (KIOSK + "[order]\noutput = 100\n", "output = [100, 150]"), (KIOSK + '[order.steel]\nbar = "No. 5"\n', 'bar = "#5"'),
    (changed('name = "Window"', "name = 7"), 'name = "7"'), (water("bond_beams = 13"), "bond_beams = [13]"),
])
def test_what_to_write_instead_of_a_word_or_number_is_what_was_meant(text: str, instead: str) -> None:
    (message,) = said(text)
    assert message.endswith(f"; write {instead}")


@pytest.mark.parametrize(("old", "new"), [
    ('measure = "feet"', 'measure = "Feet"'), ('unit = "block-8"', 'unit = "Block-8"\nbond = " HALF "'),
    ('unit = "block-8"', 'unit = "block 8"'), ('height = "7\' 4"', 'height = "7\' 4"\n  lintel = "Steel"'),
    ("courses = 13", 'courses = 13\nbond_beams = ["Top"]\nleft = "End"'),
])
def test_big_letters_in_words_do_no_harm(old: str, new: str) -> None:
    assert read_plan(changed(old, new), "kiosk.toml").masonry == read_plan(KIOSK, "kiosk.toml").masonry


def test_ends_may_be_written_with_hyphens() -> None:
    text = changed('name = "Landing side"', 'name = "Landing side"\nright = "Outside_Corner"').replace(
        'name = "Water side"', 'name = "Water side"\nleft = "outside-corner"')
    assert read_plan(text, "kiosk.toml").walls[0].right_end == "outside corner"


@pytest.mark.parametrize(("right", "left"), [("corner", "outside corner"), ("outside corner", "corner"), ("outsde corner", "inside corner")])
def test_an_end_that_is_no_word_is_not_told_again_as_one_that_its_neighbour_denies(right: str, left: str) -> None:
    text = changed('name = "Landing side"', f'name = "Landing side"\nright = "{right}"').replace(
        'name = "Water side"', f'name = "Water side"\nleft = "{left}"')
    assert len(said(text)) == 1


@pytest.mark.parametrize(("text", "told"), [
    (changed('"20\'"', "20.5"), 'length: 1\'-8 1/2" has no room for opening "Window"; write "20.5\'" if that is meant (a bare number '
                                "is inches, \"12'\" is feet)"),
    (changed("\"8' 8\"", '"8"'), 'height: 8" has no room for opening "Door"; write "8\'" if that is meant (a bare number is inches, '
                                 "\"12'\" is feet)"),
    (changed('"20\'"', '"1/16"'), 'length: 1/16" of masonry is shorter than the least piece; write at least 3 5/8" (a bare number is '
                                  "inches, \"12'\" is feet)"),
    (changed('"3\' 4"\n  height = "7\' 4"', '"17\'"\n  height = "7\' 4"'), "width: the opening reaches from 4'-0\" to 21'-0\", 1'-0\" past "
     "the wall's right end at 20'-0\"; write a shorter from_left or width, so that masonry is left beside it"),
    (changed('"20\'"', '"3\'"'), "length: 3'-0\" has no room for opening \"Window\", which is 4'-0\" wide, nor for others; write a larger "
                               "length, or smaller openings"),
    (changed("\"8' 8\"", "\"1'\""), "height: 1'-0\" has no room for opening \"Door\", which is 7'-4\" high, nor for others; write a larger "
                                   "height, or smaller openings"),
    (changed("height = \"8' 8\"", "courses = 1"), "courses: 8\" has no room for opening \"Door\", which is 7'-4\" high, nor for others; write "
                                              "a larger height, or smaller openings"),
    (KIOSK + '[order.mix]\nratio = "1:1:6"\n', "ratio: write each part by its name: cement = 1, lime = 1, sand = 6"),
    (masonry("joint = 0"), 'joint: nothing; write a joint, for this unit 3/8"'),
    (masonry("joint = 10"), 'joint: 10" is over a quarter of the unit; write at most 3 7/8", or "10 mm" if millimetres are meant'),
    (changed('"Water side"', '"Landing\u200b side"'), 'name: "Landing? side" holds a character that cannot be printed; write letters, '
                                                      "digits and signs on one line"),
])
def test_a_size_that_is_wrong_is_told_once_and_not_again_by_what_stands_in_it(text: str, told: str) -> None:
    assert said(text) == [told]


METRIC = ('title = "Pump house"\nmeasure = "metric"\n[masonry]\nunit = "block-uk-140"\n[[wall]]\nname = "Quay"\nlength = {}\nheight = {}\n'
          '[[wall.opening]]\nfrom_left = 1200\nwidth = 1000\nheight = 2000\n')


@pytest.mark.parametrize(("length", "height", "meant"), [
    ("6", "2400", 'write "6 m" if that is meant'), ("600", "2400", 'write "600 cm" if that is meant'), ("6000", "240", 'write "240 cm" if'),
    ("6000", "2.4", 'write at least 35 mm (a bare number is mm, "3.6 m" is metres)'),
])
def test_metres_and_centimetres_in_a_plan_in_millimetres(length: str, height: str, meant: str) -> None:
    (message,) = said(METRIC.format(length, height))
    assert meant in message


def test_an_own_unit_without_a_sound_key_is_not_missed_in_the_catalogue() -> None:
    own = ('[own_unit]\nkind = "brick"\nlength = "228 mm"\nheight = "68 mm"\nthickness = "110 mm"\njoint = "10 mm"\n'
           'key = "landing-brick"\n')
    named = changed('"block-8"', '"landing-brick"')
    assert said(named + own.replace('key = "landing-brick"\n', "")) == ['key: missing; write key = "landing-brick"']
    assert said(named + own.replace('"landing-brick"', '"block-8"')) == ['key: "block-8" is a unit of the catalogue; write another key']
    assert said(named + own.replace("[own_unit]", "[[own_unit]]")) == ["own_unit: a list is not a table; write [own_unit]"]
    (near,) = said(changed('"block-8"', '"landing-brik"') + own)
    assert near == ('unit: "landing-brik" is no unit of the catalogue; nearest: landing-brick, the plan\'s own; wallplan units shows '
                    "them all")


@pytest.mark.parametrize(("asked", "nearest"), [("CMU", "block-"), ('8\\" CMU', "block-8"), ("brick", "brick-modular"), ("kingsize", "brick-king")])
def test_the_nearest_unit_to_what_a_mason_calls_it(asked: str, nearest: str) -> None:
    assert f"nearest: {nearest}" in said(changed('"block-8"', f'"{asked}"'))[0]


def test_an_opening_may_be_higher_than_the_eaves_of_its_gable() -> None:
    text = METRIC.format("6000", "2400").replace("height = 2000", "height = 2600").replace("from_left = 1200", "from_left = 2500")
    gable = "[[wall.gable]]\nrise = 3000\n"
    assert read_plan(text.replace("[[wall.opening]]", gable + "[[wall.opening]]"), "pump.toml").walls[0].openings
