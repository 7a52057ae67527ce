"""A hundred random plans: every why line and quiz answer is measured again, and every wall can be laid in the order told."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings

from tests.long_run import examples
from tests.strategies import header_jobs, lesson_texts
from tests.teaching.judging import Told, judge
from tests.teaching.lessons import SAMPLES, laid
from tests.teaching.test_quiz import judge_quiz
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan
from wallplan.teaching.sequence import order_wall
from wallplan.teaching.why import read_runs, reasons_of_course, reasons_of_piece, why_course, why_piece


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_samples(path: Path) -> None:
    """Corners, steps and slopes besides."""
    for index in range(len(laid(path).walls)):
        judge_reasons(laid(path), index)
        judge_order(laid(path), index)
        judge_quiz(laid(path), index)


@settings(max_examples=examples(100))
@given(lesson_texts())
def test_random_plans(plan: str) -> None:
    layout = lay(read_plan(plan, "landing.toml"))
    for index in range(len(layout.walls)):
        judge_reasons(layout, index)
        judge_order(layout, index)
        judge_quiz(layout, index)


@settings(max_examples=examples(20), deadline=None)
@given(header_jobs())
def test_random_walls_one_brick_thick(job: Job) -> None:
    layout = lay(job)
    for index in range(len(layout.walls)):
        judge_reasons(layout, index)
        judge_order(layout, index)
        judge_quiz(layout, index)


def judge_reasons(layout: Layout, index: int) -> None:
    """Every reason of every piece and course is so."""
    wall, runs = layout.walls[index], read_runs(layout, index)
    for course in wall.courses:
        told = reasons_of_course(runs, course.number)
        assert why_course(runs, course.number) == tuple(reason.words for reason in told)
        for reason in told:
            judge(Told(layout, wall, course, None, reason))
        for piece in course.pieces:
            reasons = reasons_of_piece(runs, course.number, piece)
            assert reasons and why_piece(runs, course.number, piece) == " ".join(reason.words for reason in reasons)
            for reason in reasons:
                judge(Told(layout, wall, course, piece, reason))


def judge_order(layout: Layout, index: int) -> None:
    """Each piece once, none before what it lies on, leads before fill in each lift, a closure between two laid pieces."""
    wall, steps = layout.walls[index], order_wall(layout, index)
    pieces = {(course.number, piece) for course in wall.courses for piece in course.pieces}
    assert len(steps) == len(pieces) and {(step.course, step.piece) for step in steps} == pieces
    assert [(step.lift, step.stage == "fill") for step in steps] == sorted((step.lift, step.stage == "fill") for step in steps)
    standing: list[tuple[int, int, int, int]] = []
    for step in steps:
        piece = step.piece
        under = [other for course in wall.courses[max(0, step.course - 2) : step.course] for other in course.pieces
                 if other.top <= piece.bottom and other.left < piece.right and other.right > piece.left]
        assert all((other.left, other.right, other.bottom, other.top) in standing for other in under)
        if step.closure:
            beside = [one for one in standing if one[2] < piece.top and one[3] > piece.bottom]
            widest = 2 * layout.job.masonry.widest_joint
            assert any(0 <= piece.left - one[1] <= widest for one in beside)
            assert any(0 <= one[0] - piece.right <= widest for one in beside)
        standing.append((piece.left, piece.right, piece.bottom, piece.top))
        assert step.stage == "fill" or step.side == piece.lead
