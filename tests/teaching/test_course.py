"""The course in docs: each lesson names its wall, and every figure that it gives is the layout's."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.teaching.lessons import laid, sample
from wallplan.rules.check import check
from wallplan.teaching.quiz import ask_wall
from wallplan.teaching.wrong_wall import seed_faults

COURSE = Path(__file__).parents[2] / "docs" / "course"
LESSONS = sorted(COURSE.glob("[0-9]-*.md"))
WALLS = [path.stem for path in sorted((COURSE.parents[1] / "samples").glob("training-*.toml"))]


def test_five_lessons_for_five_walls_all_listed_on_the_first_page() -> None:
    first = (COURSE / "README.md").read_text(encoding="utf-8")
    assert len(LESSONS) == len(WALLS) == 5
    for lesson, wall in zip(LESSONS, WALLS, strict=True):
        assert wall == f"training-{lesson.stem}"
        assert f"]({lesson.name})" in first and f"samples/{wall}.toml" in first
        assert f"samples/{wall}.toml" in lesson.read_text(encoding="utf-8")


@pytest.mark.parametrize("lesson", LESSONS, ids=lambda path: path.stem)
def test_every_figure_of_a_lesson_is_the_layouts(lesson: Path) -> None:
    layout = laid(sample(f"training-{lesson.stem}"))
    told = {(question.text, question.answer) for index in range(len(layout.walls)) for question in ask_wall(layout, index)}
    rows = re.findall(r"^\| (.+\?) \| (.+) \|$", lesson.read_text(encoding="utf-8"), re.MULTILINE)
    assert len(rows) >= 4
    assert [row for row in rows if row not in told] == []


@pytest.mark.parametrize("wall", WALLS)
def test_a_training_wall_keeps_every_rule_and_has_its_wrong_wall(wall: str) -> None:
    layout = laid(sample(wall))
    assert [finding for finding in check(layout) if not finding.held] == []
    assert seed_faults(layout) is not None


def test_they_grow_harder() -> None:
    """No cut and no opening, then closed joints, then an opening, then cuts, then a corner with all that."""
    first, second, third, fourth, fifth = (laid(sample(wall)) for wall in WALLS)
    assert first.walls[0].joints == (first.job.masonry.joint,) * 2 and not first.walls[0].wall.openings
    assert second.walls[0].joints[1] < second.job.masonry.joint and second.walls[0].cutting == 0
    assert third.walls[0].wall.openings and third.walls[0].cutting == 0
    assert fourth.walls[0].wall.openings and fourth.walls[0].cutting > 0
    assert len(fifth.walls) == 2 and fifth.walls[0].wall.control_joints and fifth.walls[0].wall.bond_beams
