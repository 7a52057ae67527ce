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
    (UNIT, 'unit = "block-8";', '5: masonry: unit: "block-8";: more on the line than one value; put texts and lengths in quotes'),
    (UNIT, f"{UNIT}\nkeep_bond = True", "6: masonry: keep_bond: True cannot be read; write keep_bond = true"),
    (UNIT, f"{UNIT}\nkeep_bond = no", "6: masonry: keep_bond: no cannot be read; write keep_bond = false"),
    (UNIT, f"{UNIT}\n{UNIT}", "6: masonry: unit: a key given twice, or a key and a table of one name; keep one, or write the heading that it lacks"),
    (UNIT, 'un\u200bit = "block-8"', "5: un?it: a character that cannot be seen (U+200B) may not stand in a key; write key = value, "
                                     "with plain letters in the key"),
    ("[masonry]", "[masonry", '4: "[masonry": a heading that is not closed; write [masonry] or [[wall]]'),
    ('[[wall]]\nname = "Landing side"', '[[wall]\nname = "Landing side"', '7: "[[wall]": a heading that is not closed; write [masonry] or [[wall]]'),
    ("[masonry]", "[masonry]:", '4: "[masonry]:": more on the line than the heading; leave the rest out'),
    ("[masonry]", "(masonry)", '4: "(masonry)": neither a key nor a heading; write key = value, with plain letters in the key'),
    ("[masonry]", "[[wall.opening]]\n[[wall]]\n[masonry]", '5: "[[wall]]": a heading whose name is taken; keep one, and put [[wall]] '
                                                           "before its [[wall.opening]]"),
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
    for fault in ('x = """', "x = [1", "x = {a = 1,\nb = 2}", "x = [[1]"):
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
