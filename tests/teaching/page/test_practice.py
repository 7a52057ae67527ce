"""Verdicts on picks against the whole ``check``, and against walls worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from tests.long_run import examples
from tests.strategies import laid_jobs
from wallplan.findings import Finding
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.plan.job import Job
from wallplan.planner import lay_plan
from wallplan.rules.check import check_wall
from wallplan.teaching.page.bench import Bench
from wallplan.teaching.page.practice import Question, list_questions
from wallplan.teaching.page.verdict import judge
from wallplan.teaching.runs import read_runs

SAMPLES = Path(__file__).parents[3] / "samples"
Place = tuple[str, int | None, int | None, str]


def ask(layout: Layout, index: int = 0) -> tuple[Question, ...]:
    return list_questions(read_runs(layout, index))


def long_wall() -> Layout:
    """Six 16 in. blocks and a half: course 1 begins with a full block, course 2 with a half; joints fixed at 3/8 in."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("103 5/8"), inches(32))))


def verdicts(layout: Layout, course: int, piece: int) -> dict[str, tuple[str, str, str | None]]:
    """Offer in words -> kind, fault and rule, for the question at a piece of a course."""
    wanted = layout.walls[0].courses[course - 1].pieces[piece]
    question = next(one for one in ask(layout) if (one.course, one.piece) == (course, wanted))
    return {f"{offer.name} {offer.length / inches(1):g}": (offer.verdict.kind, offer.verdict.fault, offer.verdict.rule)
            for offer in question.offers}


def test_a_full_block_that_begins_course_2_makes_a_straight_joint() -> None:
    # Course 1's first joint stands at 15 5/8 to 16 in.; a full block from the left end brings one to the same place.
    told = verdicts(long_wall(), 2, 0)
    assert told["half 7.625"] == ("right", "", None)
    assert told["full 15.625"] == ("wrong", "straight joint", "lap")


@pytest.mark.parametrize(("length", "kind", "fault", "said"), [
    # Course 2 begins with a half, so its second piece starts at 8 in.; the joint below stands at 16 in., middle 15 13/16.
    ("15 5/8", "right", "", "laps the nearest joint below by 8\""),
    ("7 5/8", "wrong", "straight joint", "right over the joint in course 1"),
    ("9 5/8", "wrong", "short lap", "only 2\" from a joint in course 1. The lap must be 4\" at least"),  # 8 + 9 5/8 + 3/8 - 16
    ("2", "wrong", "sliver", "it fills only 2 3/8\", and nothing under 4\""),
    ("16", "wrong", "too long", "No block is so long: a full one is 15 5/8\""),
])
def test_the_second_piece_of_course_2(length: str, kind: str, fault: str, said: str) -> None:
    runs = read_runs(long_wall(), 0)
    verdict = judge(Bench(runs, 2, runs.runs[1][0], 1), inches(length))
    assert verdict is not None
    assert (verdict.kind, verdict.fault) == (kind, fault)
    assert said in verdict.words


@pytest.mark.parametrize(("length", "kind", "fault", "said"), [
    # The last piece of course 1 is a half: from 96 in. to the end at 103 5/8 in.
    ("7 5/8", "right", "", ""),
    ("7 1/4", "wrong", "gap", "it would leave 3/8\" open to the right end"),
    ("15 5/8", "wrong", "too long", "it would reach 8\" past the right end. There is room for 7 5/8\""),
    ("6 5/8", "wrong", "sliver next", "what comes next would have only 1\" with its joint"),
])
def test_the_last_piece_of_course_1(length: str, kind: str, fault: str, said: str) -> None:
    runs = read_runs(long_wall(), 0)
    run = runs.runs[0][0]
    verdict = judge(Bench(runs, 1, run, len(run.pieces) - 1), inches(length))
    assert verdict is not None
    assert (verdict.kind, verdict.fault) == (kind, fault)
    assert said in verdict.words


def test_a_half_over_a_half_is_a_straight_joint_also_where_the_joints_close() -> None:
    """A full block, a joint of 1/4 in. and a half: 23 1/2 in. The half first in course 3 leaves what a full one fills."""
    layout = lay(make_job(make_masonry(), make_wall(inches("23 1/2"), inches(24))))
    first = [course.pieces[0].length for course in layout.walls[0].courses]
    other = next(number for number in (2, 3) if first[number - 1] == inches("15 5/8"))
    told = verdicts(layout, other, 0)
    assert told["full 15.625"] == ("right", "", None)
    assert told["half 7.625"] == ("wrong", "straight joint", "lap")


def test_what_breaks_nothing_is_not_called_wrong() -> None:
    """A half where a full block belongs, in a wall of one course: no joint below or above it."""
    runs = read_runs(lay(make_job(make_masonry(joints_move=False), make_wall(inches("95 5/8"), inches(8)))), 0)
    verdict = judge(Bench(runs, 1, runs.runs[0][0], 1), inches("7 5/8"))
    assert verdict is not None
    assert (verdict.kind, verdict.rule) == ("dearer", None)
    assert "costs 1 more piece to lay" in verdict.words


