"""What earlier runs left in a folder: known only where it was written by such a run and nobody changed it since."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

import pytest

from tests.cli.running import SAMPLES, names_in, run
from wallplan.files import write_files
from wallplan.left_over import find_left, may_record, name_record, remove_left, write_record

RECORD = name_record("kiosk", "sheets")


def write(folder: Path, files: Mapping[str, bytes]) -> dict[str, str]:
    """Files and their record, as a run writes them; what earlier ones left."""
    left = find_left(folder, [RECORD], files)
    write_files(folder, {**files, RECORD: write_record(files, left)})
    return left


def test_what_a_run_no_longer_writes_is_left_over_until_it_is_removed(tmp_path: Path) -> None:
    assert write(tmp_path, {"a.svg": b"1", "b.svg": b"2", "c.svg": b"3"}) == {}
    assert list(write(tmp_path, {"a.svg": b"1 new"})) == ["b.svg", "c.svg"]
    assert list(write(tmp_path, {"a.svg": b"1 new", "c.svg": b"3"})) == ["b.svg"]  # told again, and again
    left = find_left(tmp_path, [RECORD], {"a.svg": b"", "c.svg": b""})
    assert list(remove_left(tmp_path, left)) == [tmp_path / "b.svg"]
    assert names_in(tmp_path) == {"a.svg", "c.svg"}
    assert write(tmp_path, {"a.svg": b"", "c.svg": b""}) == {}


def test_what_was_changed_or_is_no_ordinary_file_is_nobodys_to_touch(tmp_path: Path) -> None:
    write(tmp_path, {"changed.svg": b"1", "linked.svg": b"2", "folder.svg": b"3", "gone.svg": b"4", "left.svg": b"5"})
    (tmp_path / "changed.svg").write_bytes(b"1, with the mason's own notes")
    (tmp_path / "mine.svg").write_bytes(b"2")
    for name in ("linked.svg", "folder.svg", "gone.svg"):
        (tmp_path / name).unlink()
    (tmp_path / "linked.svg").symlink_to(tmp_path / "mine.svg")
    (tmp_path / "folder.svg").mkdir()
    left = find_left(tmp_path, [RECORD], {})
    assert list(left) == ["left.svg"]
    told = {name: sha256(content).hexdigest() for name, content in (("changed.svg", b"1"), ("linked.svg", b"2"), ("left.svg", b"5"))}
    assert list(remove_left(tmp_path, told)) == [tmp_path / "left.svg"]
    assert names_in(tmp_path) == {"changed.svg", "linked.svg", "folder.svg", "mine.svg"}


@pytest.mark.parametrize("record", [
    "my own notes", "", f"{sha256(b'1').hexdigest()}  ../plan.toml\n", f"{sha256(b'1').hexdigest()}  .profile\n",
    f"{sha256(b'1').hexdigest()}  a.svg\nand a line of mine\n", "\x00\xff", f"{sha256(b'1').hexdigest()}  ..\n",
])
def test_a_record_that_is_none_from_end_to_end_tells_nothing_and_stays(tmp_path: Path, record: str) -> None:
    folder = tmp_path / "sheets"
    folder.mkdir()
    for path in (tmp_path / "plan.toml", folder / ".profile", folder / "a.svg"):
        path.write_bytes(b"1")
    (folder / RECORD).write_bytes(record.encode("latin-1"))
    assert find_left(folder, [RECORD], {}) == {}
    assert not may_record(folder, RECORD)


def test_the_record_is_what_sha256sum_checks(tmp_path: Path) -> None:
    write(tmp_path, {"a b.svg": b"1", "b.csv": b"2"})
    if shutil.which("sha256sum") is None:
        pytest.skip("no sha256sum here")
    assert subprocess.run(["sha256sum", "--check", "--strict", RECORD], cwd=tmp_path, capture_output=True, check=False).returncode == 0


def shed(folder: Path, wall: str, second: str = "") -> Path:
    """A plan of a wall, or of two."""
    more = f'[[wall]]\nname = "{second}"\nlength = "8\'"\nheight = "4\'"\n' if second else ""
    path = folder / "shed.toml"
    path.write_text('title = "Shed"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n'
                    f'[[wall]]\nname = "{wall}"\nlength = "8\'"\nheight = "4\'"\n{more}', encoding="utf-8")
    return path


def test_a_renamed_wall_and_one_that_is_gone_are_named_and_removed_on_request(tmp_path: Path) -> None:
    run("sheets", shed(tmp_path, "North", "South"))
    (tmp_path / "shed" / "photograph.svg").write_text("the mason's own", encoding="utf-8")
    shown = run("sheets", shed(tmp_path, "West"))
    gone = [tmp_path / "shed" / f"shed-{kind}-{wall}.svg" for kind in ("marks", "wall") for wall in ("north", "south")]
    assert shown.stderr.splitlines() == [
        *(f"left from an earlier run, not drawn now: {path}" for path in gone),
        "these may no longer be right: do not tape them up; --tidy removes them"]
    assert all(path.exists() for path in gone) and shown.returncode == 0
    assert run("sheets", tmp_path / "shed.toml").stderr == shown.stderr  # until they are gone
    tidied = run("sheets", tmp_path / "shed.toml", "--tidy")
    assert tidied.stderr.splitlines() == [f"removed, left from an earlier run: {path}" for path in gone]
    assert not any(path.exists() for path in gone) and (tmp_path / "shed" / "photograph.svg").exists()
    assert run("sheets", tmp_path / "shed.toml").stderr == ""


def test_sheets_and_lesson_leave_each_other_alone_and_only_tells_the_rest(tmp_path: Path) -> None:
    plan = shed(tmp_path, "North")
    run("sheets", plan)
    assert "left from" not in run("teach", plan, "--only", "quiz").stderr
    assert "left from" not in run("sheets", plan).stderr
    told = run("sheets", plan, "--only", "pole").stderr
    assert f"left from an earlier run, not drawn now: {tmp_path / 'shed' / 'shed-wall-north.svg'}" in told.splitlines()
    assert "quiz" not in told
    refused = run("sheets", plan, "--only", "pole", "--tidy")
    assert refused.returncode == 2 and len(refused.stderr.splitlines()) == 1
    assert (tmp_path / "shed" / "shed-wall-north.svg").exists()
    assert run("sheets", SAMPLES / "none.toml", "--tidy").returncode == 2


def test_what_was_drawn_under_an_earlier_title_is_left_over_in_the_plans_own_folder(tmp_path: Path) -> None:
    plan = shed(tmp_path, "North")
    run("sheets", plan, "--only", "wall")
    run("sheets", plan, "--only", "wall", "--into", tmp_path / "all")
    plan.write_text(plan.read_text(encoding="utf-8").replace('"Shed"', '"Boat shed"'), encoding="utf-8")
    told = run("sheets", plan, "--only", "wall").stderr.splitlines()
    old = [tmp_path / "shed" / name for name in ("shed-wall-north.svg", "shed.pdf")]
    assert told[:-1] == [f"left from an earlier run, not drawn now: {path}" for path in old]
    assert run("sheets", plan, "--only", "wall").stderr.splitlines() == told
    # A folder that others may share: who drew what there is known by the job's title alone.
    assert run("sheets", plan, "--only", "wall", "--into", tmp_path / "all").stderr == ""
    tidied = run("sheets", plan, "--tidy").stderr.splitlines()
    assert tidied == [f"removed, left from an earlier run: {path}" for path in old]
    assert run("sheets", plan).stderr == "" and names_in(tmp_path / "all") >= {"shed-wall-north.svg", "boat-shed-wall-north.svg"}
