"""A few kills during ``sheets``; ``python3 -m tests.kills`` is the long run."""

from pathlib import Path

from tests.kills import Ground, find_half_written, find_litter, kill_many


def test_killed_while_it_writes_sheets(tmp_path: Path) -> None:
    killed, _, wrong = kill_many(tmp_path, kills=4, seed=2, only=("marks", "order"))
    assert killed and wrong == []


def test_half_a_file_and_litter_would_be_found(tmp_path: Path) -> None:
    ground = Ground((tmp_path / "a", tmp_path / "b"), tmp_path, ({"a.svg": b"long"}, {"a.svg": b"short"}))
    (tmp_path / "a.svg").write_bytes(b"lo")
    (tmp_path / ".wallplan-1-0").mkdir()
    assert find_half_written(ground) == ["a.svg"]
    assert find_litter(ground) == [".wallplan-1-0"]
