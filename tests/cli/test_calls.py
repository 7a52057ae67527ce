"""Calls that cannot be used: one line each, what to write instead, status 2, nothing written."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.cli.running import SAMPLES, run
from wallplan import __version__

PLAN = (SAMPLES / "pier.toml").read_bytes()


@pytest.mark.parametrize(("words", "told"), [
    (("chek", "x"), 'wallplan: "chek" is no command; write check'),
    (("help",), 'wallplan: "help" is no command; there are: new, lay, check, sheets, cuts, order, advise, teach, units'),
    (("sheets", "x", "--papr=A4"), 'wallplan sheets: "--papr" is no option; write --paper'),
    (("sheets", "x", "--scale", "0"), 'wallplan sheets: "--scale" is no option; there are: --into, --paper, --only, --face, --full-size, '
                                      "--tidy, --help"),
    (("lay", "x", "--json"), "--json: nothing stands behind it; write --json and its value"),
    (("sheets", "x", "--full-size=yes"), "--full-size: stands alone; leave out what follows the equals sign"),
    (("check",), "wallplan check: the plan file is missing; write for example: wallplan check samples/ticket-kiosk.toml"),
    (("order", "a", "b", "c"), 'wallplan order: "c" is one too many; leave it out'),
    (("lay", "x", "--json", ""), "--json: no file is named; write --json FILE, or --json - for standard output"),
    (("sheets", "x", "--into", ""), "--into: no folder is named; write --into FOLDER"),
    (("advise", "x", "--sheet", "--into", " "), "--into: no folder is named; write --into FOLDER"),
    (("order", "x", "--json", "o", "--csv", "./o"), "--json and --csv: o cannot be both; name two files"),
])
def test_a_call_that_cannot_be_used_is_one_line_with_what_to_write(words: tuple[str, ...], told: str) -> None:
    shown = run(*words)
    assert (shown.returncode, shown.stdout, shown.stderr) == (2, "", f"{told}\n")


@pytest.mark.parametrize("words", [("units", "--json"), ("lay", SAMPLES / "pier.toml", "--json"), ("cuts", SAMPLES / "pier.toml", "--csv")])
def test_another_plan_is_never_overwritten_by_what_an_option_is_misplaced_before(words: tuple[object, ...], tmp_path: Path) -> None:
    plan = tmp_path / "other.toml"
    plan.write_bytes(PLAN)
    shown = run(*words, plan)
    assert (shown.returncode, shown.stdout) == (2, "")
    assert shown.stderr == f"{words[-1]}: {plan} is there already, and a plan by its name; name another file\n"
    assert plan.read_bytes() == PLAN


def test_nothing_asked_for_is_the_help_and_the_version_is_told() -> None:
    shown = run()
    assert shown.returncode == 2 and "Commands:" in shown.stdout + shown.stderr
    assert run("--version").stdout == f"wallplan {__version__}\n"


@pytest.mark.parametrize("asked", ["kiosk", "kiosk.tml", "Kiosk.toml", "kosk.toml"])
def test_a_file_of_nearly_that_name_is_named(asked: str, tmp_path: Path) -> None:
    (tmp_path / "kiosk.toml").write_bytes(PLAN)
    assert run("check", tmp_path / asked).stderr == f"{tmp_path / asked}: no such file; there is {tmp_path / 'kiosk.toml'}\n"


def test_a_unit_may_be_called_in_big_letters() -> None:
    assert run("units", "Block 8").stdout == run("units", "block-8").stdout


def test_a_catalogue_that_cannot_be_written_is_one_line_and_three(tmp_path: Path) -> None:
    shown = run("units", "--json", tmp_path)
    assert (shown.returncode, shown.stdout) == (3, "")
    assert shown.stderr == f"{tmp_path}: cannot be written: a folder of that name is there\n"


def test_a_folder_that_is_gone_is_told(tmp_path: Path) -> None:
    gone = tmp_path / "gone"
    gone.mkdir()
    shown = run("sheets", SAMPLES / "pier.toml", "--into", "out", "--only", "order", before=lambda: leave(gone))
    assert (shown.returncode, shown.stdout) == (3, "")
    assert shown.stderr == "the folder that you stand in is not there any more; go to another, and call again\n"


def leave(folder: Path) -> None:
    """Stand in a folder that is then removed."""
    os.chdir(folder)
    folder.rmdir()
