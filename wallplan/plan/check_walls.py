"""Walls against their unit, their control joints, and what can be laid at all."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.plan.bare_number import say_bare
from wallplan.plan.job import Masonry
from wallplan.plan.notebook import Notebook
from wallplan.plan.wall_table import ReadWall

MOST_PIECES = 2_000_000
"""Pieces in all walls of a plan together."""


def check_wall(wall: ReadWall, masonry: Masonry, notebook: Notebook) -> None:
    """Note a wall that is shorter than a piece, control joints that leave no panel, and beams without their units."""
    least = masonry.least_piece - masonry.joint
    if wall.length is not None and wall.length < max(least, 1):
        said = (f"{notebook.show(max(wall.length, 0))} of masonry is shorter than the least piece; write at least "
                f"{notebook.show_least(least)} ({say_bare(notebook.measure)})")
        if not notebook.knows((*wall.path, "length")):
            notebook.note((*wall.path, "length"), said)
    elif wall.length is not None:
        _check_control_joints(wall, wall.length, masonry, notebook)
    if wall.bond_beams and "bond beam" not in masonry.unit.shapes:
        notebook.note((*wall.path, "bond_beams"), f"{masonry.unit.key} does not come in bond beam units; leave them out, "
                      "or take a unit that does")


def _check_control_joints(wall: ReadWall, length: int, masonry: Masonry, notebook: Notebook) -> None:
    from_end = masonry.least_piece - masonry.joint // 2
    show, before = notebook.show, -1
    for path, centre in sorted(wall.control_joints, key=lambda item: item[1]):
        if centre <= 0 or centre >= length:
            notebook.note(path, f"{show(max(centre, 0))} is not inside the wall, which is {show(length)} long; write a "
                          "distance from its left end")
        elif min(centre, length - centre) < from_end:
            notebook.note(path, f"{show(centre)} leaves less than the least piece to the wall's "
                          f"{'left' if 2 * centre < length else 'right'} end; stay {notebook.show_least(from_end)} "
                          "at least from it")
        elif before >= 0 and centre - before < masonry.least_piece:
            notebook.note(path, f"{show(centre)} is {show(centre - before)} from the control joint at {show(before)}, under "
                          f"the least piece; stay {notebook.show_least(masonry.least_piece)} at least from it")
        else:
            before = centre


def check_amount(walls: Sequence[ReadWall], masonry: Masonry, notebook: Notebook) -> None:
    """Note the wall with which the pieces, by courses and modules, pass MOST_PIECES. Later walls are not counted."""
    pieces = 0
    for wall in walls:
        if wall.length is not None and wall.courses is not None:
            pieces += wall.courses * -(-wall.length // masonry.module)
        if pieces > MOST_PIECES:
            notebook.note((*wall.path, "length"), f"with this wall the plan holds about {pieces:,} pieces; "
                          f"at most {MOST_PIECES:,} are laid; write a smaller wall, or split the plan")
            return
