"""Hard knocks: full disks, no leave to write, links, two runs at once. What was there stays; status 3; one line."""

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.cli.running import ROOT, SAMPLES, run, start
from tests.without_leave import heed_leave, limit_files

OLD = b"what was there"
JSON = ("lay", SAMPLES / "pier.toml", "--json")
SHEETS = ("sheets", SAMPLES / "pier.toml", "--only", "saw-list", "--into")


def is_one_line_and_three(shown: subprocess.CompletedProcess[str], *words: str) -> bool:
    return (shown.returncode, shown.stdout) == (3, "") and len(shown.stderr.splitlines()) == 1 and all(
        word in shown.stderr for word in words)


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """A folder with the files that the commands would renew."""
    folder = tmp_path / "out"
    folder.mkdir()
    for name in ("gate-pier.pdf", "gate-pier-saw-list.csv", "gate-pier-saw-list.svg", "layout.json"):
        (folder / name).write_bytes(OLD)
    return folder


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize(("words", "name"), [(JSON, "layout.json"), (SHEETS, "")])
@pytest.mark.parametrize(("fault", "told"), [
    (limit_files(1000), "the file grows too large"), (heed_leave, "you have no leave to write there"),
])
def test_a_full_disk_and_a_folder_without_leave(
    words: tuple[object, ...], name: str, fault: Callable[[], None], told: str, old: Path,
) -> None:
    before = contents(old)
    old.chmod(0o555)
    if fault is not heed_leave:
        old.chmod(0o755)
    shown = run(*words, old / name, before=fault)
    old.chmod(0o755)
    assert is_one_line_and_three(shown, told, str(old)), shown.stderr
    assert contents(old) == before
    assert all(path.is_file() for path in old.iterdir())


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 64 kB, where the tests may make one."""
    place = tmp_path / "disk"
    place.mkdir()
    made = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=64k", "none", str(place)], capture_output=True, check=False)
    if made.returncode:
        pytest.skip("no leave to mount a small disk")
    yield place
    subprocess.run(["umount", str(place)], check=True)


def test_a_disk_that_fills_up_half_way(small_disk: Path) -> None:
    (small_disk / "gate-pier.pdf").write_bytes(OLD)
    (small_disk / "photographs").write_bytes(b"x" * 40_000)
    before = contents(small_disk)
    shown = run("sheets", SAMPLES / "pier.toml", "--into", small_disk)
    assert is_one_line_and_three(shown, "the disk is full", str(small_disk)), shown.stderr
    assert contents(small_disk) == before
    assert sorted(path.name for path in small_disk.iterdir()) == ["gate-pier.pdf", "photographs"]


def test_a_disk_that_can_only_be_read(small_disk: Path) -> None:
    (small_disk / "layout.json").write_bytes(OLD)
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    shown = run(*JSON, small_disk / "layout.json")
    assert is_one_line_and_three(shown, "the disk can only be read")
    assert (small_disk / "layout.json").read_bytes() == OLD


def test_a_file_that_may_only_be_read_is_not_replaced(old: Path) -> None:
    (old / "layout.json").chmod(0o444)
    (old / "gate-pier.pdf").chmod(0o444)
    assert is_one_line_and_three(run(*JSON, old / "layout.json"), "may only be read")
    assert is_one_line_and_three(run(*SHEETS, old), "gate-pier.pdf", "may only be read")
    assert set(contents(old).values()) == {OLD}


def test_a_plan_that_may_only_be_read_is_laid_and_never_written(tmp_path: Path) -> None:
    plan = tmp_path / "plan.toml"
    plan.write_bytes((SAMPLES / "pier.toml").read_bytes())
    plan.chmod(0o444)
    assert run("lay", plan, before=heed_leave).returncode == 0
    assert is_one_line_and_three(run("new", plan, typed="\n" * 20), "is there already")
    assert plan.read_bytes() == (SAMPLES / "pier.toml").read_bytes()


def test_a_plan_without_leave_to_read_it_is_one_line(tmp_path: Path) -> None:
    plan = tmp_path / "plan.toml"
    plan.write_text("", encoding="utf-8")
    plan.chmod(0)
    shown = run("lay", plan, before=heed_leave)
    assert (shown.returncode, shown.stderr) == (2, f"{plan}: may not be read; give yourself leave to read it\n")


@pytest.mark.parametrize("command", ["lay", "order", "advise"])
def test_a_plan_is_never_overwritten_with_what_is_made_of_it(command: str, tmp_path: Path) -> None:
    plan, link = tmp_path / "plan.toml", tmp_path / "link.json"
    plan.write_bytes((SAMPLES / "pier.toml").read_bytes())
    link.symlink_to(plan)
    shown = run(command, plan, "--json", link)
    assert (shown.returncode, shown.stderr) == (2, f"--json: {link} is the plan itself; name another file\n")
    assert plan.read_bytes() == (SAMPLES / "pier.toml").read_bytes()


def test_a_plan_without_an_ending_has_its_sheets_beside_it(tmp_path: Path) -> None:
    plan = tmp_path / "pier"
    plan.write_bytes((SAMPLES / "pier.toml").read_bytes())
    assert run("sheets", plan, "--only", "order").returncode == 0
    assert (tmp_path / "pier-sheets" / "gate-pier-order.csv").exists() and plan.is_file()


def test_where_a_folder_stands_and_where_a_file_does(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_bytes(OLD)
    assert is_one_line_and_three(run(*JSON, tmp_path / "folder"), "a folder of that name is there")
    assert is_one_line_and_three(run(*JSON, tmp_path / "file" / "layout.json"), "a file stands where a folder is wanted")
    assert is_one_line_and_three(run(*SHEETS, tmp_path / "file"), "a file stands where a folder is wanted")
    assert is_one_line_and_three(run(*JSON, tmp_path / ("x" * 300)), "the name is too long")
    assert (tmp_path / "file").read_bytes() == OLD


def test_links(tmp_path: Path) -> None:
    for name, target in (("good", "target"), ("circle", "circle"), ("folder", ".")):
        (tmp_path / name).symlink_to(target)
    assert run(*JSON, tmp_path / "good").returncode == 0
    assert (tmp_path / "good").is_symlink() and (tmp_path / "target").read_bytes().startswith(b'{"wallplan_layout"')
    assert is_one_line_and_three(run(*JSON, tmp_path / "circle"), "a link leads back to itself")
    assert is_one_line_and_three(run(*JSON, tmp_path / "folder"), "a folder of that name is there")


def test_two_runs_into_one_folder_at_once(tmp_path: Path) -> None:
    words = ("sheets", SAMPLES / "pier.toml", "--only", "saw-list", "--only", "order", "--into")
    both = [start(*words, tmp_path / "both") for _ in range(2)]
    assert [process.wait(60) for process in both] == [0, 0]
    run(*words, tmp_path / "alone")
    assert contents(tmp_path / "both") == contents(tmp_path / "alone")
    assert not [path for path in (tmp_path / "both").iterdir() if path.is_dir()]


def test_two_runs_that_write_a_first_plan_at_once(tmp_path: Path) -> None:
    """Both find the name free; only one may take it."""
    both = [start("new", tmp_path / "wall.toml") for _ in range(2)]
    for name, process in zip("ab", both, strict=True):
        assert process.stdin
        process.stdin.write(f"{name}\n".encode() + b"\n" * 20)
        process.stdin.close()
    assert sorted(process.wait(60) for process in both) == [0, 3]
    assert len(list(tmp_path.iterdir())) == 1


def test_standard_output_on_a_full_disk() -> None:
    if not Path("/dev/full").exists():
        pytest.skip("this system has no device that is always full")
    for words in (("lay", SAMPLES / "pier.toml"), ("order", SAMPLES / "pier.toml", "--json", "-"), ("--help",)):
        with Path("/dev/full").open("wb") as full:
            ended = subprocess.run([sys.executable, "-m", "wallplan_cli", *map(str, words)], stdout=full, cwd=ROOT,
                                   stderr=subprocess.PIPE, check=False)
        assert (ended.returncode, ended.stderr) == (3, b"standard output: cannot be written: the disk is full\n")


def test_a_device_is_written_to_and_stays_one(tmp_path: Path) -> None:
    assert run(*JSON, os.devnull).returncode == 0
    assert not Path(os.devnull).is_file()


def test_a_home_folder_that_cannot_be_written_is_not_spoken_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME"):
        monkeypatch.setenv(name, "/proc/nowhere")
    shown = run("sheets", SAMPLES / "pier.toml", "--only", "saw-list", "--into", tmp_path)
    assert (shown.returncode, shown.stderr) == (0, "") and list(tmp_path.glob("*.pdf"))
