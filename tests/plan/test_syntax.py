"""Lines that are no TOML: what is said of each, that all are told at once, and that nothing is told on account of them."""

from __future__ import annotations

import pytest

from tests.plan.kiosk import KIOSK, changed
from wallplan.findings import PlanError
from wallplan.plan.load import read_plan
from wallplan.plan.syntax import MOST_UNREAD, read_toml


def told(text: str) -> list[str]:
    with pytest.raises(PlanError) as refused:
        read_plan(text, "kiosk.toml")
    return [str(mistake).removeprefix("kiosk.toml:") for mistake in refused.value.mistakes]


LENGTH, UNIT, WALL = "length = \"20'\"", 'unit = "block-8"', 'wall "Landing side": '


@pytest.mark.parametrize(("old", "new", "said"), [
    (LENGTH, "length = 20'", f"""9: {WALL}length: 20': more on the line than one value; put texts and lengths in quotes, length = "20'\""""),
    (LENGTH, "length = “20’”", f"""9: {WALL}length: “20’” stands in curly quotes, which some programs put in by themselves; write straight ones, length = "20'\""""),
    (LENGTH, "length = ", f"9: {WALL}length: no value that can be read; write one after the equals sign"),
    (LENGTH, 'length = "20,5\'"', f"""9: {WALL}length: "20,5'" is not a length; write a decimal point, no comma, "20.5'\""""),
    (LENGTH, "length: \"20'\"", f"""9: {WALL}length: a key without an equals sign; write length = "20'\""""),
    (UNIT, "unit = block-8", '5: masonry: unit: block-8: no value that can be read; put texts and lengths in quotes, unit = "block-8"'),
    (UNIT, 'unit = "block-8', "5: masonry: unit: a text whose closing quote is missing; close it on the same line"),
    (UNIT, 'unit = "block-8";', '5: masonry: unit: "block-8";: a ";" behind the value; leave it out, unit = "block-8"'),
    (UNIT, f"{UNIT}\nkeep_bond = True", "6: masonry: keep_bond: True cannot be read; write keep_bond = true"),
    (UNIT, f"{UNIT}\nkeep_bond = no", "6: masonry: keep_bond: no cannot be read; write keep_bond = false"),
    (UNIT, f"{UNIT}\n{UNIT}", "6: masonry: unit: a key given twice, or a key and a table of one name; keep one, or write the heading that it lacks"),
    (UNIT, 'un\u200bit = "block-8"', "5: un?it: a character that cannot be seen (U+200B) may not stand in a key; write key = value, "
                                     "with plain letters in the key"),
    ("[masonry]", "[masonry", '4: "[masonry": a heading that is not closed; write [masonry]'),
    ('[[wall]]\nname = "Landing side"', '[[wall]\nname = "Landing side"', f'7: {WALL}"[[wall]": a heading that is not closed; write [[wall]]'),
    ("[masonry]", "[masonry]:", '4: "[masonry]:": more on the line than the heading; leave the rest out'),
    ("[masonry]", "(masonry)", '4: "(masonry)": no heading that can be read; write [masonry]'),
    ("[masonry]", "[[wall.opening]]\n[masonry]", '4: "[[wall.opening]]": stands above every [[wall]]; put it below the '
                                                           "[[wall]] it belongs to"),
    (UNIT, 'unit = "bl\0ck"', "5: masonry: unit: a character that may not stand here (\\x00); take it out"),
])
def test_a_line_that_is_no_toml_is_told_with_what_stands_on_it(old: str, new: str, said: str) -> None:
    first, *more = told(changed(old, new))
    assert first.partition(": a length that ends")[0] == said and more == []


def test_lines_that_end_with_a_carriage_return_alone() -> None:
    (said,) = told(KIOSK.replace("\n", "\r"))
    assert "save the plan as plain text with ordinary line ends" in said


def test_every_line_that_cannot_be_read_is_told_at_once_and_other_mistakes_with_them() -> None:
    text = changed('title = "Ferry landing"', "title = Ferry landing").replace(UNIT, 'unit: "block-8"').replace(
        "length = \"12'\"", "length = 12'\nheigth = \"8'\"")
    assert [line.partition(":")[0] for line in told(text)] == ["1", "5", "27", "28"]
    assert "heigth: unknown key; the nearest is height" in told(text)[-1]


