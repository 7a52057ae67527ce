"""The plan rewritten: only values change, what is noted stays, and it reads back to the job that was advised."""

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallplan.advice.advise import advise
from wallplan.advice.moves import Move, Thing, move_wall
from wallplan.advice.write import NotWritten, write_changes, write_value
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure, read_length
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan

PLAN = """\
# The landing, as measured.  from_left = "not a key"
title   = "Ferry landing"   # length = 3
measure = "feet"
sizes   = "{sizes}"
masonry = {{ unit = "block-8" }}

[[wall]]                    # length = "a note"
  name   = "Landing = side"
  "length" = "20' 5"        # out to out — measured \u2028 twice
  height = '8\\' 6"'
  control_joints = [        # the designer's
    '40"',  # "first"
    "15' 4",
  ]
  [[wall.opening]]
  name      = "Door"
  from_left = 75            # inches
  width     = "3' 4"  # the frame's
  height    = "7' 4"

[[wall]]
name = "Gable"
length = "8'"
courses = 13
opening = [{{ name = "Vent", from_left = "2'", width = '16"', sill = "4'", height = '16"' }}]
""".replace("'8\\' 6\"'", "\"8' 6\"")


def plan_and_job(sizes: str = "actual") -> tuple[str, Job]:
    """The plan's text and its job."""
    text = PLAN.format(sizes=sizes)
    return text, read_plan(text, "plan.toml")


def moved(job: Job, wall: int, *moves: Move) -> Job:
    """The job with these moves in one wall."""
    return replace(job, walls=tuple(move_wall(one, moves) if number == wall else one for number, one in enumerate(job.walls)))


def changed_lines(old: str, new: str) -> list[str]:
    """The lines of the new text that differ; both have as many."""
    olds, news = old.split("\n"), new.split("\n")
    assert len(olds) == len(news)
    return [line for was, line in zip(olds, news, strict=True) if was != line]


@pytest.mark.parametrize("sizes", ["actual", "nominal"])
def test_each_value_changes_where_it_stands_and_nothing_else(sizes: str) -> None:
    text, job = plan_and_job(sizes)
    new = moved(job, 0, Move(Thing("opening", 0), 5 * TICKS_PER_INCH // 8), Move(Thing("right end"), -5 * TICKS_PER_INCH),
                Move(Thing("control joint", 1), TICKS_PER_INCH), Move(Thing("top"), 2 * TICKS_PER_INCH))
    written = write_changes(text, job, new)
    assert changed_lines(text, written) == [
        '  "length" = "20\'"        # out to out — measured \u2028 twice', '  height = "8\' 8"', '    "15\' 5",',
        '  from_left = "6\' 3 5/8"            # inches']
    assert read_plan(written, "plan.toml").walls == new.walls


def test_a_key_in_an_inline_table_changes_too() -> None:
    text, job = plan_and_job()
    new = moved(job, 1, Move(Thing("sill", 0), 8 * TICKS_PER_INCH), Move(Thing("opening", 0), TICKS_PER_INCH))
    (line,) = changed_lines(text, write_changes(text, job, new))
    assert line == 'opening = [{ name = "Vent", from_left = "2\' 1", width = \'16"\', sill = "4\' 8", height = \'8"\' }]'


def test_a_left_end_moves_all_that_is_measured_from_it() -> None:
    text, job = plan_and_job()
    new = moved(job, 0, Move(Thing("left end"), -TICKS_PER_INCH))
    assert [line.split("#")[0].strip() for line in changed_lines(text, write_changes(text, job, new))] == [
        '"length" = "20\' 6"', "'41\"',".replace("'41\"'", '"3\' 5"'), '"15\' 5",', "from_left = 76"]


def test_a_key_that_is_not_there_is_told_and_nothing_written() -> None:
    text, job = plan_and_job()
    with pytest.raises(NotWritten, match="sill is not written in the plan"):
        write_changes(text, job, moved(job, 0, Move(Thing("sill", 0), TICKS_PER_INCH)))


@pytest.mark.parametrize("sample", sorted((Path(__file__).parents[2] / "samples").glob("[bp]*.toml")), ids=lambda p: p.stem)
def test_samples_are_rewritten_to_what_was_advised(sample: Path) -> None:
    text = sample.read_text(encoding="utf-8")
    job = read_plan(text, sample.name)
    advice = advise(job)
    written = write_changes(text, job, advice.advised)
    assert read_plan(written, sample.name).walls == advice.advised.walls
    assert [line.split("#")[1:] for line in text.split("\n")] == [line.split("#")[1:] for line in written.split("\n")]


@given(st.integers(1, 10**9), st.sampled_from(["feet", "metric"]), st.booleans())
def test_every_length_is_written_to_the_tick(ticks: int, measure: Measure, bare: bool) -> None:
    value = tomllib.loads(f"x = {write_value(ticks, measure, bare=bare)}")["x"]
    assert read_length(value, measure) == ticks


@pytest.mark.parametrize(("ticks", "measure", "written"), [
    (20 * 12 * TICKS_PER_INCH, "feet", '"20\'"'), (8 * TICKS_PER_INCH, "feet", "'8\"'"),
    (15 * TICKS_PER_INCH + 5 * TICKS_PER_INCH // 8, "feet", '"1\' 3 5/8"'), (8128, "feet", "'1/3\"'"),
    (1790 * TICKS_PER_MM, "metric", '"1790"'), (5155 * TICKS_PER_MM // 2, "metric", '"2577 1/2"'),
])
def test_lengths_are_written_as_a_mason_would(ticks: int, measure: Measure, written: str) -> None:
    assert write_value(ticks, measure) == written
