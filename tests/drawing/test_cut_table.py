"""The cut table: every letter once, with the size that prints for it, how many, in rows that stay in the panel."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import ink_of, texts_of
from tests.drawing.walls import laid
from wallplan.drawing.cut_table import Row, list_rows, set_cuts
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.face import show_face
from wallplan.drawing.piers_in_face import stand_before
from wallplan.drawing.primitives import Text
from wallplan.drawing.sheet_plan import make_subject
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_inches
from wallplan.lists.cuts import list_cuts, list_wall_cuts
from wallplan.plan.load import load_plan

SAMPLES = Path(__file__).parents[2] / "samples"

MANY = tuple(Row(f"A{letter}", f'{number} 5/8" x 3 5/8"', number, number % 3 == 0)
             for number, letter in enumerate("ABCDEFGHJKLMNPQ"))


def rows_of(layout: Layout) -> tuple[Row, ...]:
    """The rows of a layout's first wall."""
    return list_rows(list_wall_cuts(layout.walls[0], list_cuts(layout)), layout.job)


def test_a_cut_is_listed_once_with_its_size_and_count() -> None:
    layout, _ = laid("kiosk")
    pieces = [piece for course in layout.walls[0].courses for piece in course.pieces if piece.mark]
    cuts = rows_of(layout)
    assert [cut.mark for cut in cuts] == sorted({piece.mark for piece in pieces if piece.mark})
    assert sum(cut.count for cut in cuts) == len(pieces)
    for cut in cuts:
        assert {print_inches(piece.length) for piece in pieces if piece.mark == cut.mark} == {cut.size}


def test_a_rip_is_listed_with_its_height() -> None:
    layout, _ = laid("quay")
    assert any(" x " in cut.size for cut in rows_of(layout))


@pytest.mark.parametrize(("width", "room"), [(250, 100), (120, 100), (120, 20), (84, 0), (30, 0)])
def test_the_table_stays_in_its_panel_and_its_words_apart(width: float, room: float) -> None:
    panel = set_cuts(MANY, width, room)
    inks = [ink_of(item) for item in panel.ink if isinstance(item, Text)]
    assert len(inks) >= 3 * len(MANY)
    if width > 30:  # narrower than a title: only the height is kept
        assert max(ink.bounds[2] for ink in inks) <= width
    assert max(ink.bounds[3] for ink in inks) <= panel.height
    assert not any(one.intersects(other) for place, one in enumerate(inks) for other in inks[:place])


def test_sizes_are_five_mm_high_where_there_is_room_and_never_under_three_and_a_half() -> None:
    def heights(room: float) -> set[float]:
        return {item.height for item in set_cuts(MANY, 250, room).ink if isinstance(item, Text)} - {2.5}

    assert heights(100) == {5.0}
    assert heights(10) == {3.5}


def test_a_wall_without_cuts_says_so() -> None:
    texts = [item.text for item in set_cuts((), 100, 100).ink if isinstance(item, Text)]
    assert texts == ["NO CUTS in this wall"]


@pytest.mark.parametrize(("sample", "told"), [
    # Two piers at the ends, in odd courses two cuts behind each other inside each: 2 x 2 x 10, none on either face.
    ("landing-garden-wall", "40 (all in piers)"),
    ("harbour-office-flemish", "76*"),  # a closer goes through the wall: both faces show it
])
def test_cuts_that_the_face_does_not_show_are_marked_in_the_table(sample: str, told: str) -> None:
    layout = lay(load_plan(SAMPLES / f"{sample}.toml"))
    (page, *_) = number_sheets(plan_wall_sheets(layout, (), None))
    texts = [text.text for text in texts_of(page)]
    assert told in texts
    assert any(text.endswith("in piers: see PIERS") for text in texts) == ("piers" in told)


def test_every_letter_of_the_table_stands_on_the_face_or_says_where_it_is() -> None:
    for path in sorted(SAMPLES.glob("*.toml")):
        layout = lay(load_plan(path))
        for wall in layout.walls:
            for row in make_subject(wall, layout.job, (), list_cuts(layout)).cuts:
                seen, _ = show_face(stand_before(wall, layout.job.masonry.thickness, "outside"), layout.job.masonry.thickness)
                count = sum(piece.mark == row.mark for course in seen.courses for piece in course.pieces)
                assert bool(row.hidden) == (count < row.count), (path.stem, row)
                assert row.hidden.startswith("all") == (count == 0), (path.stem, row)


def test_the_count_of_a_long_size_stands_behind_its_last_line() -> None:
    rows = (Row("A", '15 5/8" bottom, to a point 7 1/2" high', 1, False), Row("B", '15 1/16" bottom, 3 5/8" top', 10, False, (5, 5)))
    texts = [item for item in set_cuts(rows, 123.0, 0.0).ink if isinstance(item, Text)]
    bases = {item.text: item.y for item in texts}
    assert bases["1"] == bases['15 5/8" bottom, to a point 7 1/2" high']
    assert bases["10: 5 left, 5 right"] == bases['15 1/16" bottom, 3 5/8" top']
