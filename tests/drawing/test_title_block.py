"""The title block says what a mason must know before he takes a figure from the sheet."""

from __future__ import annotations

from dataclasses import replace

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import drawn, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.title_block import print_bond, print_proof, tell_part
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.rules.check import check


def _words(name: str) -> str:
    return " ".join(text.text for text in texts_of(drawn(name).pages[0]))


def test_it_names_wall_job_face_unit_bond_joints_sizes_datum_and_scale() -> None:
    words = _words("kiosk")
    for told in ("WALL Landing side", "Ferry landing", "Outside face. Left: free end.", "8 in. concrete block",
                 '7 5/8" thick, 7 5/8" high, 15 5/8" long', "Half bond", 'Head joints as laid 3/8"',
                 "Plan sizes actual", "top of footing", "Sheet 1 of 2"):
        assert told in words, told


def test_the_cautions_are_there() -> None:
    words = _words("kiosk")
    for told in ("dust", "Lift", "Cement burns", "wind", "no structural design", "retaining walls", "Local codes"):
        assert told in words, told


def test_the_proof_tells_broken_rules_with_their_count() -> None:
    layout, findings = laid("kiosk")
    wall = layout.walls[0]
    rules = {finding.rule for finding in findings if finding.wall == wall.wall.name}
    assert f"Rules: all {len(rules)} held." in print_proof(wall, findings)
    broken = [replace(finding, held=False) if finding.rule == "lap" else finding for finding in findings]
    twice = tuple(finding for finding in broken for _ in range(2))
    assert f"{len(rules) - 1} held, 1 BROKEN: lap (2 places)" in print_proof(wall, twice)
    assert "not checked" in print_proof(wall, ())


def test_what_publications_ask_over_the_plan_stands_on_the_sheet_that_is_taped_up() -> None:
    """By pencil: 32 ft in one piece, 8 ft high, 1 1/2 x 8 = 12 ft; a clear span of 10 ft 0 3/8 in. asks for an inch a foot."""
    plan = ('title = "Store"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n[[wall]]\nname = "Slip side"\n'
            'length = "32\' 0"\nheight = "8\' 0"\n[[wall.opening]]\nname = "Boat door"\nfrom_left = "8\' 0"\nwidth = "10\' 0"\n'
            'height = "7\' 4"\nlintel = "precast"\nbearing = "4"\n')
    layout = lay(read_plan(plan, "store.toml"))
    (page,) = number_sheets(plan_wall_sheets(layout, check(layout), "letter"))
    words = " ".join(text.text for text in texts_of(page)).replace("\u00a0", " ")
    assert "31'-11 5/8\" without a control joint, 12'-0\" at most by NCMA TEK 10-2B (2005): ask the designer." in words
    assert "Boat door: lintel bears 7 5/8\" and 15 5/8\", under the 10 1/16\" of the PCA handbook: ask whoever sized it." in words
    assert faults_of(page) == []


def test_cutting_is_told_with_its_bound() -> None:
    layout, findings = laid("kiosk")
    wall = layout.walls[0]
    assert f"Cutting {wall.cutting} " in print_proof(wall, findings)
    assert f"proven at least {wall.cutting_at_least}" in print_proof(wall, findings)
    assert "proven the least" in print_proof(replace(wall, cutting_at_least=wall.cutting), findings)


def test_joints_that_opened_are_told_from_tightest_to_widest() -> None:
    layout, _ = laid("kiosk")
    wall = replace(layout.walls[0], joints=(24_384 // 4, 24_384 // 2))
    assert 'Head joints as laid 1/4" to 1/2", ' in print_bond((wall,), layout.job).replace("\u00a0", " ")


def test_the_part_of_a_split_wall_is_told() -> None:
    assert tell_part("0", "3600", (1, 9)).startswith("This sheet: 0 to 3600 from the left end, courses 1 to 9;")
