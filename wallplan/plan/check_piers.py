"""Piers built into walls: room in their wall, between its openings, control joints, corners, and one another."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.plan.found import print_name
from wallplan.plan.job import Masonry, Pier
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.pier_steps import check_steps_at
from wallplan.plan.wall_table import ReadWall


def check_piers(walls: Sequence[ReadWall], masonry: Masonry | None, notebook: Notebook) -> None:
    """Note each pier that cannot be laid where it is."""
    if masonry is None:
        return
    for wall in walls:
        for number, (path, pier) in enumerate(wall.piers):
            check_steps_at(wall, (*path, "from_left"), (pier.left, pier.right), masonry, notebook, flush=True)
            _check_courses(wall, path, notebook)
            _check_ends(wall, path, pier, masonry, notebook)
            _check_openings(wall, path, pier, masonry, notebook)
            _check_control_joints(wall, path, pier, masonry, notebook)
            others = [other for _, other in wall.piers[:number]]
            _check_neighbours(wall, path, (pier, others), (walls, masonry), notebook)


def _least(masonry: Masonry) -> int:
    """What must be left beside a pier: a piece and a joint."""
    return masonry.joint + masonry.least_piece


def _check_courses(wall: ReadWall, path: KeyPath, notebook: Notebook) -> None:
    if wall.courses == 1:
        notebook.note((*path, "from_left"), "the wall is one course high, and a pier is tied in by every other course; "
                      "write two courses at least, or leave width and depth out")


def _check_ends(wall: ReadWall, path: KeyPath, pier: Pier, masonry: Masonry, notebook: Notebook) -> None:
    """A pier stands at a free end, or so far from an end that a piece fits between."""
    if wall.length is None:
        return
    show, beyond = notebook.show, pier.right - wall.length
    if beyond > 0:
        last = wall.length - pier.width
        instead = f"write {show(last)} for a pier at that end, or less" if last >= 0 else "the wall is shorter than the pier"
        notebook.note((*path, "from_left"), f"the pier reaches {show(beyond)} past the wall's right end at "
                      f"{show(wall.length)}; {instead}")
        return
    for side, away, kind in (("left", pier.left, wall.left), ("right", -beyond, wall.right)):
        if kind == "end" and not away:
            continue
        least = _least(masonry) + (masonry.thickness if kind == "outside corner" else 0)
        if away < least:
            at_end = "none, or " if kind == "end" else ""
            notebook.note((*path, "from_left"), f"{show(away)} of wall are left between the pier and the wall's {side} end; "
                          f"leave {at_end}{notebook.show_least(least)} at least")


def _check_openings(wall: ReadWall, path: KeyPath, pier: Pier, masonry: Masonry, notebook: Notebook) -> None:
    for _, opening in wall.openings:
        away = max(opening.left - pier.right, pier.left - opening.right)
        if away < 0:
            notebook.note((*path, "from_left"), f"the pier, from {notebook.show(pier.left)} to {notebook.show(pier.right)}, "
                          f'stands in opening "{print_name(opening.name)}", from {notebook.show(opening.left)} to '
                          f"{notebook.show(opening.right)}; move one of them")
        elif 0 < away < _least(masonry):
            notebook.note((*path, "from_left"), f"{notebook.show(away)} of wall are left between the pier and opening "
                          f'"{print_name(opening.name)}"; leave none, so that the pier is the jamb, or '
                          f"{notebook.show_least(_least(masonry))} at least")


def _check_control_joints(wall: ReadWall, path: KeyPath, pier: Pier, masonry: Masonry, notebook: Notebook) -> None:
    """A joint may move at a pier's face, where its edge is the pier's; else a piece must fit between."""
    half = masonry.joint // 2
    for _, centre in wall.control_joints:
        away = max(centre - half - pier.right, pier.left - centre - masonry.joint + half)
        if 0 < away < masonry.least_piece - masonry.joint or away < 0:
            faces = " or ".join(_exactly(at, notebook) for at in (pier.left - half, pier.right + half))
            notebook.note((*path, "from_left"), f"the control joint at {notebook.show(centre)} runs up in the pier or "
                          f"beside it; at the pier's face it stands at {faces}, else "
                          f"{notebook.show_least(_least(masonry))} away")


def _exactly(at: int, notebook: Notebook) -> str:
    return f"{at / 960:g} mm" if notebook.measure == "metric" else notebook.show(at)


def _check_neighbours(wall: ReadWall, path: KeyPath, piers: tuple[Pier, Sequence[Pier]],
                      known: tuple[Sequence[ReadWall], Masonry], notebook: Notebook) -> None:
    """Between a pier and the next one, or a wall that abuts, a piece must fit."""
    (pier, others), (walls, masonry) = piers, known
    places = [(f'pier "{print_name(other.name)}"', other.left, other.right) for other in others]
    places += [(f'wall "{print_name(stem.name or "")}"', one.at, one.at + masonry.thickness)
               for stem in walls for _, one in stem.abuts if one.meets == wall.name]
    for name, left, right in places:
        away = max(left - pier.right, pier.left - right)
        if away < _least(masonry):
            told = f"{notebook.show(away)} of wall are left between" if away >= 0 else "one place is taken by"
            notebook.note((*path, "from_left"), f"{told} the pier and {name}; leave "
                          f"{notebook.show_least(_least(masonry))} at least")
