"""Where keys stand in TOML text, however it is written."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given, settings

from tests.long_run import examples
from tests.strategies import plan_texts
from wallplan.plan.lines import find_lines, line_of
from wallplan.plan.notebook import KeyPath

TEXT = '''\
# a plan
title = """
not = "a key"
[nor.a.table]
"""            # 2
"measure" = 'feet'
masonry.unit = "block-8"
masonry . 'bond' = "half"
own_unit = { key = "x", length = [
  1,
  2 ], "na\\u006de" = "}" }

[[wall]]
name = "North # [x]"
control_joints = [
  "5'",   # one
  "10'",
]
left = 1979-05-27 07:32:00
  [[wall.opening]]
  width = 3
  [[ wall . "opening" ]]
  sill = \'\'\'
  x = 1\'\'\'
  height = 4
[[wall]]
opening = [ { width = 1 },
            { width = 2, sill = {} } ]
'''

LINES: list[tuple[KeyPath, int]] = [
    (("title",), 2), (("measure",), 6), (("masonry",), 7), (("masonry", "unit"), 7), (("masonry", "bond"), 8),
    (("own_unit",), 9), (("own_unit", "key"), 9), (("own_unit", "length"), 9), (("own_unit", "name"), 11),
    (("wall",), 13), (("wall", 0), 13), (("wall", 0, "name"), 14), (("wall", 0, "control_joints"), 15),
    (("wall", 0, "control_joints", 1), 17), (("wall", 0, "left"), 19), (("wall", 0, "opening", 0), 20),
    (("wall", 0, "opening", 0, "width"), 21), (("wall", 0, "opening", 1), 22), (("wall", 0, "opening", 1, "sill"), 23),
    (("wall", 0, "opening", 1, "height"), 25), (("wall", 1), 26), (("wall", 1, "opening", 0, "width"), 27),
    (("wall", 1, "opening", 1, "width"), 28), (("wall", 1, "opening", 1, "sill"), 28),
]


def test_the_text_of_this_test_is_toml() -> None:
    assert set(tomllib.loads(TEXT)) == {"title", "measure", "masonry", "own_unit", "wall"}


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize(("path", "line"), LINES)
def test_a_key_is_found_on_its_line(path: KeyPath, line: int, ending: str) -> None:
    assert find_lines(TEXT.replace("\n", ending))[path] == line


def test_what_is_not_there_falls_back_on_the_table_around_it() -> None:
    lines = find_lines(TEXT)
    assert line_of(lines, ("wall", 0, "opening", 1, "width")) == 22
    assert line_of(lines, ("wall", 0, "length")) == 13
    assert line_of(lines, ("date",)) == 1
    assert line_of({}, ()) == 1


@pytest.mark.parametrize("text", ["", "x", "= 3", "[", "[[", "[[a", "a = ", "a = [", "a = {", "a = {b", 'a = "', "a = [[[[", "]", "a = {,"])
def test_unsound_text_ends_the_search(text: str) -> None:
    assert all(line == 1 for line in find_lines(text).values())


def test_deep_text_ends_the_search() -> None:
    assert ("a",) in find_lines("a = " + "[" * 100_000)


def paths_in(value: Any, path: KeyPath = ()) -> list[KeyPath]:
    """Every path of a read plan that leads to a key or a table."""
    if isinstance(value, dict):
        return [found for key, inner in value.items() for found in [(*path, key), *paths_in(inner, (*path, key))]]
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return [found for number, inner in enumerate(value) for found in paths_in(inner, (*path, number))]
    return []


@given(plan_texts())
@settings(max_examples=examples(40))
def test_every_key_that_tomllib_reads_is_found_on_a_line_that_holds_it(text: str) -> None:
    lines, rows = find_lines(text), text.split("\n")
    for path in paths_in(tomllib.loads(text)):
        assert str(path[-1]) in rows[lines[path] - 1]
