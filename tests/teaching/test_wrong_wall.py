"""Five faults in a wall: each found by the rules that check uses, and nothing else found."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings

from tests.drawing.sheets import faults_of
from tests.jobs import make_job, make_masonry, make_wall
from tests.long_run import examples
from tests.strategies import header_jobs, lesson_texts
from tests.teaching.lessons import SAMPLES, laid, lesson, sample, words_on
from wallplan.catalogue.load import units
from wallplan.drawing.board import Board
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.primitives import Box, Page, Text
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan
from wallplan.rules.check import check
from wallplan.teaching.fault_kinds import BROKEN, KINDS, list_kinds
from wallplan.teaching.grid import Row, draw_rows
from wallplan.teaching.wrong_sheet import TOLD
from wallplan.teaching.wrong_wall import WrongWall, seed_faults


def judge_wrong_wall(wrong: WrongWall | None) -> WrongWall:
    """Five faults, one of each kind, and every finding of the check belongs to one of them; the right wall has none."""
    assert wrong is not None
    assert sorted(fault.kind for fault in wrong.faults) == sorted(list_kinds(wrong.layout.job.masonry))
    assert [finding for finding in check(wrong.right) if not finding.held] == []
    # The faults' own cuts have no letters, which would give them away on the sheet.
    broken = [finding for finding in check(wrong.layout) if not finding.held and finding.rule != "letters"]
    told = [finding for fault in wrong.faults for finding in fault.findings]
    assert len(told) == len(broken) and all(finding in told for finding in broken)
    for fault in wrong.faults:
        assert BROKEN[fault.kind] in {finding.rule for finding in fault.findings}
    lap = {fault.kind: next(f.figure for f in fault.findings if f.rule == "lap") for fault in wrong.faults
           if BROKEN[fault.kind] == "lap"}
    assert lap["straight joint"].startswith("0") and not lap.get("short lap", "").startswith("0 ")
    return wrong


def changed_courses(wrong: WrongWall) -> set[int]:
    return {course.number for course, right in zip(wrong.layout.walls[0].courses, wrong.right.walls[0].courses, strict=True)
            if [piece[:4] for piece in course.pieces] != [piece[:4] for piece in right.pieces]}


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_each_fault_of_a_sample_is_found_and_nothing_else(path: Path) -> None:
    wrong = judge_wrong_wall(seed_faults(laid(path)))
    assert changed_courses(wrong) == {fault.course for fault in wrong.faults}


@settings(max_examples=examples(5))
@given(lesson_texts())
def test_so_it_is_on_random_plans(plan: str) -> None:
    judge_wrong_wall(seed_faults(lay(read_plan(plan, "landing.toml"))))


@settings(max_examples=examples(8), deadline=None)
@given(header_jobs())
def test_so_it_is_on_random_walls_one_brick_thick(job: Job) -> None:
    judge_wrong_wall(seed_faults(lay(job)))


@pytest.mark.parametrize("key", sorted(units()))
def test_a_practice_wall_of_every_unit_takes_all_five(key: str) -> None:
    """A wall of one course has no room for a fault: the practice wall stands in."""
    masonry = make_masonry(key)
    job = make_job(masonry, make_wall(2 * masonry.module - masonry.joint, masonry.unit.gauge))
    wrong = judge_wrong_wall(seed_faults(lay(job)))
    assert not wrong.own and wrong.layout.walls[0].wall.name == "Practice wall"


def test_the_plans_own_wall_is_spoiled_where_it_can_be_and_the_same_way_each_time() -> None:
    layout = laid(sample("ticket-kiosk"))
    wrong = judge_wrong_wall(seed_faults(layout))
    assert wrong.own and wrong.right.walls[0] == layout.walls[0]
    assert seed_faults(layout) == wrong


def test_another_plan_is_spoiled_elsewhere() -> None:
    def faults(length: int) -> list[tuple[str, int, int]]:
        masonry = make_masonry()
        layout = lay(make_job(masonry, make_wall(length * masonry.module - masonry.joint, 12 * masonry.unit.gauge)))
        wrong = seed_faults(layout)
        assert wrong is not None
        return [(fault.kind, fault.course, fault.at) for fault in wrong.faults]

    # Walls without an opening have no head to miss: both give way to the practice wall, each with its own turn.
    assert faults(15) == faults(15)


def test_a_job_without_walls_has_its_practice_wall() -> None:
    judge_wrong_wall(seed_faults(Layout(make_job(make_masonry()), ())))


def test_sheet_and_key_show_the_same_wall_and_only_the_key_tells() -> None:
    drawing = lesson(sample("ticket-kiosk"))
    (sheet,) = [page for page in drawing.pages if page.name == "wrong-wall"]
    (key,) = [page for page in drawing.pages if page.name == "key"]
    wrong = seed_faults(laid(sample("ticket-kiosk")))
    assert wrong is not None
    for number, fault in enumerate(wrong.faults, start=1):
        assert f"{number}. {fault.kind}, course {fault.course}, at " in words_on(key)
        assert fault.findings[0].figure not in words_on(sheet).split("\n")
    assert "Mend: " in words_on(key) and "Mend: " not in words_on(sheet)


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_no_cell_of_the_table_is_cut_short_and_a_column_is_of_one_height(paper: str) -> None:
    for stem in ("ticket-kiosk", "cycle-shelter", "training-2-queue-wall"):
        page = next(page for page in lesson(sample(stem), paper).pages if page.name == "wrong-wall")
        texts = [item for item in page.ink if isinstance(item, Text)]
        kinds = {text.text: text.height for text in texts if text.text in KINDS}
        assert set(kinds) == set(KINDS) and len(set(kinds.values())) == 1
        wanted = {TOLD[kind] for kind in KINDS}
        told = {text.text: text.height for text in texts if text.text in wanted}
        assert set(told) == wanted and len(set(told.values())) == 1


def test_a_long_word_in_a_table_takes_two_lines_and_stays_in_its_cell() -> None:
    board = Board(PAPERS["A4"])
    long = "left jamb of the door to the waiting room of the ferry landing"
    draw_rows(board, [Row(("what", "as drawn"), head=True), Row((long, "9'-4\""))], Box(20, 20, 100, 60), (0.6, 0.4))
    words = [item.text for item in board.ink if isinstance(item, Text)]
    assert " ".join(words).startswith("what as drawn left jamb of the door") and len(words) == 5
    assert faults_of(Page(board.paper, "table", "", "", tuple(board.ink))) == []
