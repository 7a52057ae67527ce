"""The page about the plan file: written from the schema, whole, and true."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import get_type_hints

import pytest

from tests.plan.kiosk import mistakes_in
from wallplan.lengths import read_length
from wallplan.plan.describe import EXAMPLE, describe_plan_file
from wallplan.plan.load import read_plan
from wallplan.plan.outline_schema import StepTable
from wallplan.plan.schema import (
    REQUIRED,
    TABLES,
    AdviceTable,
    Length,
    OwnUnitTable,
    Table,
    default_of,
    example_of,
    key_of,
    list_keys,
    read_table,
)

PAGE = Path(__file__).parents[2] / "docs" / "plan-file.md"
KEYS = [(table, key) for _, table in TABLES for key in list_keys(table)]


def test_the_page_in_docs_is_the_one_the_schema_writes() -> None:
    assert PAGE.read_text(encoding="utf-8") == describe_plan_file()


@pytest.mark.parametrize(("table", "key"), KEYS)
def test_every_key_has_a_meaning_a_default_and_an_example(table: type[Table], key: str) -> None:
    assert len(key_of(table, key).meaning) > 10
    assert default_of(table, key)
    assert f"| `{key}` | {key_of(table, key).meaning} |" in describe_plan_file()


@pytest.mark.parametrize(("table", "key"), [(table, key) for table, key in KEYS if example_of(table, key)[0] != "["])
def test_every_example_is_allowed_where_it_stands(table: type[Table], key: str) -> None:
    assert getattr(read_table(table, tomllib.loads(example_of(table, key))), key) is not None


@pytest.mark.parametrize(("table", "key"), [
    (table, key) for table, key in KEYS if get_type_hints(table)[key] is Length and key not in ("half", "date")])
def test_every_example_of_a_length_means_the_same_in_both_measures(table: type[Table], key: str) -> None:
    value = tomllib.loads(example_of(table, key))[key]
    for one in value if isinstance(value, list) else [value]:
        assert read_length(one, "feet") == read_length(one, "metric") > 0


def test_the_example_plan_can_be_laid_and_shows_the_least_that_is_needed() -> None:
    job = read_plan(EXAMPLE, "kiosk.toml")
    assert [len(wall.openings) for wall in job.walls] == [2, 0]
    assert f"```toml\n{EXAMPLE}```" in describe_plan_file()


def test_what_is_marked_required_is_refused_when_it_is_missing() -> None:
    known = KEYS[:KEYS.index((StepTable, "at"))] + KEYS[KEYS.index((AdviceTable, "farthest")):KEYS.index((OwnUnitTable, "key"))]
    needed = {key for table, key in known if default_of(table, key) == REQUIRED}
    assert needed == {"title", "measure", "masonry", "wall", "unit", "name", "length", "from_left", "width", "height"}
    for key in needed - {"masonry", "wall"}:
        text = re.sub(rf"(?m)^ *{key} +=.*\n", "", EXAMPLE)
        assert any(message.startswith(f"{key}: missing") for _, _, message in mistakes_in(text))


def test_the_mistakes_that_the_page_shows_are_told_so() -> None:
    text = EXAMPLE.replace('bond = "half"', 'bond = "haalf"').replace('"2\' 8"', '"2-8"')
    shown = describe_plan_file().split("When something is wrong")[1].split("```")[1].strip().split("\n")
    assert [f"kiosk.toml:{line}: {where}: {message}" for line, where, message in mistakes_in(text)] == shown


def test_the_lengths_that_the_page_shows_mean_what_it_says() -> None:
    rows = dict(re.findall(r"(?m)^\| (`.*`) \| (.*) \|$", describe_plan_file().split("## Lengths")[1].split("In a metric")[0]))
    for texts, meaning in rows.items():
        numbers = re.fullmatch(r"(?:(\d+) feet)? ?(?:(\S+(?: \d/\d)?) inches)?", meaning)
        for toml in re.findall(r"`([^`]+)`", texts):
            ticks = read_length(tomllib.loads(f"x = {toml}")["x"], "feet")
            if numbers and any(numbers.groups()):
                assert ticks == read_length(f"{numbers[1] or 0}' {numbers[2] or 0}", "feet")
