"""Why each piece is where it is, in plain words that are true of the layout: every figure is measured on it.

``why_piece`` tells of one piece, ``why_course`` of one course; both are made from reasons, each with its kind and figures,
so that a test can measure them again.
"""

from __future__ import annotations

from wallplan.layout.model import Piece
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import WallRuns, read_runs
from wallplan.teaching.why_bond import explain_bond
from wallplan.teaching.why_courses import explain_course
from wallplan.teaching.why_headers import explain_brick
from wallplan.teaching.why_shapes import explain_shape
from wallplan.teaching.why_sizes import explain_size

__all__ = ["Reason", "WallRuns", "read_runs", "reasons_of_course", "reasons_of_piece", "why_course", "why_piece"]


def reasons_of_piece(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """Why a piece of a course is there: its kind of unit, its length, its height, and its lap. At least one.

    ``runs`` is the wall, read once with ``read_runs``. ValueError for a piece that the course has not.
    """
    if piece.shape == "return":
        return explain_shape(runs, number, piece)
    if runs.job.masonry.one_brick and piece.leaf is not None:
        return (*explain_brick(runs, number, piece), *explain_bond(runs, number, piece))
    return (*explain_shape(runs, number, piece), *explain_size(runs, number, piece), *explain_bond(runs, number, piece))


def why_piece(runs: WallRuns, number: int, piece: Piece) -> str:
    """The reasons of a piece as sentences in one line."""
    return " ".join(reason.words for reason in reasons_of_piece(runs, number, piece))


def reasons_of_course(runs: WallRuns, number: int) -> tuple[Reason, ...]:
    """Why a course is laid as it is, what matters most first. IndexError for a number that the wall has not."""
    return explain_course(runs, number)


def why_course(runs: WallRuns, number: int) -> tuple[str, ...]:
    """The reasons of a course, a line each."""
    return tuple(reason.words for reason in reasons_of_course(runs, number))
