"""Whole wall sheets: what every sheet must keep, and that the drawing is true to the layout."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, drawn, laid
from tests.layout.test_outline import BAD_STEPS, GABLE, lay_text
from tests.long_run import examples
from tests.strategies import outlined_plans
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.paper import PAPERS, SCALES, Paper
from wallplan.drawing.primitives import Box, Outlines, Page, Segment, Strokes, Text
from wallplan.drawing.wall_sheet import name_walls, plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_MM, print_length
from wallplan.plan.load import read_plan


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", PLANS)
def test_no_lettering_meets_anything_and_all_is_big_enough(name: str, paper: str) -> None:
    for page in drawn(name, paper).pages:
        assert faults_of(page) == []


@settings(max_examples=examples(12))
@given(length=st.integers(60, 900), courses=st.integers(2, 26), door=st.integers(20, 50), left=st.integers(8, 200),
       unit=st.sampled_from(["block-8", "block-12", "brick-modular"]))
def test_random_walls_keep_their_lettering_apart(length: int, courses: int, door: int, left: int, unit: str) -> None:
    plan = f'title = "Kiosk"\nmeasure = "feet"\n[masonry]\nunit = "{unit}"\n[[wall]]\nname = "A"\n'
    plan += f"length = {length}\ncourses = {courses}\n"
    if left + door + 24 < length and courses > 14:
        plan += f'[[wall.opening]]\nname = "Door"\nfrom_left = {left}\nwidth = {door}\nheight = 30\nlintel = "steel"\n'
    layout = lay(read_plan(plan, "kiosk.toml"))
    for page in number_sheets(plan_wall_sheets(layout, (), None)):
        assert faults_of(page) == []


def test_the_fault_finder_finds_faults() -> None:
    ink = (Text(5, 50, "out", 3.5), Text(50, 50, "A", 3.5), Text(51, 50, "B", 3.5), Text(80, 50, "small", 2.0),
           Strokes((Segment(100, 48, 120, 48),), 0.2), Text(105, 50, "crossed", 3.5))
    faults = faults_of(Page(Paper("A4", 297, 210), "x", "x", "x", ink))
    assert len(faults) == 5, faults


def test_twenty_feet_by_eight_fit_one_letter_page_at_three_eighths() -> None:
    page = drawn("kiosk").pages[0]
    assert page.name == "wall-landing-side"
    assert "Scale 3/8 in = 1 ft. Sheet 1 of 2." in [text.text for text in texts_of(page)]
    assert [page.name for page in drawn("kiosk", "A4").pages] == ["wall-landing-side", "wall-water-side"]


def _unit_boxes(page: Page) -> list[Box]:
    """The outlines of pieces: those of the first list of outlines after the panels' frames."""
    return list(max((item for item in page.ink if isinstance(item, Outlines)), key=lambda item: len(item.boxes)).boxes)


def _ratio(page: Page, layout: Layout) -> int:
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    return next(scale.ratio for scale in SCALES[layout.job.measure] if f"Scale {scale.name}." in told)


def test_every_piece_is_drawn_where_it_lies() -> None:
    """Outer edges are the wall's; inner edges lie in the joints, at most half a joint from the piece."""
    layout, _ = laid("kiosk")
    wall, page = layout.walls[0], drawn("kiosk").pages[0]
    boxes = _unit_boxes(page)
    ratio = _ratio(page, layout)
    left, bottom = min(box.left for box in boxes), max(box.bottom for box in boxes)
    pieces = [piece for course in wall.courses for piece in course.pieces]
    assert len(boxes) == len(pieces)
    half = max(wall.joints) / 2 / TICKS_PER_MM
    for box, piece in zip(boxes, pieces, strict=True):
        drawn_at = [(box.left - left) * ratio, (box.right - left) * ratio, (bottom - box.bottom) * ratio,
                    (bottom - box.top) * ratio]
        lies_at = [ticks / TICKS_PER_MM for ticks in (piece.left, piece.right, piece.bottom, piece.top)]
        outwards = [a - b for a, b in zip(lies_at, drawn_at, strict=True)]
        assert 0 <= outwards[0] + 1e-6 <= half + 0.1
        assert 0 <= 1e-6 - outwards[1] <= half + 0.1
        assert 0 <= outwards[2] + 1e-6 <= 2 * half + 0.1
        assert 0 <= 1e-6 - outwards[3] <= half + 0.1
    assert (max(box.right for box in boxes) - left) * ratio == pytest.approx(wall.wall.length / TICKS_PER_MM, abs=0.1)


