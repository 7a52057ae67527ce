"""Headers and stretchers in the turn that the bond wants: what is out of it, and how the leaves are tied."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Literal, NamedTuple

from wallplan.findings import Finding
from wallplan.layout.model import Course, Piece
from wallplan.lengths import TICKS_PER_INCH
from wallplan.rules.as_laid import AsLaid
from wallplan.rules.reporting import Break, report_held, size
from wallplan.rules.sources import HEADER_TIES

LEAST_RUN = 6
"""Bricks of a run that may be judged as a whole."""

FARTHEST_HEADERS = 24 * TICKS_PER_INCH
LEAST_HEADERS = 0.04
"""How far apart headers may stand, and their least share of a face, as HEADER_TIES cites."""

STRETCHERS_IN_TURN = 3
Usual = Literal["S", "H", ""]


class Turns(NamedTuple):
    """What the courses of a wall are of: stretchers, headers, or both in turn (""), by what most of a kind are of."""

    bond: str
    courses: tuple[Usual, ...]


def find_runs(wall: AsLaid, course: Course) -> Iterator[list[Piece]]:
    """A course's pieces, parted where more than a joint is between two, or a control joint."""
    pieces, run = sorted(course.pieces), list[Piece]()
    for piece in pieces:
        if run and (piece.left - run[-1].right > wall.hole or any(
                run[-1].right <= joint <= piece.left for joint in wall.layout.wall.control_joints)):
            yield run
            run = []
        run.append(piece)
    if run:
        yield run


def read_turns(wall: AsLaid) -> Turns:
    """In English bond odd and even courses are each of what most of them are of; where a course of headers follows several
    of stretchers, so is each place of that repeat; in header bond all are of headers."""
    bond, count = wall.masonry.bond, len(wall.layout.courses)
    if bond != "english" and not wall.masonry.stretcher_courses:
        alike: Usual = "H" if bond == "header" else ""
        return Turns(bond, (alike,) * count)
    repeat = wall.masonry.stretcher_courses + 1 if wall.masonry.stretcher_courses else 2
    headers = [0] * repeat
    for number, course in enumerate(wall.layout.courses):
        headers[number % repeat] += 1 if is_of_headers(course) else -1
    if repeat > 2 and wall.masonry.stretcher_courses and max(headers) > 0:
        headers = [count if count == max(headers) else -1 for count in headers]
    return Turns(bond, tuple("H" if headers[number % repeat] > 0 else "S" for number in range(count)))


def is_of_headers(course: Course) -> bool:
    """Whether most of a course's bricks are headers; closers and other walls' bricks do not count."""
    shapes = [piece.shape for piece in course.pieces]
    return shapes.count("header") > shapes.count("stretcher")


def find_departures(turns: Turns, course: int, run: list[Piece]) -> list[int]:
    """Where bricks of a run are out of turn, by the left end of each; ``course`` counts from 0."""
    kinds = ["H" if piece.shape in ("header", "return") else "C" if piece.shape == "closer" else
             "S" if piece.piece == "full" else "P" for piece in run]
    plain = [(kind, piece.left) for kind, piece in zip(kinds, run, strict=True) if kind != "C"]
    usual = turns.courses[course]
    if usual:
        free = () if turns.bond == "english" else (0, len(plain) - 1)  # a quoin may be of the other kind
        return [left for place, (kind, left) in enumerate(plain) if kind != usual and (kind == "P" or place not in free)]
    sawn = [left for kind, left in plain if kind == "P"]
    if turns.bond == "flemish garden wall":
        return sorted([*sawn, *_find_uneven(plain)])
    return sorted([*sawn, *(left for (one, _), (two, left) in pairwise(plain) if one == two != "P")])


def _find_uneven(plain: list[tuple[str, int]]) -> Iterator[int]:
    """Headers that follow other than three stretchers, and fourth stretchers. At the run's ends there may be fewer."""
    count, seen = 0, False
    for place, (kind, left) in enumerate(plain):
        if kind == "H":
            quoin = place in (0, len(plain) - 1)
            if not quoin and (count == 0 or (seen and count < STRETCHERS_IN_TURN)):
                yield left
            seen, count = seen or not quoin, 0
        else:
            count += 1
            if count > STRETCHERS_IN_TURN:
                yield left


