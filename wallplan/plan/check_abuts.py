"""Walls that abut others: names, room in the other wall, heights."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from wallplan.plan.found import find_nearest, print_found, print_name
from wallplan.plan.job import Abutment, Masonry
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.pier_sizes import find_lattice
from wallplan.plan.pier_steps import check_steps_at
from wallplan.plan.wall_table import ReadWall


def settle_abuts(walls: Sequence[ReadWall], joint: int, notebook: Notebook) -> tuple[ReadWall, ...]:
    """The walls with their abutments put to the walls as they are laid: distances along walls that go straight on are from
    the whole wall's left end. ``joint`` is what a nominal plan counts beside an inside corner. What is wrong is noted."""
    return tuple(replace(wall, abuts=tuple(
        (path, found) for path, one in wall.abuts if (found := _settle(wall, walls, path, one, joint, notebook)) is not None
    )) for wall in walls)


def _settle(wall: ReadWall, walls: Sequence[ReadWall], path: KeyPath, abutment: Abutment, joint: int,
            notebook: Notebook) -> Abutment | None:
    parts = {name: (other, begin) for other in walls for name, begin in (other.parts or ((other.name, 0),)) if name}
    if abutment.meets not in parts or parts[abutment.meets][0] is wall:
        near = find_nearest(abutment.meets, [name for name, (other, _) in parts.items() if other is not wall])
        hint = f"; the nearest is {near}" if near else "; write the name of another wall"
        notebook.note((*path, "meets"), f"{print_found(abutment.meets)} is no other wall of the plan{hint}")
        return None
    kind = wall.table.left if abutment.end == "left" else (wall.last[1] if wall.last else wall.table).right
    if kind not in (None, "end", "abuts"):
        notebook.note((*path, "end"), f'the wall\'s {abutment.end} is "{kind}"; an end that abuts another wall is no '
                      f'corner: leave {abutment.end} out')
        return None
    other, begin = parts[abutment.meets]
    shift = joint if other.left in ("inside corner", "abuts") else 0
    return replace(abutment, meets=other.name or "", at=abutment.at + begin + shift)


def check_abuts(walls: Sequence[ReadWall], masonry: Masonry | None, notebook: Notebook) -> None:
    """Note each abutting end that cannot be laid where it is."""
    known = {wall.name: wall for wall in walls}
    for wall in walls:
        ends = [abutment.end for _, abutment in wall.abuts]
        for number, (path, abutment) in enumerate(wall.abuts):
            if abutment.end in ends[:number]:
                notebook.note((*path, "end"), f'the {abutment.end} end abuts twice; write "left" in one and "right" in the '
                              "other")
            elif masonry is not None:
                _check_room(known[abutment.meets], path, abutment, masonry, notebook)
                _check_heights(wall, known[abutment.meets], path, abutment, notebook)
                if path[-2] == "pier":
                    check_steps_at(known[abutment.meets], _key(path, "at"), (abutment.at, abutment.at + masonry.thickness),
                                   masonry, notebook, flush=False)
    if masonry is not None:
        _check_neighbours(walls, masonry, notebook)


def _check_room(main: ReadWall, path: KeyPath, abutment: Abutment, masonry: Masonry, notebook: Notebook) -> None:
    """A piece must fit between the abutting wall and the main wall's ends, jambs and control joints."""
    if main.length is None:
        return
    thick, least = masonry.thickness, masonry.joint + masonry.least_piece
    left, right = abutment.at, abutment.at + thick
    ends = [thick if end == "outside corner" else 0 for end in (main.left, main.right)]
    what = "pier" if path[-2] == "pier" else "wall"
    if left < ends[0] + least or right > main.length - ends[1] - least:
        low, high = ends[0] + least, main.length - ends[1] - least - thick
        allowed = (f"write {notebook.show_least(low)} to {notebook.show_most(high)}" if low <= high
                   else "that wall is too short for it")
        notebook.note(_key(path, "at"), f"{notebook.show(max(abutment.at, 0))} leaves no piece between this {what} and an "
                      f"end of wall {_called(main)}; {allowed}{_tell_end(main, path, abutment, masonry, notebook)}")
    for _, opening in main.openings:
        if left < opening.right + least and right > opening.left - least:
            notebook.note(_key(path, "at"), f'at {notebook.show(abutment.at)} the {what} stands in or beside opening '
                          f'"{print_name(opening.name)}" of wall {_called(main)}; keep {notebook.show_least(least)} of '
                          "masonry between them")
    for _, centre in main.control_joints:
        if left - least < centre < right + least:
            notebook.note(_key(path, "at"), f"at {notebook.show(abutment.at)} the {what} stands on or beside the control "
                          f"joint at {notebook.show(centre)}; keep {notebook.show_least(least)} between them")


def _tell_end(main: ReadWall, path: KeyPath, abutment: Abutment, masonry: Masonry, notebook: Notebook) -> str:
    """What to write for a pier at a free end itself, where units fill one; "" else."""
    at_end = (abutment.at <= 0, main.left) if 2 * abutment.at < (main.length or 0) else (
        abutment.at + masonry.thickness >= (main.length or 0), main.right)
    lattice = find_lattice(masonry)
    if path[-2] != "pier" or at_end != (True, "end") or lattice is None or not lattice.count(masonry.thickness):
        return ""
    width = notebook.show(masonry.thickness).removesuffix(" mm")
    return f'; for a pier at the end itself write its width, and depth or projects: width = "{width}"'


def _check_neighbours(walls: Sequence[ReadWall], masonry: Masonry, notebook: Notebook) -> None:
    """Walls that abut one wall keep clear of one another: on one face, and where both are tied through it, on either."""
    ends = [(path, one) for wall in walls for path, one in wall.abuts]
    for number, (path, one) in enumerate(ends):
        for _, other in ends[:number]:
            if other.meets != one.meets:
                continue
            tied = one.tie == other.tie == "interlocked"
            if not tied and one.inside != other.inside:
                continue
            least = masonry.thickness + (masonry.joint + masonry.least_piece if tied else 0)
            if abs(one.at - other.at) < least:
                notebook.note(_key(path, "at"), f"{notebook.show(abs(one.at - other.at))} from another wall or pier that "
                              f'abuts wall "{print_name(one.meets)}"; keep {notebook.show_least(least)} from side to side')


def _check_heights(wall: ReadWall, main: ReadWall, path: KeyPath, abutment: Abutment, notebook: Notebook) -> None:
    if wall.height is None or main.height is None:
        return
    if wall.height > main.height and abutment.tie == "straps":
        notebook.note(_key(path, "tie"), f"the wall is {notebook.show(wall.height)} high and wall {_called(main)} only "
                      f"{notebook.show(main.height)}: straps have nothing to reach above it; make it lower")


def _key(path: KeyPath, key: str) -> KeyPath:
    """The key that a mistake of an abutting end stands at; a pier has but its distance."""
    return (*path, "from_left" if path[-2] == "pier" else key)


def _called(wall: ReadWall) -> str:
    return f'"{print_name(wall.name)}"' if wall.name else str(int(wall.path[-1]) + 1)