@pytest.mark.parametrize("name", ["kiosk", "shelter"])
def test_jambs_and_ends_are_heavy_lines_true_to_a_tenth_of_a_millimetre(name: str) -> None:
    layout, _ = laid(name)
    wall, page = layout.walls[0].wall, drawn(name).pages[0]
    left = min(box.left for box in _unit_boxes(page))
    heavy = [s for item in page.ink if isinstance(item, Strokes) and item.width == 0.7 for s in item.segments]
    uprights = {round((s.x1 - left) * _ratio(page, layout), 1) for s in heavy if s.x1 == s.x2}
    points = [0, wall.length] + [side for opening in wall.openings for side in (opening.left, opening.right)]
    for point in points:
        assert min(abs(upright - point / TICKS_PER_MM) for upright in uprights) <= 0.1


def test_the_lead_is_racked_back_by_heavy_lines_from_course_to_course() -> None:
    """Each course of a lead ends in a heavy upright line at its last piece, half a joint off."""
    layout, _ = laid("quay")
    wall, page = layout.walls[0], drawn("quay").pages[0]
    left = min(box.left for box in _unit_boxes(page))
    heavy = [s for item in page.ink if isinstance(item, Strokes) and item.width == 0.7 for s in item.segments]
    ratio = _ratio(page, layout)
    half = layout.job.masonry.joint / 2 / TICKS_PER_MM
    for course in wall.courses:
        led = [piece.right for piece in course.pieces if piece.lead == "left"]
        if led:
            edge = max(led) / TICKS_PER_MM + half
            assert any(s.x1 == s.x2 and abs((s.x1 - left) * ratio - edge) < 0.1 for s in heavy), course.number


def test_running_distances_stand_at_their_ticks() -> None:
    layout, _ = laid("kiosk")
    wall, page = layout.walls[0].wall, drawn("kiosk").pages[0]
    left = min(box.left for box in _unit_boxes(page))
    at = [(text.text, (text.x - left) * _ratio(page, layout)) for text in texts_of(page) if text.anchor == "middle"]
    for opening in wall.openings:
        for side in (opening.left, opening.right):
            assert (print_length(side, "feet"), pytest.approx(side / TICKS_PER_MM, abs=0.1)) in at
    assert "overall 20'-0\"" in [words for words, _ in at]


def test_a_long_wall_is_split_with_a_unit_on_both_sheets_and_a_match_line_of_one_name() -> None:
    pages = drawn("quay").pages
    assert [page.name for page in pages] == ["wall-quay-side", "wall-quay-side-2", "wall-quay-side-3"]
    for page in pages:
        assert "MATCH LINE" in [text.text for text in texts_of(page)]
    layout, _ = laid("quay")
    pieces = sum(len(course.pieces) for course in layout.walls[0].courses)
    assert sum(len(_unit_boxes(page)) for page in pages) > pieces


def test_a_tall_wall_is_split_at_a_course() -> None:
    pages = drawn("tower").pages
    assert len(pages) > 1
    assert any(text.text.startswith("This sheet") for text in texts_of(pages[0]))


def test_every_course_is_numbered_at_both_ends() -> None:
    numbers = [text.text for text in texts_of(drawn("kiosk").pages[0]) if text.anchor == "end" and text.text.isdigit()]
    assert sorted(numbers, key=int) == [str(number) for number in range(1, 14) for _ in range(2)]


@pytest.mark.parametrize("name", PLANS)
def test_every_letter_on_the_wall_is_in_the_table_once_with_its_count(name: str) -> None:
    layout, _ = laid(name)
    for wall, page in zip(layout.walls, drawn(name, "tabloid").pages[: len(layout.walls)], strict=True):
        marks = [piece.mark for course in wall.courses for piece in course.pieces if piece.mark]
        texts = [text.text for text in texts_of(page)]
        for mark in set(marks):
            rows = [texts[place + 1 : place + 3] for place, text in enumerate(texts[:-2])
                    if text == mark and texts[place + 1].endswith(('"', "mm"))]
            assert len(rows) == 1
            assert rows[0][1].rstrip("*") == str(marks.count(mark))


def test_marks_numbers_and_distances_are_at_least_three_and_a_half_mm_high() -> None:
    for name in PLANS:
        for page in drawn(name).pages:
            for text in texts_of(page):
                if len(text.text) <= 2 and text.anchor != "start" and text.text not in ("0", "1"):
                    assert text.height >= 3.5, text


def test_walls_get_file_names_of_their_own() -> None:
    assert name_walls(("North", "Kiosk / süd", "!", "north")) == ("wall-north-no-1", "wall-kiosk-sud", "wall-3",
                                                                  "wall-north-no-4")


