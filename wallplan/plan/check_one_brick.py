"""What bonds with headers ask of the unit, and what is not laid in them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wallplan.catalogue.unit import Unit
from wallplan.plan.height import beds_close
from wallplan.plan.job import Masonry
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.wall_table import ReadWall

ROUNDING = 2


def check_unit(bond: str, unit: Unit, joints: tuple[int, int, int], notebook: Notebook) -> bool:
    """Whether a unit can be laid in a bond with headers; what is wrong is noted. ``joints``: aimed for, tightest, widest."""
    joint, tightest, widest = joints
    known = len(notebook.wrongs)
    if not unit.solid:
        notebook.note(("masonry", "bond"), f'{bond} bond is laid of solid bricks, and {unit.key} is hollow; write bond = '
                      '"half", or take a solid brick')
        return False
    collar, header = unit.length - 2 * unit.thickness, (unit.length + joint) // 2 - unit.thickness
    if not all(tightest - ROUNDING <= gap <= widest + ROUNDING for gap in (collar, header)):
        show = notebook.show_size
        notebook.note(("masonry", "bond"), f"{bond} bond wants a brick as long as two are thick with a joint between: two "
                      f"of {show(unit.thickness)} and {show(joint)} are {show(2 * unit.thickness + joint)}, {unit.key} is "
                      f'{show(unit.length)} long; write bond = "half", or take another brick')
    return len(notebook.wrongs) == known


def check_one_brick(wall: ReadWall, masonry: Masonry, notebook: Notebook) -> None:
    """Note what a wall one brick thick cannot have: steps, gables, walls that abut it, levels off the coursing."""
    for path, what, instead in (*_find_shapes(wall), *_find_joins(wall)):
        notebook.note(path, f'{what} not laid in {masonry.bond} bond; {instead}, or write bond = "half"')
    if list(_find_shapes(wall)):
        return
    if wall.height is not None and wall.courses is not None and not beds_close(wall.height, wall.courses, masonry):
        _note_level((*wall.path, "height"), "", wall.height, masonry, notebook)
    for path, opening in wall.openings:
        for key, called, level in (("sill", "", opening.bottom), ("height", "the head at ", opening.top)):
            if not _on_line(level, wall, masonry):
                _note_level((*path, key), called, level, masonry, notebook)


def _find_shapes(wall: ReadWall) -> Iterator[tuple[KeyPath, str, str]]:
    for key, what in (("step", "steps of the footing are"), ("top_step", "steps of the top are"), ("gable", "gables are")):
        for number, _ in enumerate(getattr(wall.table, key) or ()):
            yield (*wall.path, key, number), what, "leave it out"


def _find_joins(wall: ReadWall) -> Iterator[tuple[KeyPath, str, str]]:
    for path, _ in wall.abuts:
        pier = "pier" in path
        yield path, "piers are" if pier else "walls that abut another are", "leave it out"


def check_header_courses(walls: Sequence[ReadWall], masonry: Masonry, notebook: Notebook) -> None:
    """Note an even number of stretcher courses in walls that meet: the quoin header would stand in every other course of
    headers only."""
    corners = any("corner" in end for wall in walls for end in (wall.table.left or "", wall.table.right or ""))
    asked = masonry.stretcher_courses
    if corners and asked % 2 == 0 and asked:
        notebook.note(("masonry", "stretcher_courses"), f"{asked}: at corners a header stands at the quoin in every "
                      f"second course, and an even number brings the course of headers to the others; write "
                      f"{asked - 1} or {asked + 1}")


def _on_line(level: int, wall: ReadWall, masonry: Masonry) -> bool:
    """Whether a level is on a course line, or within the bed above one; the wall's own top and foot always are."""
    unit = masonry.unit
    if level <= 0 or wall.height is None or level >= wall.height or wall.courses is None:
        return True
    shared = wall.height != unit.height_of_courses(wall.courses)
    lines = [wall.height * n // wall.courses if shared else unit.height_of_courses(n) for n in range(wall.courses + 1)]
    bed = lines[1] - unit.height
    return any(line - ROUNDING <= level <= line + max(bed, 0) for line in lines)


def _note_level(path: KeyPath, called: str, level: int, masonry: Masonry, notebook: Notebook) -> None:
    unit, show = masonry.unit, notebook.show
    count = 0
    while unit.height_of_courses(count + 1) <= level:
        count += 1
    near = [unit.height_of_courses(n) for n in (count, count + 1) if n]
    notebook.note(path, f"{called}{show(level)} is off the coursing, and no course is ripped in {masonry.bond} bond; "
                  f"courses end at {' and '.join(show(one) for one in near)}")
