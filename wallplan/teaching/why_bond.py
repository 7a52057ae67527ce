"""How a piece sits in the bond: its lap over the course below, and the joints of its run."""

from __future__ import annotations

from wallplan.layout.model import Piece
from wallplan.lengths import print_joint, print_size
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import SAME, Run, WallRuns, is_layered


def explain_bond(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """The piece's least lap over the course below, and whether its run's joints were opened or closed."""
    found = (_explain_lap(runs, number, piece), explain_joints(runs, runs.run_of(number, piece)))
    return tuple(reason for reason in found if reason is not None)


def _explain_lap(runs: WallRuns, number: int, piece: Piece) -> Reason | None:
    lap = measure_lap(runs, number, piece)
    if lap is None:
        return None
    if runs.job.masonry.bond == "stack":
        return Reason("stack", "Stack bond: joints stand in line, course over course.")
    return Reason("lap", f"It laps the nearest joint below by {print_size(lap, runs.job.measure)}.", (lap,))


def measure_lap(runs: WallRuns, number: int, piece: Piece) -> int | None:
    """The least distance from the piece's own joints to those of the course below, middle to middle, ticks.

    None for course 1, for a piece or a course below without a joint, and beside courses laid in layers.
    """
    below, course = runs.course(number - 1), runs.course(number)
    if below is None or course is None or is_layered(below) or is_layered(course):
        return None
    run = runs.run_of(number, piece)
    place = run.pieces.index(piece)
    near = [(one.right + two.left) // 2 for one, two in zip(run.pieces, run.pieces[1:], strict=False)]
    own = near[max(0, place - 1) : place + 1]
    found = [(middle, runs.nearest(number - 1, middle)) for middle in own]
    return min((abs(middle - other) for middle, other in found if other is not None), default=None)


def explain_joints(runs: WallRuns, run: Run) -> Reason | None:
    """Why a run's joints are not as aimed for; None where they are, or where one piece fills the run."""
    aimed, measured = runs.job.masonry.joint, runs.job.measure
    if not run.joints or all(abs(width - aimed) <= SAME for width in run.joints):
        return None
    off = sum(width - aimed for width in run.joints)
    opened = off > 0
    count = "its 1 joint gives" if len(run.joints) == 1 else f"its {len(run.joints)} joints share"
    width, wished = print_joint(max(run.joints) if opened else min(run.joints), measured), print_joint(aimed, measured)
    words = (f"Joints {'opened' if opened else 'closed'} to {width} from {wished}: with {wished} the pieces from "
             f"{run.start.words} to {run.end.words} would come {print_joint(abs(off), measured)} "
             f"{'short' if opened else 'over'}, and {count} it"
             f"{'' if any(piece.piece == 'cut' for piece in run.pieces) else ', so nothing is cut'}.")
    return Reason("joint opened" if opened else "joint closed", words, (abs(off), len(run.joints)))