def test_a_value_that_cannot_be_read_counts_as_it_was_meant_and_nothing_else_is_told_for_it() -> None:
    # Were the length left out, it would be missed; were it nothing, the openings would not fit.
    assert len(told(changed(LENGTH, "length = 20'"))) == 1
    # A key given twice may mean either: what hangs on it is not told.
    assert len(told(changed(LENGTH, f"{LENGTH}\nlength = \"4'\""))) == 1
    assert len(told(changed("courses = 13", "courses = 13,"))) == 1
    assert told(changed("courses = 13", "courses = 13.5")) == [
        '28: wall "Water side": courses: 13.5 is not a whole number; write courses = 13']


def test_a_fault_that_may_reach_over_lines_ends_the_reading() -> None:
    for fault in ('x = """', "x = [1", "x = [1\n[[wall]]", "x = {a = 1,\nb = 2}", "x = [[1]"):
        reading = read_toml(f"a = b\n{fault}\nc = d\n")
        assert reading.tables is None and reading.mistakes[0].line == 1 and len(reading.mistakes) == 2


def test_no_more_lines_are_told_than_are_soon_read() -> None:
    reading = read_toml("".join(f"k{number} = half\n" for number in range(500)))
    assert reading.tables is None and len(reading.mistakes) == MOST_UNREAD
    assert len(read_toml("a = half\nb = third\n" + "#" * 40_000).mistakes) == 1


@pytest.mark.parametrize(("written", "measure", "meant"), [
    ("20,5'", "feet", 'a decimal point, no comma, "20.5\'"'), ("8', 8", "feet", 'it without the comma, "8\' 8"'),
    ("1,200'", "feet", 'it without the comma, "1200\'"'), ("12' 4,5", "feet", 'a decimal point, no comma, "12\' 4.5"'),
    ("3,6 m", "metric", 'a decimal point, no comma, "3.6 m"'), ("3,600 m", "metric", 'a decimal point, no comma, "3.600 m"'),
    ("3,600 mm", "metric", 'it without the comma, "3600 mm"'), ("3,600", "metric", 'it without the comma, "3600"'),
    ("1,2,3", "metric", 'a decimal point, no comma, for example 3600 or "3.6 m"'),
])
def test_a_comma_in_a_length_is_a_point_or_thousands(written: str, measure: str, meant: str) -> None:
    (said,) = told(changed('measure = "feet"', f'measure = "{measure}"').replace("\"12'\"", f'"{written}"'))
    assert said.endswith(f"is not a length; write {meant}")


def test_mistakes_in_an_orders_tables_name_the_table() -> None:
    said = told(KIOSK + '[order.steel]\nbar = "4"\n[order.cap]\nname = ""\nlength = 10\n')
    assert [line.partition(": ")[2].partition(": ")[0] for line in said] == ["order, steel", "order, cap"]


def test_a_key_of_another_table_is_sent_there_though_a_key_here_is_like_it() -> None:
    assert told(changed('measure = "feet"', 'measure = "feet"\nunit = "block-8"'))[0].endswith("unknown key here; it belongs under [masonry]")


