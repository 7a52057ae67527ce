"""Files are written whole or not at all."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from wallplan.files import FileFault, slug, write_file, write_files


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


@pytest.mark.parametrize(("name", "expected"), [
    ("Ticket kiosk", "ticket-kiosk"), ("../../etc", "etc"), ("a/b\\c:d", "a-b-c-d"), ("...", "job"), ("Ölhafen Süd", "ölhafen-süd"),
    ("x" * 200, "x" * 60),
])
def test_names_become_safe_file_names(name: str, expected: str) -> None:
    assert slug(name) == expected