def test_no_question_where_the_wall_itself_breaks_a_rule() -> None:
    layout = lay_plan(SAMPLES / "breaks-a-rule.toml")
    slivers = {piece for course in layout.walls[0].courses for piece in course.pieces
               if piece.length + layout.job.masonry.joint < layout.job.masonry.least_piece}
    assert slivers
    assert not slivers & {question.piece for question in ask(layout)}


def place_of(finding: Finding) -> Place:
    return finding.rule, finding.course, finding.at, finding.figure.partition(" (so in ")[0]


def find_broken(wall: WallLayout, job: Job) -> set[Place]:
    """Without the kinds of units: what is picked is a length, and ``lay_offer`` leaves the kinds as they stood."""
    return {place_of(finding) for finding in check_wall(wall, job) if not finding.held and finding.rule != "units"}


def lay_course(wall: WallLayout, number: int, pieces: tuple[Piece, ...]) -> WallLayout:
    """The whole wall with one course of other pieces."""
    return replace(wall, courses=tuple(replace(course, pieces=pieces) if course.number == number else course
                                       for course in wall.courses))


def lay_offer(layout: Layout, index: int, question: Question, length: int) -> tuple[Piece, ...]:
    """The course with the offered piece, then pieces back to the first of the wall's own joints that leaves no sliver."""
    masonry = layout.job.masonry
    pieces = layout.walls[index].courses[question.course - 1].pieces
    run = next(run for run in read_runs(layout, index).runs[question.course - 1] if question.piece in run.pieces)
    stock = {one.length: one.name for one in reversed(masonry.unit.pieces)}
    beside = next((one.left for one in run.pieces if one.left > question.piece.left), None)
    # The joints of a run are laid alike: as the run has them, opened or closed, not as they were aimed for.
    joint = masonry.joint if beside is None else beside - question.piece.right
    after = question.piece.left + length + joint

    def make(left: int, size: int) -> Piece:
        name = next((name for long, name in stock.items() if abs(long - size) <= 2), "cut")
        return question.piece._replace(left=left, length=size, piece=name, mark="?" if name == "cut" else None)

    ends = [one.right for one in run.pieces if one.right > after + 2 and one.right - after <= masonry.unit.length + 2]
    good = [end for end in ends if end - after + masonry.joint >= masonry.least_piece - 2]
    end = (good or ends or [0])[0]
    new = [make(question.piece.left, length), *([make(after, end - after)] if end else [])]
    kept = [one for one in pieces if one not in run.pieces or one.left < question.piece.left or one.left > max(end, after)]
    return tuple(sorted([*kept, *new], key=lambda piece: piece.left))


def hold_to_check(layout: Layout, index: int) -> int:
    """Every offer's verdict against the check of the whole wall; the number of offers looked at."""
    count, wall = 0, layout.walls[index]
    before = find_broken(wall, layout.job)
    for question in ask(layout, index):
        assert sum(offer.verdict.kind == "right" for offer in question.offers) == 1
        for offer in question.offers:
            laid = lay_course(wall, question.course, lay_offer(layout, index, question, offer.length))
            broken = find_broken(laid, layout.job) - before
            rules = {rule for rule, *_ in broken}
            match offer.verdict.kind:
                case "right":
                    assert offer.length == question.piece.length and not broken
                case "wrong":
                    # What is left may be too long for a unit by less than a joint: no sliver can be laid, the joint gapes.
                    gapes = offer.verdict.fault == "sliver next" and rules == {"joints"}
                    assert offer.verdict.rule in rules or gapes
                    if offer.verdict.rule != "plumb" and not gapes:  # with more courses laid the check may call another joint of the run the odd one
                        assert offer.verdict.at in {at for rule, _, at, _ in broken if rule == offer.verdict.rule}
                case _:
                    # Only courses that are not laid yet could still be out of plumb with it.
                    assert rules <= {"plumb"}
            count += 1
    return count


@pytest.mark.parametrize("sample", ["ticket-kiosk", "pier", "kiosk-with-porch", "reclaimed-brick", "planter-third-bond",
                                    "screen-stack-bond", "high-sill", "breaks-a-rule"])
def test_samples_verdicts_are_the_checks(sample: str) -> None:
    layout = lay_plan(SAMPLES / f"{sample}.toml")
    assert sum(hold_to_check(layout, index) for index in range(min(2, len(layout.walls)))) > 20


@settings(max_examples=examples(4), deadline=None)
@given(laid_jobs())
def test_random_walls_verdicts_are_the_checks(job: Job) -> None:
    hold_to_check(lay(job), 0)


def test_pump_house_is_asked_of_every_mistake() -> None:
    faults = {offer.verdict.fault for question in ask(lay(pump_house())) for offer in question.offers}
    assert faults >= {"straight joint", "short lap", "sliver", "too long", "gap", "joint above"}
