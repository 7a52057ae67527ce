"""What the page says of courses and of steps in laying, against walls worked out by hand."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.planner import lay_plan
from wallplan.teaching.page.course_list import tell_pieces
from wallplan.teaching.page.course_words import compare_with_below, count_pieces
from wallplan.teaching.page.practice import list_questions
from wallplan.teaching.page.texts import Texts
from wallplan.teaching.page.wall_data import tell_steps, tell_wall
from wallplan.teaching.runs import read_runs

SAMPLES = Path(__file__).parents[3] / "samples"


def steps_of(layout: Layout, index: int = 0) -> list[tuple[str, str]]:
    """Title and explanation of each step of a wall."""
    texts = Texts()
    told = tell_steps(layout, index, texts)
    return [(texts.all()[title], texts.all()[why]) for title, why, *_ in told]


def test_a_course_is_counted_and_listed() -> None:
    # 20 ft 0 in.: odd courses from the left end: 48 in. of full blocks, the door to 88, a half, then full blocks to the end.
    layout = lay(pump_house())
    runs, (first, second) = read_runs(layout, 0), layout.walls[0].courses[:2]
    assert count_pieces(runs, first) == "12 × full block, 1 × half block"
    assert tell_pieces(runs, first) == (
        '3 × full block (15 5/8"); [Door]; 1 × half block (7 5/8"); 9 × full block (15 5/8")')
    assert tell_pieces(runs, second) == (
        '1 × half block (7 5/8"); 2 × full block (15 5/8"); 1 × half block (7 5/8"); [Door]; 9 × full block (15 5/8"); '
        '1 × half block (7 5/8")')
    assert compare_with_below(runs, first) == ""
    assert compare_with_below(runs, second) == (
        "From the left end, course 1 begins with a full block, course 2 with a half block. No joint of one is nearer than 8\" to "
        "a joint of the other; 4\" is the least that will do.")


def test_stack_bond_is_no_mistake() -> None:
    layout = lay_plan(SAMPLES / "screen-stack-bond.toml")
    assert compare_with_below(read_runs(layout, 0), layout.walls[0].courses[1]).endswith(
        "Stack bond: their joints stand in line on purpose.")


def test_leads_of_a_wall_that_stands_alone() -> None:
    # 5 courses in the lead, half a block less in each: 48, 40, 32, 24, 16 in. of 16 in. blocks.
    told = steps_of(lay(pump_house()))
    assert [title for title, _ in told[:6]] == [
        *(f"Left lead, course {number}, lift 1 of 3" for number in range(1, 6)), "Right lead, course 1, lift 1 of 3"]
    assert [why.partition(",")[0] for _, why in told[:5]] == ["3 pieces", "3 pieces", "2 pieces", "2 pieces", "1 piece"]
    assert "story pole" in told[0][1] and "corner" not in told[0][1]


def test_leads_at_a_corner_go_up_with_the_other_walls() -> None:
    told = dict(steps_of(lay_plan(SAMPLES / "pump-shed-closed.toml")))
    assert told["Left lead, course 1, lift 1 of 3"].startswith("2 pieces, from the left end inwards.")
    assert ("The block seen end-on at the corner is laid with West side: it is that wall's turn to run through. "
            "Both walls' leads at this corner go up together.") in told["Left lead, course 1, lift 1 of 3"]
    assert "West side" not in told["Left lead, course 2, lift 1 of 3"]
    assert told["Left lead, course 5, lift 1 of 3"].startswith("Nothing of this wall's own here.")


def test_a_wall_too_short_for_leads_is_laid_by_the_level() -> None:
    told = steps_of(lay(make_job(make_masonry(), make_wall(inches("31 5/8"), inches(16)))))
    assert [title for title, _ in told] == ["Course 1", "Course 2"]
    assert told[0][1] == "2 pieces. The wall is too short for leads: lay each course by the level, and look that it is plumb."


def test_every_piece_is_laid_once_in_the_steps() -> None:
    for name in ("kiosk-with-porch", "high-sill", "pump-house"):
        layout = lay_plan(SAMPLES / f"{name}.toml")
        for index, wall in enumerate(layout.walls):
            laid = [(course, piece) for _, _, course, pieces, *_ in tell_steps(layout, index, Texts()) for piece in pieces]
            assert sorted(laid) == [(course, piece) for course, row in enumerate(wall.courses) for piece in range(len(row.pieces))]


def test_an_inside_corner_hides_what_lies_behind_it() -> None:
    texts = Texts()
    porch = tell_wall(lay_plan(SAMPLES / "kiosk-with-porch.toml"), 2, texts)
    hidden = [piece for row in porch["rows"] for piece in row if piece[1] == 0]
    assert porch["name"] == "Porch back"
    assert hidden and all(texts.all()[piece[7]].startswith("End of a brick of Kiosk side") for piece in hidden)
    assert all(0 <= piece[0] <= piece[0] + piece[1] <= porch["length"] for row in porch["rows"] for piece in row if piece[1])


def test_laps_are_those_of_the_why_lines() -> None:
    texts = Texts()
    courses = tell_wall(lay(pump_house()), 0, texts)["courses"]
    laps = [{texts.all()[words] for _, _, words in course[5]} for course in courses[1:4]]
    assert laps == [{'8"'}] * 3


def test_raked_and_notched_pieces_are_told_and_traced() -> None:
    """Over the eaves of the boat store's gable each course ends in two raked blocks; where the slip wall's footing steps, one
    block is notched."""
    texts = Texts()
    gable = tell_wall(lay_plan(SAMPLES / "boat-store-gable.toml"), 0, texts)
    raked = [piece for row in gable["rows"] for piece in row if len(piece) > 11]
    assert raked and all(texts.all()[piece[7]].startswith("Raked block") for piece in raked)
    assert all("bottom" in texts.all()[piece[8]] for piece in raked)
    # A roof of 8 in 12 rises two thirds of what it runs: the slope of every raked piece, to the tick that rounding leaves.
    for piece in raked:
        corners = list(zip(piece[11][::2], piece[11][1::2], strict=True))
        slopes = [abs(up2 - up1) / abs(at2 - at1) for (at1, up1), (at2, up2) in pairwise(corners)
                  if at1 != at2 and up1 != up2]
        assert slopes and all(abs(slope - 2 / 3) < 1e-3 for slope in slopes)
    assert len(gable["outline"]) > 8 and gable["footing"] == [0, 0, gable["length"], 0]
    steps = tell_wall(lay_plan(SAMPLES / "slip-wall-steps.toml"), 0, texts)
    notched = [piece for row in steps["rows"] for piece in row if len(piece) > 11]
    assert notched and all("notch" in texts.all()[piece[8]] for piece in notched)
    assert len(steps["footing"]) > 4


def test_no_practice_where_length_is_not_all_there_is_to_choose() -> None:
    layout = lay_plan(SAMPLES / "boat-store-gable.toml")
    asked = {question.course for question in list_questions(read_runs(layout, 0))}
    raked = {course.number for course in layout.walls[0].courses if any(piece.rake for piece in course.pieces)}
    assert asked and raked and not asked & raked
