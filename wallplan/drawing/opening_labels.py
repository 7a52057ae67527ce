"""What stands in an opening: its name, size, sill and head, its lintel and what that bears; or a note of the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean, measure, measure_text, tie, wrap
from wallplan.drawing.primitives import Box, Text
from wallplan.drawing.view import View
from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Job, Opening

_PITCH = 1.6
_MARGIN = 1.6
_LINTELS = {"block": "block lintel", "precast": "precast lintel", "steel": "steel lintel"}


def letter_openings(board: Board, view: View) -> None:
    """Letter every opening in view whose whole label fits it; the others are told by ``note_openings``."""
    for opening in view.openings:
        board.letter(*(_fit_label(view, opening) or ()))


def name_openings(board: Board, view: View) -> None:
    """Letter the other openings with name and size, or with their name alone, where the letters of cuts leave room."""
    for opening in view.openings:
        if _fit_label(view, opening) is None:
            name, *size = _words(view.job, view.wall, opening)[:3]
            tried = (((name, *size), False), ((name, *size), True), ((name,), False), ((name,), True))
            hole = view.hole(opening).shrunk(_MARGIN / 2)
            free = (moved for texts in _fit_all(view, opening, tried) for moved in _shift(texts)
                    if all(hole.holds(box) and board.placer.is_free(box, 0.3) for box in map(measure_text, moved)))
            board.letter(*next(free, ()))


def _shift(texts: tuple[Text, ...]) -> Iterator[tuple[Text, ...]]:
    """A label in the middle, and higher or lower."""
    for down in (0.0, -6.0, 6.0, -12.0, 12.0, -20.0, 20.0):
        yield tuple(replace(text, y=text.y + down) for text in texts)


def note_openings(view: View) -> tuple[str, ...]:
    """A sentence for each opening in view that is too small on the paper for its whole label; one for those that differ by
    name and place alone."""
    alike: dict[tuple[str, ...], list[Opening]] = {}
    for opening in view.openings:
        if _fit_label(view, opening) is None:
            alike.setdefault(_words(view.job, view.wall, opening)[1:], []).append(opening)
    return tuple(_tell_alike(view, words, found) for words, found in alike.items())


def _tell_alike(view: View, words: tuple[str, ...], openings: list[Opening]) -> str:
    places = [print_length(view.face.told_left(opening.left, opening.right), view.job.measure) for opening in openings]
    each = "each " if len(openings) > 1 else ""
    return (f"{_join([clean(opening.name) for opening in openings])}, {each}{', '.join(words)}, "
            f"{_join([tie(place) for place in places])} from the left end.")


def _join(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _fit_label(view: View, opening: Opening) -> tuple[Text, ...] | None:
    """The whole label, level or upright, as high as it fits; None where it does not."""
    phrases = _words(view.job, view.wall, opening)
    return next(_fit_all(view, opening, ((phrases, False), ((", ".join(phrases),), False), (phrases, True))), None)


def _fit_all(view: View, opening: Opening,
             tried: tuple[tuple[tuple[str, ...], bool], ...]) -> Iterator[tuple[Text, ...]]:
    """Phrases, level or upright, in the middle of an opening, at each height at which they fit it, the largest first."""
    hole = view.hole(opening).shrunk(_MARGIN)
    for words, upright in tried:
        for height in (FIGURES, 3.0, SMALLEST):
            lines = _set_lines(words, height, hole.height if upright else hole.width)
            if lines and len(lines) * height * _PITCH <= (hole.width if upright else hole.height):
                yield _stand(lines, height, hole, upright)


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
    on = [course for course in wall.courses if course.bottom <= opening.top < course.top or course.bottom == opening.top]
    over = [course for course in wall.courses if 0 < course.bottom - opening.top < course.top - course.bottom]
    laid = _find_lintel(on, asked) or _find_lintel(over, asked)  # the latter where the head is laid at the next course line
    left = min((piece.left for piece in laid), default=asked[0])
    right = max((piece.right for piece in laid), default=asked[1])
    # A lintel that goes on over the next opening bears on no more than the masonry between the two.
    beside = [other for other in wall.wall.openings if other.bottom < opening.top <= other.top]
    left = max([left, *(other.right for other in beside if other.right <= opening.left)])
    right = min([right, *(other.left for other in beside if other.left >= opening.right)])
    return opening.left - left, right - opening.right


def _find_lintel(courses: list[Course], asked: tuple[int, int]) -> list[Piece]:
    """The lintel's pieces in these courses that stand where it is asked for."""
    return [piece for course in courses for piece in course.pieces
            if piece.shape in ("lintel", "precast") and piece.left <= asked[1] and piece.right >= asked[0]]
