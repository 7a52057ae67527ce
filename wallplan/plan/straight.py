"""Walls that go straight on from one another, read as the one wall that they make: one line, one bond."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from wallplan.plan.found import print_name
from wallplan.plan.job import Opening
from wallplan.plan.notebook import Notebook
from wallplan.plan.outline_table import ReadOutline
from wallplan.plan.wall_table import ReadWall


def join_straight(walls: Sequence[ReadWall], notebook: Notebook) -> tuple[ReadWall, ...]:
    """The walls with each row of them that go straight on made one; walls that cannot be are noted and left apart.

    The last wall may go straight on into the first; the joined wall then stands last. () for no walls.
    """
    rows: list[list[ReadWall]] = []
    for wall in walls:
        if rows and _go_on(rows[-1][-1], wall, notebook):
            rows[-1].append(wall)
        else:
            rows.append([wall])
    if len(rows) > 1 and _go_on(rows[-1][-1], rows[0][0], notebook):
        rows = [*rows[1:-1], rows[-1] + rows[0]]
    return tuple(_join(row) for row in rows)


def _go_on(wall: ReadWall, other: ReadWall, notebook: Notebook) -> bool:
    """Whether both say that they go straight on; what keeps them from being one wall is noted."""
    if (wall.right, other.left) != ("straight", "straight"):
        return False
    called = f'wall "{print_name(wall.name or str(int(wall.path[-1]) + 1))}", from which it goes straight on,'
    here, there = wall.end_heights, other.end_heights
    if here is not None and there is not None and here[1] != there[0]:
        notebook.note((*other.path, "height" if other.table.height is not None else "courses"),
                      f"{notebook.show(there[0])}, but {called} is {notebook.show(here[1])} high; write one height "
                      'for both, or "end" on both sides')
    elif wall.bond_beams != other.bond_beams and None not in (wall.courses, other.courses):
        notebook.note((*other.path, "bond_beams") if other.table.bond_beams else (*other.path, "left"),
                      f"courses {_list(other.bond_beams)} are bond beams, but {called} has {_list(wall.bond_beams)}; a bond "
                      "beam runs through both: write the same in both")
    else:
        return True
    return False


def _list(beams: tuple[int, ...]) -> str:
    return ", ".join(map(str, beams)) or "none"


def _join(row: list[ReadWall]) -> ReadWall:
    """One wall of all in the row; what is not known of one is not known of the whole."""
    if len(row) == 1:
        return row[0]
    parts: list[tuple[str, int]] = []
    joints, openings = list(row[0].control_joints[:0]), list(row[0].openings[:0])
    abuts, piers = list(row[0].abuts[:0]), list(row[0].piers[:0])
    begins: int | None = 0
    outline = ReadOutline()
    for wall in row:
        shift = begins or 0
        outline = outline.joined(wall.read_outline, shift)
        abuts += wall.abuts
        parts.append((wall.name or str(int(wall.path[-1]) + 1), shift))
        joints += [(path, centre + shift) for path, centre in wall.control_joints]
        openings += [(path, _move(opening, shift, parts[-1][0], row)) for path, opening in wall.openings]
        piers += [(path, replace(pier, left=pier.left + shift)) for path, pier in wall.piers]
        begins = None if begins is None or wall.length is None else begins + wall.length
    known = begins is not None
    return replace(row[0], length=begins, control_joints=tuple(joints) if known else (), parts=tuple(parts),
                   openings=tuple(openings) if known else (), last=(row[-1].path, row[-1].table), abuts=tuple(abuts),
                   piers=tuple(piers) if known else (),
                   read_outline=outline if known else ReadOutline())


def _move(opening: Opening, shift: int, part: str, row: Sequence[ReadWall]) -> Opening:
    """The opening in the whole wall; where another part has one of the same name, its own part's name is added."""
    alike = sum(other.name == opening.name for wall in row for _, other in wall.openings)
    name = f"{opening.name} ({part})" if alike > 1 else opening.name
    return replace(opening, name=name, left=opening.left + shift, right=opening.right + shift)