@pytest.mark.parametrize(("old", "new", "said"), [
    # Quotes of all kinds.
    (UNIT, "unit = ”block-8”", "5: masonry: unit: ”block-8” stands in curly quotes, which some programs put in by themselves; write "
                               'straight ones, unit = "block-8"'),
    (LENGTH, "length = '20''", f"""9: {WALL}length: '20'': more on the line than one value; put texts and lengths in quotes, length = "20'\""""),
    (LENGTH, 'length = "20\'-4""', f"""9: {WALL}length: "20'-4"": more on the line than one value; put texts and lengths in quotes, length = "20' 4\""""),
    (LENGTH, "length = '20'-4\"'", f"""9: {WALL}length: '20'-4"': more on the line than one value; put texts and lengths in quotes, length = "20' 4\""""),
    (UNIT, 'unit = block-8"', '5: masonry: unit: block-8": a text whose opening quote is missing; write unit = "block-8"'),
    ('"Water side"', "'Water's side'", '26: wall "Water\'s side": name: \'Water\'s side\': quotes inside quotes of one kind; write name = '
                                      '"Water\'s side"'),
    ('title = "Ferry landing"', 'title = "C:\\Users\\ferry"', "1: title: a backslash in a text; put the text in single quotes"),
    # More than a value.
    (LENGTH, f"{LENGTH},", f"""9: {WALL}length: "20'",: a "," behind the value; leave it out, length = "20'\""""),
    (LENGTH, f"{LENGTH} // out to out", f"""9: {WALL}length: "20'" // out to out: a note begins with #; write length = "20'"  # out to out"""),
    (UNIT, f"// a note\n{UNIT}", '5: "// a note": a note begins with #; write # a note'),
    (LENGTH, f"{LENGTH} height = \"8' 8\"", f"""9: {WALL}length: two keys on one line; write length = "20'", and height = "8' 8" on a line of its own"""),
    (UNIT, f"unit == {UNIT[7:]}", '5: masonry: unit: more than an equals sign; write unit = "block-8"'),
    (LENGTH, "length := \"20'\"", f"""9: {WALL}length: a key without an equals sign; write length = "20'\""""),
    # Values that are no texts.
    ("courses = 13", "courses = 13 courses", '28: wall "Water side": courses: 13 courses is no number that can be read; write courses = 13'),
    ("courses = 13", "courses = 13\nbond_beams = (7, 13)", '29: wall "Water side": bond_beams: (7, 13) is no list; write bond_beams = [7, 13]'),
    ("courses = 13", "courses = 13\ncontrol_joints = [\"4'\" \"8'\"]", '29: wall "Water side": control_joints: no comma between the items of a '
                                                                    "list; write control_joints = [\"4'\", \"8'\"]"),
    (UNIT, f"{UNIT}\nkeep_bond = maybe", "6: masonry: keep_bond: maybe cannot be read; write keep_bond = true or false"),
    ('measure = "feet"', 'measure = "feet"\ndate = 2031-13-45', "3: date: 2031-13-45 is no day of any year; write date = 2031-04-02"),
    # Letters that cannot be seen.
    (f"[masonry]\n{UNIT}", f"[masonry]\n\u00a0{UNIT}", "5: masonry: unit: a character that cannot be seen (U+00A0) may not stand before a key; take it out"),
    ("[masonry]", "\ufeff[masonry]", '4: "?[masonry]": a character that cannot be seen (U+FEFF) may not stand here; take it out'),
    # Headings.
    ('[[wall]]\nname = "Landing side"', '[wall]\nname = "Landing side"', f'7: {WALL}"[wall]": one pair of brackets; write [[wall]]'),
    ('[[wall]]\nname = "Landing side"', '[[wall North]]\nname = "Landing side"', f'7: {WALL}"[[wall North]]": no heading that can be read; write '
     "[[wall]], and name = ... on a line of its own"),
    ('[[wall]]\nname = "Landing side"', '[[wall]] name = "Landing side"', '7: wall 1: "[[wall]] name = "Landing side"": more on the line than the '
     'heading; write name = "Landing side" on a line of its own'),
    ('[[wall.opening]]\n  name = "Door"', '[[wall opening]]\n  name = "Door"',
     '12: wall "Landing side", opening "Door": "[[wall opening]]": no heading that can be read; write [[wall.opening]]'),
    ('  from_left = "4\'"', '  from left = "4\'"', '14: wall "Landing side", opening "Door": from_left: "from left" is a key of several words; '
     'write from_left = "4\'"'),
])
def test_a_slip_of_the_pen_is_told_once_with_what_to_write_in_its_place(old: str, new: str, said: str) -> None:
    text = changed(old, new) if KIOSK.count(old) == 1 else KIOSK.replace(old, new, 1)
    first, *more = told(text)
    assert first.partition("; a length that ends")[0] == said and more == []


@pytest.mark.parametrize("value", ['\x07block-8"', "block\u202e8", '"' + "x" * 5000 + '" // y', "“" + "x" * 5000 + "”"])
def test_letters_that_cannot_be_seen_and_long_values_do_not_reach_the_terminal(value: str) -> None:
    (said,) = told(changed(UNIT, f"unit = {value}"))
    assert said.isprintable() and len(said) < 200


def test_single_brackets_are_all_told_with_what_stands_under_them() -> None:
    text = KIOSK.replace("[[", "[").replace("]]", "]").replace("courses = 13", "curses = 13")
    assert [line.partition(":")[0] for line in told(text)] == ["7", "12", "18", "25", "28"]


def test_what_is_told_of_a_key_given_twice_says_nothing_of_its_marks() -> None:
    (said,) = told(changed("height = \"8' 8\"", "height = \"8' 8\"\nheight = \"8' 8\""))
    assert "inch mark" not in said
