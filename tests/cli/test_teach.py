"""``wallplan teach`` as a teacher meets it."""

from __future__ import annotations

from pathlib import Path

from tests.cli.running import SAMPLES, names_in, run


def test_the_pack_is_written_with_its_pdf_its_svgs_and_its_page(tmp_path: Path) -> None:
    done = run("teach", SAMPLES / "training-1-bench-back.toml", "--into", tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    names = names_in(tmp_path)
    begin = "training-wall-1-bench-back-lesson"
    assert {f"{begin}.pdf", f"{begin}.html", f"{begin}-quiz.svg", f"{begin}-key.svg"} <= names
    assert sorted(done.stdout.split()) == sorted(str(tmp_path / name) for name in names)


def test_one_kind_alone_and_another_paper(tmp_path: Path) -> None:
    done = run("teach", SAMPLES / "pier.toml", "--only", "marking", "--paper", "a3", "--into", tmp_path)
    assert done.returncode == 0
    assert names_in(tmp_path) == {"gate-pier-lesson.pdf", "gate-pier-lesson-marking.svg"}
    assert 'width="297mm"' in (tmp_path / "gate-pier-lesson-marking.svg").read_text(encoding="utf-8")


def test_a_sheet_that_is_not_known_is_refused_and_nothing_written(tmp_path: Path) -> None:
    done = run("teach", SAMPLES / "pier.toml", "--only", "exam", "--into", tmp_path / "lesson")
    assert done.returncode == 2 and not (tmp_path / "lesson").exists()
    assert done.stderr.startswith('--only: "exam" is not a lesson sheet; write one of build-up, ')


def test_broken_rules_end_with_one_and_are_taught_all_the_same(tmp_path: Path) -> None:
    done = run("teach", SAMPLES / "breaks-a-rule.toml", "--into", tmp_path)
    assert done.returncode == 1 and "broken rules" in done.stderr
    assert (tmp_path / "bin-store-as-first-drawn-lesson.pdf").exists()
