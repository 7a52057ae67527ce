"""Windows of a split wall cover it, overlap by what is shown twice, and meet at head joints."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from tests.drawing.sheets import texts_of
from tests.drawing.walls import drawn, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.splitting import split_wall
from wallplan.drawing.tally import tally
from wallplan.drawing.view import whole
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.plan.load import load_plan

SAMPLES = Path(__file__).parents[2] / "samples"


@pytest.mark.parametrize("part", [2, 3, 4])
def test_a_wall_is_covered_by_windows_no_wider_than_asked(part: int) -> None:
    layout, _ = laid("quay")
    wall, module = layout.walls[0], layout.job.masonry.module
    most = wall.wall.length // part + 3 * module
    windows = split_wall(wall, tally(wall), module, most, wall.wall.height)
    assert len(windows) >= 2
    assert (windows[0].left, windows[-1].right) == (0, wall.wall.length)
    joints = {piece.right + layout.job.masonry.joint // 2 for course in wall.courses for piece in course.pieces}
    for window in windows:
        assert window.right - window.left <= most
    for one, other in pairwise(windows):
        match = one.matches[-1]
        assert match == other.matches[0]
        assert min(abs(match - joint) for joint in joints) < 960
        assert other.left < match - module // 2 < match < one.right + module


def test_every_piece_is_whole_in_some_window() -> None:
    layout, _ = laid("quay")
    wall, module = layout.walls[0], layout.job.masonry.module
    windows = split_wall(wall, tally(wall), module, wall.wall.length // 3, wall.wall.height // 2)
    for course in wall.courses:
        for piece in course.pieces:
            assert any(window.left <= piece.left and piece.right <= window.right
                       and window.courses[0] <= course.number <= window.courses[1] for window in windows)


def test_rows_share_a_course() -> None:
    layout, _ = laid("tower")
    wall = layout.walls[0]
    windows = split_wall(wall, tally(wall), layout.job.masonry.module, wall.wall.length, wall.wall.height // 3)
    assert windows[-1].courses[1] == len(wall.courses)
    for one, other in pairwise(windows):
        assert other.courses[0] == one.courses[1]
        assert one.levels[-1] == other.levels[0]


def test_too_little_room_gives_no_windows_and_enough_gives_one() -> None:
    layout, _ = laid("quay")
    wall, module = layout.walls[0], layout.job.masonry.module
    assert split_wall(wall, tally(wall), module, module, wall.wall.height) == ()
    assert split_wall(wall, tally(wall), module, wall.wall.length, wall.wall.height)[0] == whole(wall)


def test_the_key_of_a_split_wall_says_what_a_match_line_is() -> None:
    """A wall that is split at a course has no words at its match lines."""
    for name in ("tower", "quay"):
        for page in drawn(name).pages:
            assert "match line" in [text.text for text in texts_of(page)]
    assert not any(text.text == "match line" for text in texts_of(drawn("pier").pages[0]))


def test_a_gable_with_a_long_lintel_is_split_at_a_course_not_drawn_half_over_on_both_sheets() -> None:
    layout = lay(load_plan(SAMPLES / "boat-store-gable.toml"))
    pages = number_sheets(plan_wall_sheets(layout, (), "letter"))
    told = [next(text.text for text in texts_of(page) if text.text.startswith("This sheet")) for page in pages]
    assert len(pages) == 2 and all("from the left end, courses" in words for words in told)