def test_a_date_stands_only_where_the_plan_gives_one() -> None:
    assert any("Date 2026-05-01" in text.text for text in texts_of(drawn("pier").pages[0]))
    assert not any("Date" in text.text for text in texts_of(drawn("kiosk").pages[0]))


def test_what_finds_no_room_on_the_wall_keeps_off_the_scale_bar() -> None:
    """Cuts told in words on a full sheet: one line stood on the bar at the foot."""
    opening = '[[wall.opening]]\nfrom_left = {}\nwidth = {}\nsill = {}\nheight = {}\nlintel = "precast"\n'
    plan = ('title = "Landing"\nmeasure = "metric"\n[masonry]\nunit = "block-10"\nleads = 9\n[[wall]]\nname = "Landing"\n'
            'control_joints = [8328]\nlength = 9141\nheight = 2986\nbond_beams = ["top"]\n'
            + opening.format(407, 450, 968, 225) + opening.format(1264, 1843, 700, 1111) + opening.format(4000, 1500, 333, 1777))
    for page in number_sheets(plan_wall_sheets(lay(read_plan(plan, "landing.toml")), (), None)):
        assert faults_of(page) == []
        full = [place for place, text in enumerate(texts_of(page)) if "also at" in text.text]
        assert len(full) >= 0


def test_a_lead_that_ends_at_a_jamb_does_not_run_through_the_rips_under_the_sill() -> None:
    opening = '[[wall.opening]]\nfrom_left = {}\nwidth = {}\nsill = {}\nheight = {}\nlintel = "{}"\n'
    plan = ('title = "Landing"\nmeasure = "metric"\n[masonry]\nunit = "landing-unit"\n[own_unit]\nkey = "landing-unit"\nkind = "brick"\n'
            'shapes = ["stretcher"]\nlength = "154 mm"\nheight = "157 mm"\nthickness = "173 mm"\njoint = "9 mm"\n[[wall]]\n'
            'name = "Landing"\nlength = 6061\nheight = 2761\n' + opening.format(244, 554, 872, 222, "none")
            + opening.format(1086, 745, 30, 166, "precast") + opening.format(2241, 978, 93, 1277, "none")
            + opening.format(4010, 957, 977, 1165, "precast"))
    for page in number_sheets(plan_wall_sheets(lay(read_plan(plan, "landing.toml")), (), "tabloid")):
        assert faults_of(page) == []


@settings(max_examples=examples(6), deadline=None)
@given(outlined_plans())
def test_random_stepped_and_gabled_walls_keep_their_lettering_apart(plan: str) -> None:
    for page in number_sheets(plan_wall_sheets(lay(read_plan(plan, "slip.toml")), (), None)):
        assert faults_of(page) == []


def test_a_gable_is_drawn_to_its_slopes_with_ridge_and_levels() -> None:
    layout = lay_text(GABLE)
    (page, *_) = number_sheets(plan_wall_sheets(layout, (), "A3"))
    texts = [text.text for text in texts_of(page)]
    assert "ridge at 16'-0\"" in texts
    heavy = [line for item in page.ink if isinstance(item, Strokes) and item.width == 0.7 for line in item.segments]
    slopes = [line for line in heavy if line.x1 != line.x2 and line.y1 != line.y2]
    # 8 ft up over half of 23 ft 11 5/8 in.: both slopes in full, the right one coming down.
    assert sorted(round((line.y2 - line.y1) / (line.x2 - line.x1), 3) for line in slopes) == [-0.668, 0.668]


def test_the_levels_of_a_stepped_footing_are_lettered() -> None:
    pages = number_sheets(plan_wall_sheets(lay_text(BAD_STEPS), (), "A3"))
    texts = {text.text for page in pages for text in texts_of(page)}
    assert {"footing at 2'-0\"", "footing at 1'-4\"", 'footing at 9"', "10'-0\"", "20'-0\"", "30'-0\""} <= texts


def test_a_steel_lintel_off_the_coursing_keeps_off_the_letters_of_the_rips() -> None:
    opening = '[[wall.opening]]\nfrom_left = {}\nwidth = {}\nsill = {}\nheight = {}\nlintel = "steel"\n'
    plan = ('title = "Landing"\nmeasure = "metric"\nsizes = "nominal"\n[masonry]\nunit = "block-uk-75"\n[[wall]]\nname = "1"\n'
            'control_joints = [4351]\nlength = 5251\nheight = 1282\n' + opening.format(831, 542, 569, 232)
            + opening.format(1823, 1178, 59, 646))
    for face in ("outside", "inside"):
        for page in number_sheets(plan_wall_sheets(lay(read_plan(plan, "landing.toml")), (), None, face)):  # type: ignore[arg-type]
            assert faults_of(page) == []
