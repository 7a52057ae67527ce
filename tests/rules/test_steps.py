"""The check of stepped and gabled walls: it finds what is wrong with a layout that was right."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from hypothesis import given, settings

from tests.jobs import broken, inches
from tests.layout.test_outline import BAD_STEPS, GABLE, lay_text
from tests.strategies import outlined_plans
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Piece
from wallplan.plan.load import read_plan
from wallplan.rules.check import check


@settings(max_examples=12, deadline=None)
@given(outlined_plans())
def test_random_stepped_and_gabled_walls_pass_the_check(text: str) -> None:
    layout = lay(read_plan(text, "random.toml"))
    assert broken(check(layout)) == []


def change(layout: Layout, change_piece: Callable[[int, Piece], Piece | None]) -> Layout:
    """The layout with each piece as ``change_piece`` gives it back, by course number; None leaves it out."""
    wall = layout.walls[0]
    courses = tuple(
        replace(course, pieces=tuple(new for piece in course.pieces if (new := change_piece(course.number, piece)) is not None))
        for course in wall.courses)
    return replace(layout, walls=(replace(wall, courses=courses),))


def rules_broken(layout: Layout) -> set[str]:
    return {finding.rule for finding in broken(check(layout))}


def test_a_raked_piece_left_square_reaches_out_of_the_wall() -> None:
    layout = change(lay_text(GABLE), lambda course, piece: piece._replace(rake=None, height=inches("7 5/8"))
                    if course == 15 and piece.rake else piece)
    assert "cover" in rules_broken(layout)


def test_a_raked_piece_of_the_other_hand_leaves_a_hole() -> None:
    def mirror(course: int, piece: Piece) -> Piece:
        if course != 14 or piece.rake is None:
            return piece
        rake, long = piece.rake, piece.length
        return piece._replace(rake=rake._replace(left=rake.right, right=rake.left, top_left=long - rake.top_right,
                                                 top_right=long - rake.top_left))
    assert "cover" in rules_broken(change(lay_text(GABLE), mirror))


def test_a_missing_raked_piece_is_a_hole() -> None:
    layout = change(lay_text(GABLE), lambda course, piece: None if course == 16 and piece.hand == "left" else piece)
    assert "cover" in rules_broken(layout)


def test_a_piece_that_is_not_ripped_lies_in_the_concrete() -> None:
    layout = change(lay_text(BAD_STEPS), lambda course, piece: piece._replace(bottom=inches("8 3/8"), height=inches("7 5/8"))
                    if course == 2 and piece.height < inches("7 5/8") else piece)
    found = broken(check(layout))
    assert {"cover", "steps"} <= {finding.rule for finding in found}
    (bed, *_) = (finding for finding in found if finding.rule == "steps")
    assert bed.limit.startswith('a bed of 1/4" to 3/4"') and bed.remedy.startswith('break the concrete away by 7/8"')


def test_a_notch_left_out_is_found() -> None:
    layout = change(lay_text(BAD_STEPS), lambda course, piece: piece._replace(notch=None))
    assert "cover" in rules_broken(layout)


def test_a_head_joint_over_a_riser_is_told_with_what_would_mend_it() -> None:
    """The second step half a block on: to bridge every riser something would have to be sawn, so a joint stands over one."""
    layout = lay_text(BAD_STEPS.replace("20'", "20' 8"))
    (steps,) = (finding for finding in check(layout) if finding.rule == "steps")
    assert steps.held
    assert 'stands 0" from the riser at' in steps.figure and "by half a unit, so that a unit bridges it" in steps.remedy


def test_every_wall_without_steps_goes_without_the_rule() -> None:
    plain = BAD_STEPS.replace("step =", "# step =")
    assert "steps" not in {finding.rule for finding in check(lay_text(plain))}
