"""Steps and gables against their wall, each other, the coursing and the openings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from wallplan.plan.coursing import FIRST_BED, Row, close_height, meets_footing, meets_top
from wallplan.plan.height import THINNEST_RIP
from wallplan.plan.job import Masonry, Opening, Outline
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.outline import level_at, reach_between
from wallplan.plan.outline_table import ReadStep, in_order
from wallplan.plan.wall_table import ReadWall


def check_outline(wall: ReadWall, masonry: Masonry | None, notebook: Notebook) -> None:
    """Note steps and gables that leave the wall, stand too near or across each other, or that no course can meet."""
    if wall.length is None or wall.is_pier:
        return
    least = masonry.least_piece if masonry else 1
    sound = all([_check_places(wall, wall.read_outline.steps, masonry, least, notebook),
                 _check_places(wall, wall.read_outline.top_steps, masonry, least, notebook),
                 _check_gables(wall, least, notebook)])
    if not sound or wall.outline is None:
        return
    if not _check_heights(wall, wall.outline, masonry, notebook):
        return
    for path, opening in wall.openings:
        _check_opening(path, opening, wall.outline, masonry, notebook)
    if masonry is not None:
        _check_coursing(wall, wall.outline, masonry, notebook)


def _check_places(wall: ReadWall, steps: Sequence[ReadStep], masonry: Masonry | None, least: int,
                  notebook: Notebook) -> bool:
    """Steps inside the wall, and far enough from its ends and each other; the first that is not is told."""
    length, show = wall.length or 0, notebook.show
    thick = masonry.thickness + masonry.joint if masonry else 0
    sides = [thick if end == "outside corner" else 0 for end in (wall.left, wall.right)]
    before: ReadStep | None = None
    for step in in_order(steps):
        path = (*step.path, "at")
        if not 0 < step.at < length:
            notebook.note(path, f"{show(max(step.at, 0))} is not inside the wall, which is {show(length)} long; write a "
                          "distance from its left end")
            return False
        for clear, side, word in ((step.at, sides[0], "left"), (length - step.at, sides[1], "right")):
            if clear < side + least:
                notebook.note(path, f"{show(clear)} of masonry is left to the wall's {word} end; stay "
                              f"{notebook.show_least(side + least)} away at least")
                return False
        if before is not None and step.at - before.at < least:
            notebook.note(path, f"{show(step.at - before.at)} from the step at {show(before.at)}, under the least piece; "
                          f"make them one step, or stay {notebook.show_least(least)} apart at least")
            return False
        before = step
    return True


def _check_gables(wall: ReadWall, least: int, notebook: Notebook) -> bool:
    length, show = wall.length or 0, notebook.show
    gables = sorted(wall.read_outline.gables, key=lambda gable: gable.left)
    for gable in gables:
        width = gable.right - gable.left
        if gable.left < 0 or gable.right > length:
            notebook.note((*gable.path, "width"), f"the gable is {show(width)} wide and reaches {show(gable.right)} from "
                          f"the wall's left end, but the wall is {show(length)} long; write at most "
                          f"{notebook.show_most(max(length - gable.left, 0))}")
            return False
        if width < 2 * least:
            notebook.note((*gable.path, "width"), f"{show(width)} has no room for two pieces; write at least "
                          f"{notebook.show_least(2 * least)}")
            return False
        for step in wall.read_outline.top_steps:
            if gable.left < step.at < gable.right:
                notebook.note((*step.path, "at"), f"the top steps at {show(step.at)}, under the gable from "
                              f"{show(gable.left)} to {show(gable.right)}; a gable stands on a level top")
                return False
    for one, other in pairwise(gables):
        if other.left < one.right:
            notebook.note((*other.path, "from_left"), f"the gable meets the one before by {show(one.right - other.left)}; "
                          "move one, or make it narrower")
            return False
    return True


def _check_heights(wall: ReadWall, outline: Outline, masonry: Masonry | None, notebook: Notebook) -> bool:
    """Room for a course between footing and top, everywhere."""
    least = masonry.unit.bed_joint + THINNEST_RIP if masonry else 1
    places = sorted({at for at, _ in (*outline.footing, *outline.top)})
    for left, right in pairwise(places):
        foot, top = reach_between(outline.footing, left, right)[1], reach_between(outline.top, left, right)[0]
        if top - foot < least:
            key = "height" if wall.table.height is not None else "courses"
            notebook.note((*wall.path, key), f"from {notebook.show(left)} to {notebook.show(right)} the footing is at "
                          f"{notebook.show(foot)} over the lowest and the top at {notebook.show(max(top, 0))}: no room "
                          f"for a course; write at least {notebook.show_least((wall.height or 0) + foot + least - top)}")
            return False
    return True


def _check_opening(path: KeyPath, opening: Opening, outline: Outline, masonry: Masonry | None,
                   notebook: Notebook) -> None:
    show = notebook.show
    foot = reach_between(outline.footing, opening.left, opening.right)[1]
    if opening.bottom < foot:
        notebook.note((*path, "sill"), f"{show(opening.bottom)}, but the footing there is at {show(foot)} over the lowest, "
                      f"where heights start; write at least {notebook.show_least(foot)}, or move the opening")
    reach = 0 if opening.lintel == "none" else opening.bearing
    over = masonry.unit.gauge if masonry else 1
    top = reach_between(outline.top, opening.left - reach, opening.right + reach)[0]
    if opening.top + over > top and top < max(height for _, height in outline.top):
        notebook.note((*path, "height"), f"the opening reaches {show(opening.top)}, and over it and its bearings the top "
                      f"comes down to {show(max(top, 0))}; a course must stay between: write at most "
                      f"{notebook.show_most(max(top - over - opening.bottom, 0))}, or move the opening")


def _check_coursing(wall: ReadWall, outline: Outline, masonry: Masonry, notebook: Notebook) -> None:
    """Levels that no course can meet: what is left is too thick for a bed and too thin for a rip."""
    levels = tuple(level for _, opening in wall.openings for level in (opening.bottom, opening.top))
    rows = (close_height(wall.laid_with.height, wall.laid_with.levels, masonry) if wall.laid_with is not None
            else close_height(outline.coursed, levels, masonry, outline))
    told: set[KeyPath] = set()
    for path, level, foot in _levels(wall, outline):
        if (meets_footing if foot else meets_top)(rows, level, masonry) or path in told:
            continue
        told.add(path)
        row = next(row for row in rows if row.bottom <= level <= row.top)
        lower, higher = _find_moves(rows, row, level, foot)
        what, show, off = "the footing" if foot else "the top", notebook.show, notebook.show_size(level - row.bottom)
        notebook.note(path, f"{what} comes to {show(level)}, which is {off} over a course "
                      "line: too much for a bed, too little for a course ripped to an inch; make it "
                      f"{notebook.show_least(lower)} lower or {notebook.show_least(higher)} higher; whole courses come to "
                      f"{show(row.bottom)} or {show(row.top)}{_say_step(wall, path, (level, row), masonry, notebook)}")


def _find_moves(rows: tuple[Row, ...], row: Row, level: int, foot: bool) -> tuple[int, int]:
    """How far a level must go down, and up, until a course meets it."""
    if foot:
        above = rows[row.number].bed if row.number < len(rows) else row.bed
        return level - (row.top - row.bed - THINNEST_RIP), max(row.top + above - FIRST_BED[1] - level, 0)
    return level - row.bottom - row.bed // 2, row.bottom + row.bed + THINNEST_RIP - level


def _say_step(wall: ReadWall, path: KeyPath, at_level: tuple[int, Row], masonry: Masonry, notebook: Notebook) -> str:
    """What to write for a step so that it comes to the nearest whole course; "" for what hangs on no step. ``at_level``: the
    level that is not met, right of the step or left of the first one, and the course there."""
    steps = wall.read_outline.steps, wall.read_outline.top_steps
    step = next((one for one in (*steps[0], *steps[1]) if path[:-1] == one.path), None)
    if step is None or wall.outline is None:
        return ""
    level, row = at_level
    line = wall.outline.footing if step in steps[0] else wall.outline.top
    if level_at(line, step.at) == level:
        rise = abs(step.rise + min((row.bottom, row.top), key=lambda one: abs(one - level)) - level)
    else:
        rise = masonry.unit.height_of_courses(max(1, round(abs(step.rise) / masonry.unit.gauge)))
    return f": write {path[-1]} = {notebook.show(rise)}" if rise not in (0, abs(step.rise)) else ""


def _levels(wall: ReadWall, outline: Outline) -> Iterator[tuple[KeyPath, int, bool]]:
    """Each level of a stepped footing or top, the key that it hangs on, and whether it is the footing's."""
    for steps, line, foot in ((wall.read_outline.steps, outline.footing, True),
                              (wall.read_outline.top_steps, outline.top, False)):
        ordered = in_order(steps)
        if ordered:
            first = ordered[0]
            yield (*first.path, "up" if first.rise > 0 else "down"), line[0][1], foot
        elif not foot and wall.height is not None:
            yield (*wall.path, "height" if wall.table.height is not None else "courses"), wall.height, foot
        for step in ordered:
            yield (*step.path, "up" if step.rise > 0 else "down"), level_at(line, step.at), foot
