"""Every course in words, as tables that need no script: for a screen reader, for paper, for a browser without scripts."""

from __future__ import annotations

from html import escape
from itertools import groupby

from wallplan.layout.model import Course, Layout, Piece
from wallplan.lengths import print_size
from wallplan.teaching.page.texts import SHAPES, name_piece, tell_length
from wallplan.teaching.runs import WallRuns, read_runs
from wallplan.teaching.why import why_course


def list_courses(layout: Layout) -> str:
    """One section of HTML a wall, all words escaped; "" for a job without walls."""
    return "".join(_list_wall(layout, index) for index in range(len(layout.walls)))


def _list_wall(layout: Layout, index: int) -> str:
    runs = read_runs(layout, index)
    measure = layout.job.measure
    head = "".join(f'<th scope="col">{title}</th>' for title in ("Course", "Its top", "Pieces, left to right", "Why"))
    rows = "".join(
        f'<tr><th scope="row">{course.number}</th><td>{escape(tell_length(course.top, measure))}</td>'
        f"<td>{escape(tell_pieces(runs, course))}</td><td>{escape(' '.join(why_course(runs, course.number)))}</td></tr>"
        for course in runs.wall.courses)
    name = escape(runs.wall.wall.name)
    return (f'<section class="courses" data-wall="{index}"><table><caption>{name}: every course, the lowest first. '
            f"Heights are from the top of the footing.</caption><thead><tr>{head}</tr></thead>"
            f"<tbody>{rows}</tbody></table></section>")


def tell_pieces(runs: WallRuns, course: Course) -> str:
    """The pieces of a course from left to right, equal neighbours counted, openings and control joints where they stand.

    A plain end makes no difference here: corner units count with the others of their length."""
    measure, unit = runs.job.measure, runs.job.masonry.unit
    told = []
    for name, group in groupby(_stand_in_line(runs, course), key=lambda found: _name(found, runs)):
        found = list(group)
        first = found[0]
        if isinstance(first, str):
            told.append(first)
            continue
        low = "" if first.height >= unit.height else f" × {print_size(first.height, measure)}"
        size = print_size(first.length, measure) + low
        told.append(f"{len(found)} × {name} ({size})")
    return "; ".join(told)


def _name(found: Piece | str, runs: WallRuns) -> str:
    if isinstance(found, str):
        return found
    name = name_piece(found, runs.job.masonry.unit).removesuffix(f", {SHAPES['corner']}")
    return name if name.startswith("Cut") else name[:1].lower() + name[1:]


def _stand_in_line(runs: WallRuns, course: Course) -> list[Piece | str]:
    """Pieces, names of openings that stand in the course, and control joints, from left to right."""
    wall = runs.wall.wall
    line: list[tuple[int, int, Piece | str]] = [(piece.left, piece.bottom, piece) for piece in course.pieces]
    line += [(one.left, 0, f"[{one.name}]") for one in wall.openings if one.bottom < course.top and one.top > course.bottom]
    line += [(place, 0, "[control joint]") for place in wall.control_joints]
    return [found for _, _, found in sorted(line, key=lambda entry: entry[:2])]
