"""Letters of cuts: none missing, none for two sizes, no size under two."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import change_course, change_piece
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Notch, Piece, Rake
from wallplan.rules.check import check
from wallplan.rules.letters import check_letters


@pytest.fixture(scope="module")
def good() -> Layout:
    """Two walls of 60 in.: 3 3/4 blocks less a joint, so that each has cuts; a third of whole blocks has none."""
    walls = [make_wall(inches("59 5/8"), inches(16), name=name) for name in ("Water", "Road")]
    return lay(make_job(make_masonry(joints_move=False), *walls, make_wall(inches("63 5/8"), inches(16), name="Yard")))


def find_cut(layout: Layout) -> tuple[int, int, Piece]:
    """The first wall's lowest cut: its course, its place there, the piece."""
    return next((course.number, place, piece) for course in layout.walls[0].courses
                for place, piece in enumerate(course.pieces) if piece.piece == "cut")


def told(layout: Layout) -> list[str]:
    return [finding.figure for finding in broken(check_letters(layout))]


def test_a_good_job_is_held_wall_by_wall(good: Layout) -> None:
    found = [one for one in check(good) if one.rule == "letters"]
    assert [(one.wall, one.held) for one in found] == [("Water", True), ("Road", True), ("Yard", True)]
    assert "letter" in found[0].figure and found[2].figure == "nothing is sawn"


def test_a_cut_without_a_letter_is_told_with_its_place(good: Layout) -> None:
    number, place, piece = find_cut(good)
    (finding,) = broken(check_letters(change_piece(good, number, place, mark=None)))
    assert (finding.wall, finding.course, finding.at) == ("Water", number, piece.left)
    assert finding.figure.endswith("without a letter")


def test_a_whole_block_with_a_letter_is_told(good: Layout) -> None:
    place = next(n for n, piece in enumerate(good.walls[0].courses[0].pieces) if piece.piece == "full")
    assert told(change_piece(good, 1, place, mark="Z")) == ["a full, which is not sawn, lettered Z"]


def test_a_letter_for_two_sizes_is_told(good: Layout) -> None:
    number, place, piece = find_cut(good)
    figures = told(change_piece(good, number, place, length=piece.length - inches(1)))
    assert figures and all(one.startswith(f"{piece.mark} is ") and one.endswith(" elsewhere") for one in figures)


def test_a_size_under_two_letters_is_told_across_walls(good: Layout) -> None:
    # Every cut of the first wall lettered anew: the second wall's are the same sizes under the old letters.
    anew = good
    for number in (1, 2):
        anew = change_course(anew, number, lambda pieces: tuple(
            piece._replace(mark=f"X{piece.mark}") if piece.mark else piece for piece in pieces))
    assert told(anew) and all(" here and X" in figure for figure in told(anew))


def test_a_cut_and_its_mirror_image_are_one_setting_and_a_steeper_one_is_another() -> None:
    layout = lay(make_job(make_masonry(), make_wall(inches("63 5/8"), inches(8))))
    high, low, wide = inches("7 5/8"), inches(3), inches("15 5/8")

    def lay_raked(*rakes: Rake) -> Layout:
        (wall,) = layout.walls
        pieces = tuple(piece._replace(piece="cut", mark="A", rake=rake)
                       for piece, rake in zip(wall.courses[0].pieces[1:3], rakes, strict=True))
        return replace(layout, walls=(replace(wall, courses=(replace(wall.courses[0], pieces=pieces),)),))

    to_left, to_right = Rake(low, high, inches(4), wide), Rake(high, low, 0, wide - inches(4))
    assert told(lay_raked(to_left, to_right)) == []
    assert len(told(lay_raked(to_left, Rake(high, low + inches(1), 0, wide - inches(4))))) == 1


def test_a_notch_at_either_end_is_one_setting_and_a_higher_one_is_another(good: Layout) -> None:
    *_, piece = find_cut(good)
    notched = replace(good, walls=good.walls[2:])

    def notch(height: int, *, left: bool) -> Piece:
        return piece._replace(notch=Notch(0, inches(2), height) if left else Notch(piece.length - inches(2), piece.length, height))

    for pair, count in (((notch(inches(1), left=True), notch(inches(1), left=False)), 0),
                        ((notch(inches(1), left=True), notch(inches(2), left=True)), 1)):
        assert len(told(change_course(notched, 1, lambda _, pair=pair: pair))) == count
