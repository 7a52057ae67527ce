"""Every command as a user meets it: what it prints, what it writes, how it ends."""

import csv
import io
import json
import re
import stat
from pathlib import Path

import pytest
from wallplan_cli.main import app

from tests.cli.running import SAMPLES, names_in, run

COMMANDS = [command.callback.__name__ for command in app.registered_commands if command.callback]
EXAMPLES = [command.epilog or "" for command in app.registered_commands]


@pytest.mark.parametrize("command", COMMANDS)
def test_help_shows_an_example(command: str) -> None:
    shown = run(command, "--help")
    assert shown.returncode == 0
    assert f"Example: wallplan {command}" in shown.stdout


@pytest.mark.parametrize("example", EXAMPLES)
def test_the_example_of_the_help_runs(example: str, tmp_path: Path) -> None:
    words = example.removeprefix("Example: wallplan ").split()
    placed = [str(tmp_path / word) if word in ("my-wall.toml", "kiosk-sheets", "kiosk-lesson") else word for word in words]
    assert run(*placed, typed="\n" * 20).returncode == 0


@pytest.mark.parametrize("sample", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
@pytest.mark.parametrize("width", [80, 120])
def test_lay_draws_within_the_terminal(sample: Path, width: int) -> None:
    shown = run("lay", sample, width=width)
    assert shown.returncode == (1 if sample.stem.startswith("breaks") else 0), shown.stderr
    assert shown.stderr == ""
    assert max(map(len, shown.stdout.splitlines())) <= width


def test_json_on_standard_output_is_clean() -> None:
    shown = run("lay", SAMPLES / "ticket-kiosk.toml", "--json", "-")
    told = json.loads(shown.stdout)
    assert told["wallplan_layout"] == 1
    wall = told["walls"][0]
    assert wall["cutting"] == wall["cutting_at_least"] == 0
    # 20 ft nominal less a 3/8 in joint: 239.625 in x 25.4 mm.
    assert wall["length"] == 6086.475
    assert {piece["shape"] for course in wall["courses"] for piece in course["pieces"]} >= {"lintel", "bond beam", "corner"}


def test_json_into_a_file_and_the_report_on_the_terminal(tmp_path: Path) -> None:
    target = tmp_path / "deep" / "layout.json"
    shown = run("lay", SAMPLES / "pier.toml", "--json", target)
    assert json.loads(target.read_text(encoding="utf-8"))["title"] == "Gate pier"
    assert "Gate pier" in shown.stdout


def test_a_broken_rule_ends_with_one_and_says_where_and_what_mends_it() -> None:
    for command in ("lay", "check"):
        shown = run(command, SAMPLES / "breaks-a-rule.toml")
        assert shown.returncode == 1
        flat = " ".join(shown.stdout.split())
        assert re.search(r"BROKEN least piece, course \d+, \S+ from the left end: .*?; limit", flat)
        assert "mend:" in shown.stdout


def test_check_tells_every_rule_with_its_source() -> None:
    shown = run("check", SAMPLES / "ticket-kiosk.toml")
    assert shown.returncode == 0
    rules = re.findall(r"^  held   ([a-z ]+):", shown.stdout, re.MULTILINE)
    assert rules == ["cover", "joints", "coursing", "lap", "least piece", "plumb", "openings", "control joints",
                     "units", "letters"]
    assert len(re.findall(r"^      source:", shown.stdout, re.MULTILINE)) == len(rules)


def test_cuts_as_a_table_and_as_csv() -> None:
    table = run("cuts", SAMPLES / "pier.toml").stdout
    assert re.search(r'^A +14" +full +6 +full', table, re.MULTILINE)
    rows = list(csv.reader(io.StringIO(run("cuts", SAMPLES / "pier.toml", "--csv", "-").stdout)))
    assert rows[0][:4] == ["mark", "length (in)", "height (in)", "count"]
    assert rows[1][:4] == ["A", "14", "", "6"]


def test_order_as_a_table_as_csv_and_as_clean_json(tmp_path: Path) -> None:
    table = run("order", SAMPLES / "pier.toml", "--csv", tmp_path / "order.csv", width=90)
    assert table.returncode == 0 and max(map(len, table.stdout.splitlines())) <= 90
    assert re.search(r"^  block-8 full +6 +1 +7 +each$", table.stdout, re.MULTILINE)
    told = json.loads(run("order", SAMPLES / "tool-store-order.toml", "--json", "-").stdout)
    assert told["wallplan_order"] == 1
    assert {line["group"] for line in told["lines"]} == {"units", "mortar", "grout", "steel", "other"}
    rows = list(csv.reader(io.StringIO((tmp_path / "order.csv").read_bytes().decode())))
    assert rows[0][:3] == ["group", "item", "measure"] and rows[1][:6] == ["units", "block-8 full", "each", "6", "1", "7"]


def test_two_orders_side_by_side_and_calls_that_cannot_be_used() -> None:
    both = run("order", SAMPLES / "pier.toml", SAMPLES / "ticket-kiosk.toml")
    # By pencil: courses 1 to 12 have 36 + 22 + 21 + 27 + 3 full blocks beside lintels, 29 of them at an end or a jamb as corner
    # units; 80 are left and 4 spare.
    assert re.search(r"^block-8 full +7 +84 +\+77 +each$", both.stdout, re.MULTILINE)
    for words in (("--json", "-", "--csv", "-"), (SAMPLES / "pier.toml", "--csv", "-")):
        refused = run("order", SAMPLES / "pier.toml", *words)
        assert (refused.returncode, refused.stdout, len(refused.stderr.splitlines())) == (2, "", 1)


def test_sheets_writes_svg_pdf_and_csv_and_names_them(tmp_path: Path) -> None:
    shown = run("sheets", SAMPLES / "boat-store.toml", "--into", tmp_path / "out")
    assert shown.returncode == 0, shown.stderr
    names = names_in(tmp_path / "out")
    assert names == {
        "boat-store-wall-water-side.svg", "boat-store-wall-north-gable.svg", "boat-store-wall-south-gable.svg",
        "boat-store-sheets.svg", "boat-store-courses.svg", "boat-store-courses-2.svg", "boat-store-pole.svg", "boat-store-leads.svg",
        "boat-store-marks-water-side.svg", "boat-store-marks-north-gable.svg", "boat-store-marks-south-gable.svg",
        "boat-store-order.svg", "boat-store-order-2.svg",
        "boat-store-days.svg", "boat-store-days.csv",
        "boat-store.pdf", "boat-store-marks.csv", "boat-store-saw-list.csv", "boat-store-order.csv",
    }
    assert sorted(shown.stdout.split()) == sorted(str(tmp_path / "out" / name) for name in names)


def test_only_the_list(tmp_path: Path) -> None:
    run("sheets", SAMPLES / "pier.toml", "--into", tmp_path, "--only", "saw-list")
    assert names_in(tmp_path) == {"gate-pier-saw-list.csv", "gate-pier-saw-list.svg", "gate-pier.pdf"}
    run("sheets", SAMPLES / "ticket-kiosk.toml", "--into", tmp_path / "uncut", "--only", "saw-list")
    assert names_in(tmp_path / "uncut") == {"ticket-kiosk-saw-list.csv"}


@pytest.mark.parametrize(("words", "told"), [
    (("--paper", "foolscap"), '--paper: "foolscap" is not a paper; write one of letter, tabloid, A4, A3'),
    (("--full-size", "--only", "wall"), "--full-size is of the story pole; add --only pole"),
    (("--face", "back"), '--face: "back" is not a face; write one of outside, inside'),
    (("--only", "poles"), '--only: "poles" is not a sheet; write one of wall, course, marks, pole, leads, saw-list, '
                            'order, days'),
])
def test_a_call_that_cannot_be_used_is_one_line_and_two(words: tuple[str, ...], told: str, tmp_path: Path) -> None:
    shown = run("sheets", SAMPLES / "pier.toml", "--into", tmp_path / "out", *words)
    assert (shown.returncode, shown.stderr.strip()) == (2, told)
    assert not (tmp_path / "out").exists()


def test_all_mistakes_of_a_plan_at_once_and_nothing_written(tmp_path: Path) -> None:
    plan = tmp_path / "bad.toml"
    plan.write_text('title = "Shed"\nmeasure = "feet"\n[masonry]\nunit = "block-9"\n[[wall]]\nname = "N"\nlenght = "20\'"\n'
                    'height = "8-8"\n', encoding="utf-8")
    shown = run("sheets", plan)
    assert shown.returncode == 2
    assert not (tmp_path / "bad").exists()
    assert [line.split(": ")[0] for line in shown.stderr.splitlines()] == [f"{plan}:{n}" for n in (4, 7, 8)]
    assert "length" in shown.stderr and "Traceback" not in shown.stderr


@pytest.mark.parametrize("command", ["lay", "check", "cuts", "order", "sheets"])
def test_a_folder_and_a_missing_file_are_one_line(command: str, tmp_path: Path) -> None:
    for plan in (tmp_path, tmp_path / "none.toml"):
        shown = run(command, plan)
        assert shown.returncode == 2
        assert len(shown.stderr.splitlines()) == 1


def test_what_was_there_survives_a_folder_that_cannot_be_written(tmp_path: Path) -> None:
    target = tmp_path / "out"
    target.write_text("a file where a folder should be", encoding="utf-8")
    shown = run("sheets", SAMPLES / "pier.toml", "--into", target)
    assert shown.returncode == 3
    assert len(shown.stderr.splitlines()) == 1
    assert target.read_text(encoding="utf-8") == "a file where a folder should be"


def test_new_writes_a_plan_that_can_be_laid(tmp_path: Path) -> None:
    plan = tmp_path / "wall.toml"
    answers = ["Kiosk \"A\" <b>", "feet", "block-8", "half", "Front", "19' 11 5/8", "8' 8", "1", "Door", "4'", "3' 4 3/8",
               "0", "7' 4"]
    assert run("new", plan, typed="\n".join(answers) + "\n").returncode == 0
    assert run("lay", plan).returncode == 0
    assert stat.S_IMODE(plan.stat().st_mode) & 0o600 == 0o600


def test_new_asks_again_and_never_overwrites(tmp_path: Path) -> None:
    plan = tmp_path / "wall.toml"
    shown = run("new", plan, typed="\n\nblock-9\nblock-8\n\n\nlong\n20'\n\n\n")
    assert shown.returncode == 0
    assert "not in the catalogue" in shown.stderr or "block-9" in shown.stderr
    assert '"long" is not a length' in shown.stderr
    before = plan.read_bytes()
    again = run("new", plan, typed="\n" * 20)
    assert again.returncode == 3
    assert plan.read_bytes() == before


def test_new_stopped_half_way_writes_nothing(tmp_path: Path) -> None:
    assert run("new", tmp_path / "wall.toml", typed="Kiosk\n").returncode == 2
    assert not list(tmp_path.iterdir())


def test_units_shows_all_and_one_with_its_source() -> None:
    assert {"block-8", "brick-modular", "brick-nf"} <= set(run("units").stdout.split())
    one = run("units", "block-8").stdout
    assert '15 5/8" (396.9 mm)' in one
    assert "NCMA TEK" in one
    wrong = run("units", "block-9")
    assert wrong.returncode == 2
    assert len(wrong.stderr.splitlines()) == 1
