"""One wall as the page shows it: rows of pieces, laps, the two orders of laying and the practice, figures in ticks.

Courses that look alike share one row, sentences are places in the page's list of texts.
"""

from __future__ import annotations

from itertools import groupby
from typing import Any

from wallplan.layout.model import Course, Layout, Piece
from wallplan.lengths import print_size
from wallplan.teaching.page.course_words import compare_with_below, count_pieces, pair_joints
from wallplan.teaching.page.piece_shape import trace_piece, trace_wall
from wallplan.teaching.page.practice import Question, list_questions
from wallplan.teaching.page.step_words import WallSteps
from wallplan.teaching.page.texts import Texts, label_piece, name_piece, style_piece, tell_length, tell_size
from wallplan.teaching.runs import WallRuns, read_runs
from wallplan.teaching.sequence import order_wall
from wallplan.teaching.why import why_course, why_piece

Table = dict[str, Any]


def tell_wall(layout: Layout, index: int, texts: Texts) -> Table:
    """A wall's table for the page, by its place in the plan. IndexError for a place that the plan has not."""
    runs = read_runs(layout, index)
    wall, measure = runs.wall.wall, layout.job.measure
    rows: dict[str, int] = {}
    kept: list[list[list[Any]]] = []
    courses = []
    outline, footing = trace_wall(wall)
    for course in runs.wall.courses:
        row = [_tell_piece(runs, course, piece, texts) for piece in course.pieces]
        place = rows.setdefault(repr(row), len(rows))
        kept += [row] if place == len(kept) else []
        courses.append(_tell_course(runs, course, place, texts))
    return {
        "name": wall.name, "length": wall.length, "height": max(wall.height, runs.wall.courses[-1].top),
        "size": f"{tell_length(wall.length, measure)} long, {tell_length(wall.height, measure)} high",
        "openings": [[one.left, one.bottom, one.right, one.top, texts.keep(one.name)] for one in wall.openings],
        "controls": list(wall.control_joints), "outline": outline, "footing": footing, "rows": kept, "courses": courses,
        "edges": _tell_edges(runs, texts), "steps": tell_steps(layout, index, texts),
        "practice": [_tell_question(runs, question, texts) for question in list_questions(runs)],
    }


def _tell_piece(runs: WallRuns, course: Course, piece: Piece, texts: Texts) -> list[Any]:
    """Left, length (both as the face shows them), height over the course's bottom, height, then places of texts: style,
    label, length, name, size, why; 1 for the left lead, 2 for the right one; and the corners of what is no rectangle."""
    job, length = runs.job, runs.wall.wall.length
    left, right = max(piece.left, 0), min(piece.right, length)
    words = (style_piece(piece), label_piece(piece), print_size(piece.length, job.measure),
             name_piece(piece, job.masonry.unit), tell_size(piece, job.measure), why_piece(runs, course.number, piece))
    lead = {"left": 1, "right": 2}.get(piece.lead or "", 0)
    return [left, max(0, right - left), piece.bottom - course.bottom, piece.height,
            *(texts.keep(text) for text in words), lead, *([corners] if (corners := trace_piece(piece)) else [])]


def _tell_course(runs: WallRuns, course: Course, row: int, texts: Texts) -> list[Any]:
    """Number, bottom, top, place of its row, why lines, laps, what it has beside the course below."""
    return [
        course.number, course.bottom, course.top, row, [texts.keep(line) for line in why_course(runs, course.number)],
        _tell_laps(runs, course, texts), texts.keep(count_pieces(runs, course)),
        texts.keep(f"Top of course {course.number}: {tell_length(course.top, runs.job.measure)} over the footing."),
        texts.keep(compare_with_below(runs, course)),
    ]


def _tell_laps(runs: WallRuns, course: Course, texts: Texts) -> list[list[int]]:
    """For each head joint: its middle, that of the nearest joint in the course below, and the distance as printed."""
    return [[middle, other, texts.keep(print_size(abs(middle - other), runs.job.measure))]
            for middle, other in pair_joints(runs, course)]


def _tell_edges(runs: WallRuns, texts: Texts) -> list[list[int]]:
    """Every side of a piece on the face with its distance from the left end as printed."""
    length, measure = runs.wall.wall.length, runs.job.measure
    edges = {min(max(edge, 0), length) for course in runs.wall.courses for piece in course.pieces
             for edge in (piece.left, piece.right)}
    return [[edge, texts.keep(tell_length(edge, measure))] for edge in sorted(edges)]


def tell_steps(layout: Layout, index: int, texts: Texts) -> list[list[Any]]:
    """The order of laying in steps: what is done, why, in which course, its pieces in turn; 1 where the last of them is the
    closure; 1 where a line is stretched."""
    places = {(course.number, piece): place for course in layout.walls[index].courses
              for place, piece in enumerate(course.pieces)}
    steps = order_wall(layout, index)
    walls = WallSteps(max((step.lift for step in steps), default=1), tuple(step for step in steps if step.stage == "lead"))
    told = []
    for _, group in groupby(steps, key=lambda step: (step.lift, step.stage, step.side, step.course)):
        found = list(group)
        told.append([texts.keep(walls.name(found)), texts.keep(walls.explain(found, layout.job.masonry.unit.kind)),
                     found[0].course - 1, [places[step.course, step.piece] for step in found],
                     int(any(step.closure for step in found)), int(bool(walls.leads) and found[0].stage == "fill")])
    return told


def _tell_question(runs: WallRuns, question: Question, texts: Texts) -> list[Any]:
    """Place of the course, place of the piece, what is asked, and the offers: length, name, size, kind, words, where."""
    unit, measure = runs.job.masonry.unit, runs.job.measure
    course = runs.wall.courses[question.course - 1]
    offers = [
        [offer.length, texts.keep(_name_offer(offer.name, unit.kind)),
         texts.keep(print_size(offer.length, measure)), texts.keep(offer.verdict.kind), texts.keep(offer.verdict.words),
         -1 if offer.verdict.at is None else offer.verdict.at]
        for offer in question.offers
    ]
    return [course.number - 1, course.pieces.index(question.piece), texts.keep(question.words), offers]


def _name_offer(name: str, kind: str) -> str:
    """What an offer is called: "Full block", "Cut", "Header", "Queen closer"."""
    own = {"cut": "Cut", "header": "Header", "stretcher": "Stretcher", "closer": "Queen closer"}
    return own.get(name, f"{name.capitalize()} {kind}")
