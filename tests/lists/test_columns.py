"""Tables of text stay within the terminal."""

from wallplan.lists.columns import set_columns, set_rows, wrap_text

ROWS = [["mark", "offcut", "where"], ["A", '15 5/8" makes a B', "Landing side: 1, 3, 5"]]


def test_the_last_column_wraps_beside_the_others() -> None:
    assert set_columns(ROWS, 48) == (
        "mark  offcut             where\n"
        'A     15 5/8" makes a B  Landing side: 1, 3, 5')
    assert set_columns(ROWS, 45).splitlines()[-1] == " " * 25 + "5"


def test_where_no_room_is_left_it_stands_below() -> None:
    assert set_columns(ROWS, 40) == (
        "mark  offcut\n"
        "    where\n"
        'A     15 5/8" makes a B\n'
        "    Landing side: 1, 3, 5")


def test_no_rows() -> None:
    assert set_columns([], 40) == ""


def test_a_long_name_wraps_in_its_column_where_the_row_would_pass_the_width() -> None:
    name = "Side to the water, along the old boundary"
    rows = [["day", "wall", "units", "height"], ["1", name, "120", "4'-0"], ["2", "Road", "80", "8'-0"]]
    assert set_columns(rows, 44, right=frozenset({0, 2, 3})).splitlines() == [
        "day  wall                      units  height",
        "  1  Side to the water, along    120    4'-0",
        "       the old boundary",
        "  2  Road                         80    8'-0",
    ]
    assert [len(row.split("\n")) for row in set_rows(rows, 44, right=frozenset({0, 2, 3}))] == [1, 2, 1]


def test_a_word_that_is_too_long_is_broken_and_an_address_is_not() -> None:
    assert wrap_text("W" * 30 + ": gate", 20).splitlines() == ["W" * 20, "  " + "W" * 10 + ": gate"]
    address = "source: http://example.org/" + "a" * 30
    assert wrap_text(address, 20).splitlines()[1].strip() == address.split()[1]
