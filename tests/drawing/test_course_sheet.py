"""The course sheet: every piece in plan where it lies, walls that join as one building, corners proved square."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from tests.jobs import inches
from wallplan.drawing.course_plan import CoursePlan
from wallplan.drawing.course_sheet import plan_course_sheets
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.ground_plan import find_buildings
from wallplan.drawing.paper import SCALES, Scale
from wallplan.drawing.primitives import Box, Outlines, Page
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_MM, print_length
from wallplan.plan.load import read_plan
from wallplan.planner import lay_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def sample(name: str) -> Layout:
    return lay_plan(Path(__file__).parents[2] / "samples" / f"{name}.toml")


def boxes_of(page: Page) -> list[Box]:
    """Outlines of pieces: the lists of more rectangles than a frame or a scale bar has."""
    return [box for item in page.ink if isinstance(item, Outlines) and len(item.boxes) > 8 for box in item.boxes]


def ratio_of(page: Page, layout: Layout) -> int:
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    return next(scale.ratio for scale in SCALES[layout.job.measure] if f"Scale {scale.name}." in told)


@pytest.mark.parametrize("paper", ["letter", "A4", "A3"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_lettering_meets_anything(path: Path, paper: str) -> None:
    for page in number_sheets(plan_course_sheets(lay_plan(path), paper)):
        assert faults_of(page) == []


@pytest.mark.parametrize("name", PLANS)
def test_free_walls_of_every_size_keep_their_lettering_apart(name: str) -> None:
    for page in number_sheets(plan_course_sheets(laid(name)[0], None)):
        assert faults_of(page) == []


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch"])
def test_a_closed_building_comes_round_to_where_it_began(name: str) -> None:
    (building,) = find_buildings(sample(name))
    last = building.legs[-1]
    assert building.closed
    assert last.at(last.wall.wall.length, 0) == building.points[0] == (0, 0)


def test_pieces_of_a_whole_building_never_overlap_in_plan_and_fill_its_corners() -> None:
    for name in ("pump-shed-closed", "kiosk-with-porch"):
        layout = sample(name)
        (building,) = find_buildings(layout)
        for number in (1, 2):
            plan = CoursePlan(building, number, Scale("1:1", 1), layout.job.measure, 0, 0)
            boxes = [box for leg in building.legs for _, box in plan.pieces_of(leg)]
            assert not any(one.shrunk(0.001).meets(other) for place, one in enumerate(boxes) for other in boxes[:place])
            for corner in building.points:
                x, y = plan.point(corner)
                reach = building.thickness / TICKS_PER_MM
                assert any((box.left - 1e-6 <= x <= box.right + 1e-6 and box.top - 1e-6 <= y <= box.bottom + 1e-6)
                           or math.hypot(x - box.left, y - box.bottom) < reach for box in boxes)


def test_distances_on_the_paper_times_the_scale_are_the_layouts() -> None:
    layout = sample("pump-shed-closed")
    (page,) = number_sheets(plan_course_sheets(layout, None))
    boxes, ratio = boxes_of(page), ratio_of(page, layout)
    half = len(boxes) // 2
    for group in (boxes[:half], boxes[half:]):
        wide = (max(box.right for box in group) - min(box.left for box in group)) * ratio
        deep = (max(box.bottom for box in group) - min(box.top for box in group)) * ratio
        # 16 ft and 10 ft 8 in. nominal, less a joint of 3/8 in.
        assert (wide, deep) == (pytest.approx(191.625 * 25.4, abs=0.1), pytest.approx(127.625 * 25.4, abs=0.1))


def test_both_diagonals_of_a_rectangle_are_told_by_pythagoras() -> None:
    layout = sample("pump-shed-closed")
    diagonal = math.hypot(191.625, 127.625)  # 230.235 in = 19 ft 2 1/4 in
    told = " ".join(text.text for text in texts_of(number_sheets(plan_course_sheets(layout, None))[0]))
    assert print_length(round(diagonal * 24_384), "feet") == "19'-2 1/4\""
    assert "19'-2 1/4\"" in told.replace("\u00a0", " ")


def test_each_corner_of_an_l_is_checked_over_its_own_two_walls() -> None:
    (building,) = find_buildings(sample("kiosk-with-porch"))
    lengths = [3590, 1340, 1800, 1350, 1790, 2690]
    for check in building.checks():
        legs = lengths[check.corner - 2], lengths[check.corner - 1]
        assert check.length / TICKS_PER_MM == pytest.approx(math.hypot(*legs), abs=0.001)


def test_who_runs_through_is_who_ends_at_the_corner_without_a_return() -> None:
    layout = sample("pump-shed-closed")
    (building,) = find_buildings(layout)
    for number in (1, 2):
        plan = CoursePlan(building, number, Scale("1:1", 1), "feet", 0, 0)
        for corner in building.corners:
            before, after = building.meeting(corner)
            assert plan.is_through(before, right=True) is not plan.is_through(after, right=False)


def test_each_wall_is_named_and_measured_in_both_courses() -> None:
    layout = sample("kiosk-with-porch")
    (page,) = number_sheets(plan_course_sheets(layout, None))
    texts = [text.text for text in texts_of(page)]
    for wall in layout.walls:
        assert texts.count(wall.wall.name) == 2
        assert texts.count(print_length(wall.wall.length, "metric")) == 2


def test_a_job_without_walls_has_no_course_sheet() -> None:
    layout, _ = laid("kiosk")
    assert number_sheets(plan_course_sheets(Layout(layout.job, ()), None)) == ()


def test_a_wall_that_abuts_is_drawn_named_and_told() -> None:
    layout = sample("net-store-with-partition")
    (building,) = find_buildings(layout)
    assert (len(building.legs), len(building.stems)) == (4, 1)
    stem, main = building.stems[0], building.legs[0]
    # Its left end stands on the inside of the first wall, 12 ft and its own thickness along, and it runs up the sheet.
    thick = layout.job.masonry.unit.thickness
    assert (stem.start, stem.way) == (main.at(12 * 12 * inches(1) + thick, thick), (0, 1))
    (page,) = number_sheets(plan_course_sheets(layout, "letter"))
    words = " ".join(text.text for text in texts_of(page)).replace("\u00a0", " ")
    assert "Partition abuts Landing side 12'-0\" from the left end" in words
    assert "straps on courses 4, 8" in words


def test_piers_alike_are_told_in_one_line_and_not_lettered_one_by_one() -> None:
    layout = sample("garden-wall-piers")
    (building,) = find_buildings(layout)
    assert building.piers == building.stems
    (page,) = number_sheets(plan_course_sheets(layout, "letter"))
    words = " ".join(text.text for text in texts_of(page)).replace("\u00a0", " ")
    assert "Piers on the inside of Garden wall, 8\" out of its face, at 1'-4\", 8'-0\", 16'-0\" from its left end." in words
    assert "pier 1" not in words


def test_an_l_corner_unit_is_drawn_as_an_l() -> None:
    layout = sample("chain-store-l-corners")
    (building,) = find_buildings(layout)
    leg, ell = building.legs[0], building.ell
    assert ell is not None
    outline = leg.ell_outline(0, inches("15 5/8"), building.thickness, ell)
    # 15 5/8 in. along, 11 5/8 deep at its tail from 12 in. on, 7 5/8 deep beside the corner.
    assert outline == tuple((inches(x), inches(y)) for x, y in (
        (0, 0), ("15 5/8", 0), ("15 5/8", "11 5/8"), (12, "11 5/8"), (12, "7 5/8"), (0, "7 5/8")))


def test_diagonals_keep_off_the_letters_of_corner_pieces() -> None:
    """240 mm block: the corner pieces are cut and lettered, and the diagonals begin within the walls."""
    sides = "".join(f'[[wall]]\nname = "Side {number}"\nlength = {length}\ncourses = 6\nleft = "outside corner"\n'
                    'right = "outside corner"\n' for number, length in enumerate((3600, 2800, 3600, 2800), start=1))
    plan = f'title = "Valve pit"\nmeasure = "metric"\n[masonry]\nunit = "block-ca-240"\nbond = "stack"\n{sides}'
    for paper in ("letter", "A4", "A3"):
        layout = lay(read_plan(plan, "pit.toml"))
        assert any(piece.mark for wall in layout.walls for piece in wall.courses[0].pieces)
        for page in number_sheets(plan_course_sheets(layout, paper)):
            assert faults_of(page) == []
