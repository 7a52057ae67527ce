"""Marks: a letter a size, longest first, none that reads as a number."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.layout.marks import LETTERS, letter


def test_letters_leave_out_i_and_o_and_go_on_with_two() -> None:
    assert [letter(n) for n in (0, 7, 8, 13, 23)] == ["A", "H", "J", "P", "Z"]
    assert [letter(n) for n in (24, 25, 48)] == ["AA", "AB", "BA"]
    assert not {"I", "O"} & set(LETTERS)


def test_negative_place_is_refused() -> None:
    with pytest.raises(ValueError, match="0 or more, not -1"):
        letter(-1)


def test_one_letter_for_each_size_over_the_whole_job() -> None:
    # 38 in. piers cut 14 in. pieces; 44 in. ones 12 in. (16 + 16 + 12): A is the longer, in both walls.
    job = make_job(
        make_masonry(joints_move=False), make_wall(inches("43 5/8"), inches(32), name="Water"),
        make_wall(inches("37 5/8"), inches(32), name="Road"),
    )
    marks: dict[str, set[int]] = {}
    for wall in lay(job).walls:
        for course in wall.courses:
            for piece in course.pieces:
                assert (piece.mark is None) == (piece.piece != "cut")
                if piece.mark:
                    marks.setdefault(piece.mark, set()).add(piece.length)
    assert all(len(lengths) == 1 for lengths in marks.values())
    ordered = [next(iter(marks[mark])) for mark in sorted(marks)]
    assert ordered == sorted(ordered, reverse=True)
    assert marks["A"] == {inches("13 5/8")}
