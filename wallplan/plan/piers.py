"""``[[wall.pier]]`` of a pier as wide as its wall is thick, read as the short wall that it is, tied into its wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from wallplan.plan.built_pier import is_built
from wallplan.plan.check_names import file_word
from wallplan.plan.found import print_found
from wallplan.plan.job import Abutment, Masonry
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.wall_table import ReadWall

if TYPE_CHECKING:
    from wallplan.plan.abuts_schema import PierTable
    from wallplan.plan.schema import WallTable


def read_piers(tables: Sequence[WallTable], walls: Sequence[ReadWall], masonry: Masonry | None,
               notebook: Notebook) -> Iterator[ReadWall]:
    """The piers of all walls, as walls of one unit's thickness that abut theirs, as far as they are sound."""
    taken = {file_word(table.name) for table in tables if table.name}
    for number, (table, wall) in enumerate(zip(tables, walls, strict=True)):
        for place, pier in enumerate(table.pier or ()):
            path: KeyPath = ("wall", number, "pier", place)
            name = pier.name or f"{wall.table.name}, pier {place + 1}"
            word = file_word(name)
            if not word or word in taken:
                notebook.note((*path, "name"), f"{print_found(name)} is the name of another wall or pier, or has no "
                              "letters; write one that differs in its letters and digits")
            taken.add(word)
            found = None if is_built(pier) else _read_pier(pier, path, wall, name, (masonry, notebook))
            if found is not None:
                yield found


def _read_pier(table: PierTable, path: KeyPath, wall: ReadWall, name: str,
               known: tuple[Masonry | None, Notebook]) -> ReadWall | None:
    from wallplan.plan.schema import WallTable, read_table

    masonry, notebook = known

    at = notebook.read((*path, "from_left"), table.from_left)
    projects = notebook.read((*path, "projects"), table.projects, least=1)
    if masonry is None or at is None or wall.name is None:
        return None
    usual = masonry.unit.length - masonry.unit.thickness
    length = usual if projects is None else projects
    least = masonry.least_piece
    if length < least:
        notebook.note((*path, "projects"), f"{notebook.show(max(length, 0))} leaves no piece before the wall's face; write "
                      f"at least {notebook.show_least(least)}")
        return None
    abutment = Abutment("left", wall.name, at, (table.face or "inside") == "inside", "interlocked")
    return ReadWall(path=path, table=read_table(WallTable, {"name": name}), length=length, height=wall.height,
                    courses=wall.courses, control_joints=(), bond_beams=(), openings=(), abuts=((path, abutment),))
