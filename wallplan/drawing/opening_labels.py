"""What stands in an opening: its name, size, sill and head, its lintel and what that bears; or a note of the same."""

from __future__ import annotations

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean, measure, tie, wrap
from wallplan.drawing.primitives import Box, Text
from wallplan.drawing.view import View
from wallplan.layout.model import WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Job, Opening

_PITCH = 1.6
_MARGIN = 1.6
_LINTELS = {"block": "block lintel", "precast": "precast lintel", "steel": "steel lintel"}


def letter_openings(board: Board, view: View) -> None:
    """Letter every opening in view whose label fits it; the others are told by ``note_openings``."""
    for opening in view.openings:
        board.letter(*(_fit_label(view, opening) or ()))


def note_openings(view: View) -> tuple[str, ...]:
    """A sentence for each opening in view that is too small on the paper to be lettered."""
    return tuple(
        f"{', '.join(_words(view.job, view.wall, opening))}, "
        f"{print_length(view.face.told_left(opening.left, opening.right), view.job.measure)} from the left end."
        for opening in view.openings if _fit_label(view, opening) is None
    )


def _fit_label(view: View, opening: Opening) -> tuple[Text, ...] | None:
    hole = view.hole(opening).shrunk(_MARGIN)
    phrases = _words(view.job, view.wall, opening)
    for words, upright in ((phrases, False), ((", ".join(phrases),), False), (phrases, True)):
        for height in (FIGURES, 3.0, SMALLEST):
            lines = _set_lines(words, height, hole.height if upright else hole.width)
            if lines and len(lines) * height * _PITCH <= (hole.width if upright else hole.height):
                return _stand(lines, height, hole, upright)
    return None


def _set_lines(words: tuple[str, ...], height: float, width: float) -> tuple[str, ...] | None:
    """Every phrase on lines of its own; None where a word is too wide."""
    if any(measure(word, height) > width for phrase in words for word in phrase.split(" ")):
        return None
    return tuple(line for phrase in words for line in wrap(phrase, height, width))


def _stand(lines: tuple[str, ...], height: float, hole: Box, upright: bool) -> tuple[Text, ...]:
    pitch = height * _PITCH
    middle = hole.centre
    start = -(len(lines) - 1) / 2 * pitch + height / 2
    if upright:
        return tuple(Text(middle.x + start + pitch * place, middle.y, line, height, "middle", upright=True)
                     for place, line in enumerate(lines))
    return tuple(Text(middle.x, middle.y + start + pitch * place, line, height, "middle")
                 for place, line in enumerate(lines))


def _words(job: Job, wall: WallLayout, opening: Opening) -> tuple[str, ...]:
    measured = job.measure
    words = (
        clean(opening.name),
        f"{tie(print_length(opening.right - opening.left, measured))} wide",
        f"{tie(print_length(opening.top - opening.bottom, measured))} high",
        *((f"sill at {tie(print_length(opening.bottom, measured))}",) if opening.bottom else ()),
        f"head at {tie(print_length(opening.top, measured))}",
    )
    if opening.lintel == "none":
        return words
    return (*words, _LINTELS[opening.lintel], f"bears {_print_bearings(job, find_bearings(wall, opening))}")


def _print_bearings(job: Job, bearings: tuple[int, int]) -> str:
    left, right = (tie(print_size(bearing, job.measure)) for bearing in bearings)
    return f"{left} each side" if left == right else f"{left} left, {right} right"


def find_bearings(wall: WallLayout, opening: Opening) -> tuple[int, int]:
    """How far a lintel as laid reaches past the left and the right jamb, ticks.

    A lintel that takes no unit's place (steel), or that was not laid, bears what the plan asks for.
    """
    asked = (opening.left - opening.bearing, opening.right + opening.bearing)
    laid = [
        piece for course in wall.courses if course.bottom <= opening.top < course.top or course.bottom == opening.top
        for piece in course.pieces
        if piece.shape in ("lintel", "precast") and piece.left <= asked[1] and piece.right >= asked[0]
    ]
    left = min((piece.left for piece in laid), default=asked[0])
    right = max((piece.right for piece in laid), default=asked[1])
    return opening.left - left, right - opening.right
