"""Files are written whole or not at all."""

import errno
import fcntl
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from wallplan.files import FileFault, slug, write_file, write_files, write_new_file


def test_files_are_written_and_nothing_else_is_left(tmp_path: Path) -> None:
    paths = write_files(tmp_path / "new" / "folder", {"a.txt": b"one", "b.txt": b"two"})
    assert [path.read_bytes() for path in paths] == [b"one", b"two"]
    assert sorted(path.name for path in (tmp_path / "new" / "folder").iterdir()) == ["a.txt", "b.txt"]


def test_a_fault_leaves_what_was_there_and_writes_none_of_the_set(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(b"old")
    (tmp_path / "b.txt").mkdir()
    with pytest.raises(FileFault, match=r"b\.txt: cannot be written: a folder of that name is there"):
        write_files(tmp_path, {"a.txt": b"new", "b.txt": b"new"})
    assert (tmp_path / "a.txt").read_bytes() == b"old"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.txt", "b.txt"]


def test_a_folder_that_cannot_be_made_is_told_in_one_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"old")
    with pytest.raises(FileFault) as told:
        write_files(tmp_path / "file" / "folder", {"a.txt": b"x"})
    assert len(str(told.value).splitlines()) == 1
    assert (tmp_path / "file").read_bytes() == b"old"


def test_a_link_stays_a_link_and_what_it_points_to_is_renewed(tmp_path: Path) -> None:
    target, link = tmp_path / "deep" / "target.json", tmp_path / "link.json"
    target.parent.mkdir()
    target.write_bytes(b"old")
    link.symlink_to(target)
    write_file(link, b"new")
    assert link.is_symlink() and target.read_bytes() == b"new"


def test_a_writer_killed_at_any_moment_leaves_old_or_new_but_never_half(tmp_path: Path) -> None:
    old, new = b"o" * 3_000_000, b"n" * 3_000_000
    target = tmp_path / "sheet.pdf"
    target.write_bytes(old)
    code = (
        "import sys; from pathlib import Path; from wallplan.files import write_file\n"
        f"path = Path({str(target)!r})\n"
        "print('ready', flush=True)\n"
        "while True: write_file(path, b'n' * 3_000_000)"
    )
    for wait in (0.0, 0.002, 0.005, 0.01, 0.02):
        with subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, cwd=Path(__file__).parents[1]) as writer:
            assert writer.stdout and writer.stdout.readline() == b"ready\n"
            time.sleep(wait)
            os.kill(writer.pid, signal.SIGKILL)
        assert target.read_bytes() in (old, new)
    write_file(target, b"whole")
    assert [path.name for path in tmp_path.iterdir()] == ["sheet.pdf"]


def test_what_a_killed_run_left_is_cleared_away_but_not_what_a_run_at_work_holds(tmp_path: Path) -> None:
    left, held = tmp_path / ".wallplan-1-0", tmp_path / ".wallplan-1-1"
    for scratch in (left, held):
        scratch.mkdir()
        (scratch / "half.svg").write_bytes(b"half")
    lock = os.open(held, os.O_RDONLY)
    fcntl.flock(lock, fcntl.LOCK_EX)
    (tmp_path / ".wallplan-notes").mkdir()
    write_files(tmp_path, {"a.txt": b"x"})
    assert sorted(path.name for path in tmp_path.iterdir()) == [".wallplan-1-1", ".wallplan-notes", "a.txt"]
    os.close(lock)
    write_files(tmp_path, {"a.txt": b"x"})
    assert not held.exists()


def test_a_scratch_folder_of_the_same_number_is_in_nobodys_way(tmp_path: Path) -> None:
    held = tmp_path / f".wallplan-{os.getpid()}-0"
    held.mkdir()
    lock = os.open(held, os.O_RDONLY)
    fcntl.flock(lock, fcntl.LOCK_EX)
    write_file(tmp_path / "a.txt", b"x")
    assert held.exists() and (tmp_path / "a.txt").read_bytes() == b"x"
    os.close(lock)


def test_a_link_in_the_place_of_a_scratch_folder_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept" / "photograph").write_bytes(b"x")
    (tmp_path / ".wallplan-1-0").symlink_to("kept")
    write_file(tmp_path / "a.txt", b"x")
    assert (tmp_path / "kept" / "photograph").exists()


def test_folders_made_for_what_is_not_written_go_again(tmp_path: Path) -> None:
    with pytest.raises(FileFault, match="the name is too long"):
        write_files(tmp_path / "new" / "deep", {"x" * 300: b"x"})
    assert not list(tmp_path.iterdir())


def test_leave_stays_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "mine.json").write_bytes(b"old")
    (tmp_path / "mine.json").chmod(0o600)
    write_file(tmp_path / "mine.json", b"new")
    assert (tmp_path / "mine.json").stat().st_mode & 0o777 == 0o600


def test_a_new_file_takes_no_others_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_new_file(tmp_path / "deep" / "wall.toml", b"one")

    def no_links(path: object, target: object) -> None:
        raise PermissionError(errno.EPERM, "")

    for name in ("wall.toml", "other.toml"):
        with pytest.raises(FileFault, match="is there already and stays as it is"):
            write_new_file(tmp_path / "deep" / "wall.toml", b"two")
        monkeypatch.setattr(os, "link", no_links)  # a disk without links
        write_new_file(tmp_path / "deep" / f"new-{name}", b"new")
    assert (tmp_path / "deep" / "wall.toml").read_bytes() == b"one"
    assert len(list((tmp_path / "deep").iterdir())) == 3


def test_a_pipe_is_written_to_and_a_set_replaces_none(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with subprocess.Popen(["cat", tmp_path / "pipe"], stdout=subprocess.PIPE) as reader:
        write_file(tmp_path / "pipe", b"through")
        assert reader.stdout and reader.stdout.read() == b"through"
    with pytest.raises(FileFault, match="no ordinary file"):
        write_files(tmp_path, {"pipe": b"x"})


@pytest.mark.parametrize(("name", "expected"), [
    ("Ticket kiosk", "ticket-kiosk"), ("../../etc", "etc"), ("a/b\\c:d", "a-b-c-d"), ("...", "job"), ("Ölhafen Süd", "ölhafen-süd"),
    ("x" * 200, "x" * 60), ("磚" * 80, "磚" * 33),
])
def test_names_become_safe_file_names(name: str, expected: str) -> None:
    assert slug(name) == expected