def find_courses_out_of_turn(wall: AsLaid, turns: Turns) -> Iterator[Break]:
    """Courses laid in another bond from end to end of a run: most of its bricks are out of turn."""
    for number, course in enumerate(wall.layout.courses):
        for run in find_runs(wall, course):
            out = find_departures(turns, number, run) if len(run) >= LEAST_RUN else []
            if 2 * len(out) > len(run) and len(out) >= LEAST_RUN - 1:
                wanted = {"S": "a course of stretchers", "H": "a course of headers"}.get(
                    turns.courses[number], "headers and stretchers in turn")
                yield Break(number, run[0].left, f"{len(out)} of {len(run)} bricks out of turn", wanted,
                            f"lay {wanted} here, as the bond goes")


def find_untied(wall: AsLaid) -> Iterator[Break]:
    """A wall of a bond with courses of headers that has none: nothing ties its leaves together."""
    count = len(wall.layout.courses)
    if wall.masonry.stretcher_courses and count and not any(map(_ties, wall.layout.courses)):
        yield Break(None, None, f"no course of headers in {count} {'course' if count == 1 else 'courses'}",
                    f"one after every {wall.masonry.stretcher_courses} of stretchers",
                    "ask for fewer stretcher_courses, or for another bond")


def _ties(course: Course) -> bool:
    """Whether a third of a course's bricks are headers: more than the quoins of a course of stretchers."""
    shapes = [piece.shape for piece in course.pieces]
    return 3 * shapes.count("header") >= shapes.count("header") + shapes.count("stretcher")


def tell_ties(wall: AsLaid) -> Iterator[Finding]:
    """How much of the face is headers, how far apart they stand, and where the collar joint stands straight between them.

    A held finding, with a remedy where the code's figures are not met. Nothing of Flemish, English and header bond.
    """
    masonry = wall.masonry
    if masonry.bond not in ("flemish garden wall",) and not masonry.stretcher_courses:
        return
    share, apart = _measure_share(wall), _measure_apart(wall)
    if not share:
        return
    figure = f"headers are {100 * share:.0f} % of the face, {size(wall, apart)} apart"
    if masonry.stretcher_courses:
        figure += (f"; behind the {masonry.stretcher_courses} courses of stretchers between, the joint between the leaves "
                   "runs straight up")
    else:
        figure += " along, two courses together"
    held = report_held(wall, "headers", HEADER_TIES, figure, f"4 %, {size(wall, FARTHEST_HEADERS)}; the designer's choice")
    met = share >= LEAST_HEADERS and apart <= FARTHEST_HEADERS
    yield held if met else Finding(held.rule, True, held.wall, None, None, held.figure, held.limit, held.source,
                                   "ask for headers nearer together, or for ties between the leaves")


def _measure_share(wall: AsLaid) -> float:
    """Headers' share of the face of all bricks, the wall's own."""
    faces = [(piece.shape, piece.length * piece.height) for course in wall.layout.courses for piece in course.pieces
             if piece.shape in ("header", "stretcher", "closer")]
    whole = sum(area for _, area in faces)
    return sum(area for shape, area in faces if shape == "header") / whole if whole else 0.0


def _measure_apart(wall: AsLaid) -> int:
    """The farthest from one course of headers to the next; where headers stand in every course, from one to the next along
    two courses together."""
    if wall.masonry.stretcher_courses:
        tops = [course.top for course in wall.layout.courses if is_of_headers(course)]
        return max((two - one for one, two in pairwise(tops)), default=wall.layout.courses[-1].top if tops else 0)
    spans: dict[tuple[int, int, int], list[int]] = {}
    for number, course in enumerate(wall.layout.courses):
        for run in find_runs(wall, course):
            headers = [piece.left for piece in run if piece.shape == "header"]
            for pair in (number, number + 1):  # with those of the course below, and of the course above
                spans.setdefault((pair, run[0].left, run[-1].right), []).extend(headers)
    return max((two - one for lefts in spans.values() for one, two in pairwise(sorted(lefts))), default=0)
