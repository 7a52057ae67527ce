"""``wallplan advise`` as a user meets it."""

import json
from pathlib import Path

import pytest

from tests.cli.running import SAMPLES, run

FEET_OFF = """\
title = "Ferry landing"          # as sketched
measure = "feet"
[masonry]
unit = "block-8"
[[wall]]
name = "Gable"
length = "10' 2"                 # paced
height = "4'"
"""


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    """A wall of 10 ft 2 in., which is 2 3/8 in. over 7 1/2 blocks."""
    path = tmp_path / "gable.toml"
    path.write_text(FEET_OFF, encoding="utf-8")
    return path


def test_a_plan_that_fits_gets_the_one_line() -> None:
    shown = run("advise", SAMPLES / "ticket-kiosk.toml")
    assert (shown.returncode, shown.stderr) == (0, "")
    assert shown.stdout == "Ticket kiosk: it fits. Nothing is cut and no rule is broken.\n"


def test_the_move_its_saving_and_who_decides(plan: Path) -> None:
    shown = run("advise", plan)
    flat = " ".join(shown.stdout.split())
    assert shown.returncode == 0
    assert "1. Gable: cutting 6 to 0, sawn pieces 6 to 0" in flat
    assert "wall 2 3/8\" shorter at its right end: 9'-11 5/8\"" in flat
    assert "Whoever owns a dimension decides" in flat
    assert shown.stderr == ""
    assert max(map(len, shown.stdout.splitlines())) <= 80


def test_write_keeps_the_notes_and_never_overwrites(plan: Path) -> None:
    shown = run("advise", plan, "--write")
    target = plan.with_name("gable-advised.toml")
    assert shown.returncode == 0
    assert str(target) in shown.stderr
    assert target.read_text(encoding="utf-8") == FEET_OFF.replace('"10\' 2"', '"9\' 11 5/8"')
    assert plan.read_text(encoding="utf-8") == FEET_OFF
    assert run("advise", target).stdout.startswith("Ferry landing: it fits.")
    again = run("advise", plan, "--write")
    assert (again.returncode, again.stdout) == (3, "")
    assert again.stderr == f"{target}: is there already and stays as it is; move it away first\n"


def test_two_plans_side_by_side(plan: Path) -> None:
    run("advise", plan, "--write")
    shown = run("advise", plan, plan.with_name("gable-advised.toml"))
    rows = {line[:20].strip(): line[20:].split() for line in shown.stdout.splitlines() if line[:1].isalpha()}
    assert shown.returncode == 0
    assert rows["cutting"] == ["6", "0", "-6"]
    assert rows["saw settings"] == ["1", "0", "-1"]
    assert rows["broken places"] == ["0", "0", "same"]


def test_json_is_clean_and_versioned(plan: Path) -> None:
    told = json.loads(run("advise", plan, "--json", "-").stdout)
    assert (told["wallplan_advice"], told["fits"], told["proven"]) == (1, False, True)
    (move,) = told["proposals"][0]["moves"]
    # 2 3/8 in. x 25.4 mm.
    assert (move["what"], move["by"]) == ("right end", -60.325)
    assert told["as_planned"]["cutting"] == 6 and told["all_made"]["cutting"] == 0
    length = next(size for size in told["sizes"] if size["what"] == "length")
    assert (length["off"], length["taken"]) == (60.325, "broken")
    both = json.loads(run("advise", plan, plan, "--json", "-").stdout)
    assert [one["figures"]["cutting"] for one in both["plans"]] == [6, 6]


def test_alternatives_in_a_table(plan: Path) -> None:
    shown = run("advise", plan, "--alternatives").stdout
    names = [line.split("  ")[0] for line in shown.split("Alternatives")[1].splitlines()[4:]]
    assert names[:4] == ["third bond", "quarter bond", "stack bond", 'joints all 3/8"']
    assert "flemish" not in shown, "a wall with headers is one brick thick: another wall"


def test_advice_that_breaks_a_rule_as_it_is_ends_with_one() -> None:
    assert run("advise", SAMPLES / "breaks-a-rule.toml").returncode == 1


@pytest.mark.parametrize("words", [("--write",), ("--alternatives",), ("--thorough",)])
def test_two_plans_are_only_compared(plan: Path, words: tuple[str, ...]) -> None:
    shown = run("advise", plan, plan, *words)
    assert (shown.returncode, len(shown.stderr.splitlines())) == (2, 1)
    assert not plan.with_name("gable-advised.toml").exists()


def test_a_plan_with_mistakes_is_told_and_nothing_written(tmp_path: Path) -> None:
    plan = tmp_path / "bad.toml"
    plan.write_text(FEET_OFF.replace('"10\' 2"', '"10-2"'), encoding="utf-8")
    shown = run("advise", plan, "--write")
    assert (shown.returncode, len(shown.stderr.splitlines())) == (2, 1)
    assert list(tmp_path.iterdir()) == [plan]


def test_one_of_a_kind_is_told_as_one() -> None:
    # 38 in. with joints that do not move: a cut of 14 in. in each of the courses, all at one setting of the saw.
    flat = " ".join(run("advise", SAMPLES / "pier.toml").stdout.split())
    assert ", 1 saw setting, " in flat and " 1 saw settings" not in flat


def test_lay_tells_what_is_off_the_module(plan: Path) -> None:
    flat = " ".join(run("lay", plan).stdout.split())
    assert "Fit: 1 of 2 sizes is off the module or the coursing." in flat
    assert 'length, 10\'-2": 2 3/8" over; no joint takes it: make it 9\'-11 5/8"; else cut in the middle' in flat
    assert "Fit: every length, opening, sill and head stands on the module." in run("lay", SAMPLES / "ticket-kiosk.toml").stdout


def test_the_sheet_of_alternatives_is_written_where_it_is_asked_for(tmp_path: Path) -> None:
    shown = run("advise", SAMPLES / "pier.toml", "--sheet", "--into", tmp_path / "out")
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == [
        "gate-pier-alternatives.pdf", "gate-pier-alternatives.svg"]
    assert "third bond" in shown.stdout and "is written" in shown.stderr
    refused = run("advise", SAMPLES / "pier.toml", "--into", tmp_path / "other")
    assert refused.returncode == 2 and "add --sheet" in refused.stderr
    assert not (tmp_path / "other").exists()
