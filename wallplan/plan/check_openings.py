"""Openings against their wall, each other and the control joints."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.plan.bare_number import find_meant, say_bare
from wallplan.plan.found import print_name
from wallplan.plan.job import Masonry, Opening
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.wall_table import ReadWall


def check_openings(wall: ReadWall, masonry: Masonry | None, notebook: Notebook) -> None:
    """Note every opening that leaves the wall, overlaps another or reaches a control joint. No openings: nothing."""
    no_wall = masonry is not None and wall.length is not None and wall.length < masonry.least_piece - masonry.joint
    too_short = _refuse_small("length", wall, notebook, told_else=no_wall) or no_wall
    too_low = _refuse_small("height", wall, notebook)
    leaving = set[KeyPath]()
    for path, opening in wall.openings:
        known = len(notebook.wrongs)
        if not too_short:
            _check_sides(path, opening, wall, notebook)
        if not too_low:
            _check_top(path, opening, wall, notebook)
        if len(notebook.wrongs) > known:
            leaving.add(path)
        if masonry is not None and not too_short:
            _check_control_joints(path, opening, wall, masonry, notebook)
    _check_overlaps([one for one in wall.openings if one[0] not in leaving], notebook)


def _refuse_small(key: str, wall: ReadWall, notebook: Notebook, *, told_else: bool = False) -> bool:
    """Note a length or height that has no room for its openings: a bare number that holds all of them in a longer unit, or
    one that is too small for several, unless that is told elsewhere.
    """
    size, written = (wall.length, wall.table.length) if key == "length" else (wall.highest, wall.table.height)
    if size is None or not wall.openings or wall.parts:
        return False
    spans = [(opening.right - opening.left if key == "length" else opening.top - opening.bottom, opening.name)
             for _, opening in wall.openings]
    reach = max(opening.right if key == "length" else opening.top for _, opening in wall.openings)
    # A gate may be as high as its wall; none is as wide.
    too_large = [(span, name) for span, name in spans if span > size or (key == "length" and span == size)]
    meant = find_meant(written, size, reach, notebook.measure) if too_large else None
    if meant is None and (told_else or len(too_large) < 2):
        return False
    span, name = max(too_large)
    across = "wide" if key == "length" else "high"
    instead = (f"write {meant} if that is meant ({say_bare(notebook.measure)})" if meant else
               f"which is {notebook.show(span)} {across}, nor for others; write a larger {key}, or smaller openings")
    between = ", " if meant is None else "; "
    stands = (*wall.path, key if getattr(wall.table, key) is not None else "courses")
    notebook.note(stands, f'{notebook.show(size)} has no room for opening "{print_name(name)}"{between}{instead}')
    return True


def _check_sides(path: KeyPath, opening: Opening, wall: ReadWall, notebook: Notebook) -> None:
    show = notebook.show
    if opening.left <= 0:
        notebook.note((*path, "from_left"), "no masonry is left between the wall's left end and the opening; "
                      "write a longer distance, or a shorter wall")
    if wall.length is None or opening.right < wall.length:
        return
    key = "from_left" if opening.left >= wall.length else "width"
    beyond = opening.right - wall.length
    past = f"{show(beyond)} past the wall's right end" if beyond else "up to the wall's right end"
    notebook.note((*path, key), f"the opening reaches from {show(max(opening.left, 0))} to {show(opening.right)}, {past} "
                  f"at {show(wall.length)}; write a shorter from_left or width, so that masonry is left beside it")


def _check_top(path: KeyPath, opening: Opening, wall: ReadWall, notebook: Notebook) -> None:
    if wall.highest is None:
        return
    show, high = notebook.show, wall.highest
    if opening.bottom >= high:
        notebook.note((*path, "sill"), f"{show(opening.bottom)} is not under the wall's top at {show(high)}; "
                      "write a lower sill")
    elif opening.top > high:
        notebook.note((*path, "height"), f"the opening reaches {show(opening.top)} high, {show(opening.top - high)} over "
                      f"the wall's top; write at most {notebook.show_most(high - opening.bottom)}")
    elif opening.top == high and opening.lintel != "none":
        notebook.note((*path, "lintel"), "the opening reaches the wall's top, so there is nothing to carry and nowhere to "
                      'put a lintel; write lintel = "none", or a lower height')


def _check_control_joints(
    path: KeyPath, opening: Opening, wall: ReadWall, masonry: Masonry, notebook: Notebook,
) -> None:
    clear, half = masonry.joint + masonry.joint // 2, masonry.joint // 2
    reach = opening.bearing if opening.lintel != "none" else 0
    least = max(clear, reach + half)
    for _, centre in wall.control_joints:
        away = max(opening.left - centre, centre - opening.right)
        if away >= least:
            continue
        what = "reaches" if away < clear else "has a lintel that bears across"
        shorter = f", or write a bearing of at most {notebook.show_most(away - half)}" if away >= clear else ""
        notebook.note((*path, "from_left"), f"the opening {what} the control joint at {notebook.show(centre)}; move one "
                      f"of them, so that {notebook.show_least(least)} at least lie between jamb and joint{shorter}")
        return


def _check_overlaps(openings: Sequence[tuple[KeyPath, Opening]], notebook: Notebook) -> None:
    """Each opening is reported once, against the first that it meets; touching counts."""
    ordered = sorted(enumerate(openings), key=lambda item: item[1][1].left)
    reported: set[int] = set()
    for place, (number, (_, opening)) in enumerate(ordered):
        for other_number, (_, other) in ordered[place + 1:]:
            if other.left > opening.right:
                break
            if other.bottom > opening.top or opening.bottom > other.top:
                continue
            later, earlier = max(number, other_number), min(number, other_number)
            if later not in reported:
                reported.add(later)
                _note_overlap(openings[later], openings[earlier][1], notebook)


def _note_overlap(later: tuple[KeyPath, Opening], earlier: Opening, notebook: Notebook) -> None:
    path, opening = later
    across = min(opening.right, earlier.right) - max(opening.left, earlier.left)
    up = min(opening.top, earlier.top) - max(opening.bottom, earlier.bottom)
    by = f"by {notebook.show(across)} across and {notebook.show(up)} up" if across and up else "along an edge"
    notebook.note((*path, "from_left" if up else "sill"), f'the opening meets opening "{print_name(earlier.name)}" {by}; '
                  "move one, so that masonry is left between them, or write one opening in place of both")
