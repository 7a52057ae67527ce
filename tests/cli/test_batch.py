"""Several plans in one call: over processes, a bad one stops none of the others, nothing is written twice, the worst is told."""

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.running import ROOT, SAMPLES, names_in, run

SHED = 'title = "{}"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n[[wall]]\nname = "N"\nlength = "{}"\nheight = "4\'"\n'


def plan(folder: Path, name: str, title: str, length: str = "8'") -> Path:
    path = folder / f"{name}.toml"
    path.write_text(SHED.format(title, length), encoding="utf-8")
    return path


def test_each_plan_has_its_own_folder_and_a_bad_one_stops_none(tmp_path: Path) -> None:
    plans = [plan(tmp_path, "a", "Shed"), plan(tmp_path, "bad", "Bad", "8-8"), plan(tmp_path, "c", "Slip", "12'")]
    shown = run("sheets", *plans, SAMPLES / "none.toml", "--only", "pole")
    assert shown.returncode == 2
    told = shown.stderr.splitlines()
    assert [line.split(":")[0] for line in told[:2]] == [str(plans[1]), str(SAMPLES / "none.toml")]
    assert told[2:] == ["4 plans: 2 drawn, 2 not usable"]
    assert shown.stdout.splitlines() == [
        f"{path}: 2 files in {path.with_suffix('')}, to print: {path.with_suffix('') / name}.pdf"
        for path, name in ((plans[0], "shed"), (plans[2], "slip"))]
    assert sorted(path.name for path in tmp_path.rglob("*.pdf")) == ["shed.pdf", "slip.pdf"]
    assert not (tmp_path / "bad").exists()


def test_what_one_plan_has_written_no_other_writes_over(tmp_path: Path) -> None:
    plans = [plan(tmp_path, "a", "Shed"), plan(tmp_path, "b", "SHED", "12'"), plan(tmp_path, "c", "Slip")]
    shown = run("sheets", *plans, "--into", tmp_path / "out", "--only", "pole")
    assert shown.returncode == 2
    assert shown.stderr.splitlines()[0] == (
        f"{plans[1]}: nothing written: {tmp_path / 'out' / 'shed-pole.svg'} is written by {plans[0]} already; "
        "give one of them another title, or a folder of its own")
    assert sorted(names_in(tmp_path / "out")) == [
        "shed-pole.svg", "shed.pdf", "slip-pole.svg", "slip.pdf"]
    alone = run("sheets", plans[0], "--into", tmp_path / "alone", "--only", "pole")
    assert alone.returncode == 0
    assert (tmp_path / "alone" / "shed.pdf").read_bytes() == (tmp_path / "out" / "shed.pdf").read_bytes()


def test_a_plan_named_twice_is_drawn_once(tmp_path: Path) -> None:
    shed = plan(tmp_path, "a", "Shed")
    assert run("sheets", shed, shed, "--only", "pole").stdout.splitlines()[-1] == str(tmp_path / "a" / "shed.pdf")


def test_the_worst_exit_status_counts(tmp_path: Path) -> None:
    shed, blocked = plan(tmp_path, "a", "Shed"), plan(tmp_path, "b", "Slip")
    breaks = SAMPLES / "breaks-a-rule.toml"
    assert run("sheets", shed, breaks, "--into", tmp_path / "out", "--only", "pole").returncode == 1
    (tmp_path / "b").write_text("a file where a folder should be", encoding="utf-8")
    shown = run("sheets", breaks, blocked, shed, tmp_path / "none.toml", "--only", "pole", "--into", tmp_path / "b")
    assert shown.returncode == 3
    assert (tmp_path / "b").read_text(encoding="utf-8") == "a file where a folder should be"


@pytest.mark.parametrize("command", ["lay", "check", "cuts"])
def test_other_commands_take_several_plans_too(command: str, tmp_path: Path) -> None:
    shed, slip = plan(tmp_path, "a", "Shed"), plan(tmp_path, "c", "Slip")
    shown = run(command, shed, tmp_path / "none.toml", slip)
    assert shown.returncode == 2
    assert [line for line in shown.stdout.splitlines() if line.endswith(".toml")] == [
        str(shed), str(tmp_path / "none.toml"), str(slip)]
    assert shown.stdout.index("Shed") < shown.stdout.index("Slip")
    assert len(shown.stderr.splitlines()) == 1
    assert run(command, shed).stdout in shown.stdout


@pytest.mark.parametrize(("command", "option"), [("lay", "--json"), ("cuts", "--csv")])
def test_one_file_holds_one_plan(command: str, option: str, tmp_path: Path) -> None:
    shown = run(command, SAMPLES / "pier.toml", SAMPLES / "boat-store.toml", option, tmp_path / "out")
    assert (shown.returncode, shown.stdout, shown.stderr) == (2, "", f"{option} is for one plan; 2 are given\n")


def test_a_bar_moves_on_a_terminal_and_results_stay_clean(tmp_path: Path) -> None:
    plans = [plan(tmp_path, name, name) for name in ("a", "b")]
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "wallplan_cli", "sheets", *map(str, plans), "--only", "pole"], cwd=ROOT, stderr=theirs,
        stdout=subprocess.PIPE, text=True, env={**os.environ, "TERM": "xterm", "COLUMNS": "80"})
    os.close(theirs)
    seen = b""
    while True:
        try:
            part = os.read(ours, 4096)
        except OSError:
            break
        seen += part
        if not part:
            break
    told = process.communicate(timeout=60)[0]
    os.close(ours)
    assert process.returncode == 0
    assert b"plans" in seen and b"2/2" in seen and b"2 plans: 2 drawn" in seen
    assert len(told.splitlines()) == 2 and "\x1b" not in told
