"""Tables of text stay within the terminal."""

from wallplan.lists.columns import set_columns

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
