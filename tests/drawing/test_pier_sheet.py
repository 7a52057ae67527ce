"""The piers' sheets and what elevations show of piers: nothing overlaps, sizes to scale, each face as it is seen."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.jobs import MM, make_job, make_masonry, make_wall
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.elevation import edge_lines
from wallplan.drawing.paper import Scale
from wallplan.drawing.pier_sheet import plan_pier_sheets
from wallplan.drawing.piers_in_face import stand_before
from wallplan.drawing.primitives import Outlines, Page
from wallplan.drawing.sheet_set import draw_sheets
from wallplan.drawing.view import View, whole
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.marks import list_marks, write_marks_csv
from wallplan.plan.job import Pier
from wallplan.plan.load import load_plan, read_plan

SAMPLE = Path(__file__).parents[2] / "samples" / "boat-park-wall.toml"


def mm(value: str) -> int:
    return int(Fraction(value) * MM)


def lay_with(*piers: Pier, length: str = "4715") -> Layout:
    masonry = make_masonry("brick-uk")
    wall = make_wall(mm(length), masonry.unit.height_of_courses(4), name="Wall")
    return lay(make_job(masonry, replace(wall, piers=piers), measure="metric"))


@pytest.fixture(scope="module")
def sample() -> Layout:
    return lay(load_plan(SAMPLE))


def words(page: Page) -> list[str]:
    return [text.text for text in texts_of(page)]


@pytest.mark.parametrize("paper", ["A4", "A3", "letter"])
def test_no_lettering_meets_anything(sample: Layout, paper: str) -> None:
    for page in number_sheets(plan_pier_sheets(sample, paper)):
        assert faults_of(page) == []


def test_a_wall_without_piers_has_no_such_sheet() -> None:
    assert plan_pier_sheets(lay_with(), None) == ()


def test_both_courses_are_drawn_to_scale_with_their_sizes() -> None:
    # 440 by 440 behind a half-brick wall: 102.5 of wall and 337.5 before it. At 1:10, bricks are 21.5 by 10.25 mm.
    layout = lay_with(Pier("Gate pier", mm("2250"), mm("440"), 0, mm("337.5")))
    (page,) = number_sheets(plan_pier_sheets(layout, None))
    told = words(page)
    assert {"COURSE 1 (odd)", "COURSE 2 (even)", "440", "102.5", "337.5", "from 2250 to 2690"} <= set(told)
    assert "Scale 1:10. Sheet 1 of 1." in told
    sizes = [(round(box.width, 2), round(box.height, 2)) for item in page.ink if isinstance(item, Outlines)
             for box in item.boxes]
    assert sizes.count((10.25, 21.5)) + sizes.count((21.5, 10.25)) >= 8 + 6
    assert "440 mm x 440 mm, 337.5 mm out of the inside face. Course 1: 8 full; 2: 6 full." in " ".join(told)


def test_a_face_shows_the_pier_that_stands_before_it_and_what_goes_through_behind() -> None:
    layout = lay_with(Pier("pier", mm("2250"), mm("215"), 0, mm("112.5")))
    (wall,) = layout.walls
    outside, inside = (stand_before(wall, layout.job.masonry.thickness, face) for face in ("outside", "inside"))
    within = [[(piece.left, piece.length) for piece in course.pieces
               if piece.of == "pier" and piece.shape == "return"] for course in (*outside.courses[:2], *inside.courses[:2])]
    headers = [(mm("2250"), mm("102.5")), (mm("2362.5"), mm("102.5"))]
    # Outside the headers' ends in the courses that tie it in; inside those, and a stretcher in the others.
    assert within == [headers, [], headers, [(mm("2250"), mm("215"))]]
    for course in inside.courses:
        pieces = sorted(course.pieces, key=lambda piece: piece.left)
        assert all(one.right <= two.left for one, two in pairwise(pieces))


def test_the_set_has_the_piers_after_the_courses_in_plan(sample: Layout) -> None:
    names = [page.name for page in draw_sheets(sample, (), None, ("course",)).pages]
    assert names == ["courses", "piers"]


def test_marks_tell_where_piers_stand(sample: Layout) -> None:
    text = write_marks_csv(list_marks(sample), "metric")
    assert "sides of pier Joint pier,3262.5,3477.5" in text


def test_a_pier_on_a_higher_footing_is_drawn_by_its_own_courses_and_its_sides_as_high_as_it_is() -> None:
    text = ('title = "Terrace"\nmeasure = "metric"\nsizes = "nominal"\nmasonry.unit = "brick-uk"\n[[wall]]\nname = "Terrace"\n'
            "length = 4500\nheight = 1200\n[[wall.step]]\nat = 2250\nup = 300\n[[wall.pier]]\nfrom_left = 3150\nwidth = 450\n"
            'depth = 450\nface = "outside"\n')
    layout = lay(read_plan(text, "terrace.toml"))
    (page,) = number_sheets(plan_pier_sheets(layout, None))
    assert {"COURSE 5 (odd)", "COURSE 6 (even)"} <= set(words(page)) and faults_of(page) == []
    view = View(layout.job, layout.walls[0], whole(layout.walls[0]), Scale("1:10", 10), 0.0, 0.0)
    sides = [line for line in edge_lines(view) if line.x1 == line.x2 == view.across(mm("3150"))]
    # From its footing's bed at 300 + 10 up to 1,200 mm, at 1:10.
    assert [(round(-line.y1, 2), round(-line.y2, 2)) for line in sides] == [(120.0, 31.0)]
