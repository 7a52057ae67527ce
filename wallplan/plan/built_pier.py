"""``[[wall.pier]]`` of a pier wider or thicker than its wall, read into ticks: its sizes, as far as units fill them."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from wallplan.plan.job import Masonry, Pier
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.pier_sizes import MOST_CELLS, MOST_SAWN, Lattice, find_lattice

if TYPE_CHECKING:
    from wallplan.plan.abuts_schema import PierTable


class _Sizes(NamedTuple):
    """What a pier's sizes are held against: the cells, the wall's thickness, and the joint that a nominal plan counts."""

    lattice: Lattice
    thick: int
    joint: int


def is_built(table: PierTable) -> bool:
    """Whether a pier is laid of units of its own; else it is as wide as the wall is thick, and a short wall."""
    return table.width is not None or table.depth is not None or table.face == "both"


def read_built_pier(table: PierTable, path: KeyPath, wall: str | None, masonry: Masonry | None, joint: int,
                    notebook: Notebook) -> Pier | None:
    """One pier, or None where something of it is missing or wrong. ``joint`` is what a nominal plan counts with a size."""
    at = notebook.read((*path, "from_left"), table.from_left)
    sizes = {key: notebook.read((*path, key), getattr(table, key), least=1) for key in ("width", "depth", "projects")}
    if masonry is None or any(sizes[key] is None and getattr(table, key) is not None for key in sizes):
        return None
    lattice = find_lattice(masonry)
    if lattice is None:
        key = next(key for key in ("width", "depth", "face") if getattr(table, key) is not None)
        notebook.note((*path, key), f"{masonry.unit.key} is not a quarter, a third, half or three quarters as thick as "
                      "long, so that no pier of it bonds; leave width and depth out, or take a unit that is")
        return None
    depth = _find_depth(table, path, sizes, masonry, joint, notebook)
    if depth is None:
        return None
    given = sizes["width"]
    wide = depth if given is None else given - joint
    cells = _fit(path, table, (wide, depth), _Sizes(lattice, masonry.thickness, joint), notebook)
    if cells is None or at is None:
        return None
    wide, deep = lattice.size(cells[0]), lattice.size(cells[1])
    spare = deep - masonry.thickness
    front = spare // 2 if table.face == "both" else spare if table.face == "outside" else 0
    name = table.name or f"{wall}, pier {int(path[-1]) + 1}"
    return Pier(name, at, wide, front, spare - front)


def _find_depth(table: PierTable, path: KeyPath, sizes: dict[str, int | None], masonry: Masonry, joint: int,
                notebook: Notebook) -> int | None:
    """How deep the pier is, through the wall and out to its faces."""
    depth, projects, thick = sizes["depth"], sizes["projects"], masonry.thickness
    if depth is not None and projects is not None:
        notebook.note((*path, "projects"), "depth says already how far the pier stands out; leave one of the two out")
        return None
    if depth is not None:
        depth -= joint
        if depth <= thick:
            notebook.note((*path, "depth"), f"{notebook.show(max(depth, 0))} is no thicker than the wall, which is "
                          f"{notebook.show(thick)}; write more, or leave the pier out")
            return None
        return depth
    if projects is not None:
        return thick + projects * (2 if table.face == "both" else 1)
    if sizes["width"] is None:
        notebook.note((*path, "width"), "missing, and so is depth; a pier on both faces needs one of them: write "
                      f"width = \"{notebook.show(masonry.module - masonry.joint + joint).removesuffix(' mm')}\"")
        return None
    wide = sizes["width"] - joint
    if wide <= thick:
        notebook.note((*path, "depth"), f"missing: as deep as it is wide, {notebook.show(max(wide, 0))}, the pier is no "
                      f"thicker than the wall, which is {notebook.show(thick)}; write depth or projects")
        return None
    return wide


def _fit(path: KeyPath, table: PierTable, asked: tuple[int, int], sizes: _Sizes,
         notebook: Notebook) -> tuple[int, int] | None:
    """Columns and rows of a pier of these sizes; None where no units fill them, which is noted with what they do fill."""
    keys = ("width" if table.width is not None else "depth",
            next((key for key in ("depth", "projects") if getattr(table, key) is not None), "width"))
    lattice = sizes.lattice
    cells = [lattice.count(size) for size in asked]
    rows = cells[1]
    if rows is not None and not _is_depth(table, rows, lattice):
        cells[1] = None
    columns, rows = cells
    for place, key in enumerate(dict.fromkeys(keys)):
        if cells[place] is None or (place == 0 and columns and rows and not _is_filled(table, columns, rows, lattice)):
            wanted = [count for count in range(1, MOST_CELLS + 1) if _suits(table, count, place, rows, lattice)]
            _note_size((*path, key), asked[place], wanted, (sizes, _shown_as(table, key)), notebook)
            return None
    if columns is None or rows is None:
        return None
    if max(columns, rows) > MOST_CELLS:
        key = keys[0] if columns > MOST_CELLS else keys[1]
        notebook.note((*path, key), f"piers are laid up to {notebook.show(lattice.size(MOST_CELLS))}; write a smaller one")
        return None
    if not _is_quick(table, columns, rows, lattice):
        narrow = _exactly(lattice.size(MOST_SAWN) + sizes.joint, notebook)
        notebook.note((*path, keys[0]), f"a pier wider than {narrow} is laid of whole and half units alone, and they do not "
                      f"fill this one without sawing; write {narrow.removesuffix(' mm')} or less, or change its depth")
        return None
    return columns, rows


def _is_quick(table: PierTable, columns: int, rows: int, lattice: Lattice) -> bool:
    """Whether the pier's bond is found in a second or two: wide piers that are sawn in every course take minutes."""
    stand_out = (rows - lattice.thick) // (2 if table.face == "both" else 1)
    return columns <= MOST_SAWN or not any(side % lattice.wide for side in (columns, rows, stand_out))


def _is_depth(table: PierTable, rows: int, lattice: Lattice) -> bool:
    """Whether a pier so deep stands out of its wall by whole cells, alike on both faces where it has both."""
    spare = rows - lattice.thick
    return spare > 0 and (table.face != "both" or spare % 2 == 0)


def _is_filled(table: PierTable, columns: int, rows: int, lattice: Lattice) -> bool:
    """Whether units fill the pier both where it is tied in and where the wall goes on through it.

    It is as wide as a unit at least, so that one may cross a face of the wall. A single row of cells behind the wall's two
    faces takes two of them abreast.
    """
    both = table.face == "both"
    if columns < max(lattice.wide, 2 if both and lattice.thick == 1 else 1):
        return False
    return lattice.is_filled(columns, rows) and lattice.is_filled(columns, (rows - lattice.thick) // (2 if both else 1))


def _suits(table: PierTable, count: int, place: int, rows: int | None, lattice: Lattice) -> bool:
    square = table.width is None or (table.depth is None and table.projects is None)
    if square:
        return _is_depth(table, count, lattice) and _is_filled(table, count, count, lattice)
    if place:
        return _is_depth(table, count, lattice)
    return rows is None or _is_filled(table, count, rows, lattice)


def _shown_as(table: PierTable, key: str) -> int:
    """How many faces a projection is counted on; 0 for a size over all."""
    return 0 if key != "projects" else 2 if table.face == "both" else 1


def _note_size(path: KeyPath, asked: int, wanted: list[int], told: tuple[_Sizes, int], notebook: Notebook) -> None:
    (lattice, thick, joint), faces = told
    sizes = [lattice.size(count) for count in wanted]
    near = [*[size for size in sizes if size < asked][-1:], *[size for size in sizes if size >= asked][:1]]

    def write(size: int) -> str:
        shown = (size - thick) // faces if faces else size + joint
        return _exactly(shown, notebook)

    instead = f"the nearest are {' and '.join(map(write, near))}" if len(near) > 1 else (
        f"the nearest is {write(near[0])}" if near else "the wall takes none")
    notebook.note(path, f"{write(asked)} is filled by no whole, half and quarter units with their joints; {instead}")


def _exactly(size: int, notebook: Notebook) -> str:
    """A size as it may be written in the plan: in metric plans to a hundredth of a millimetre where it is no whole one."""
    if notebook.measure == "metric" and size % 960:
        return f"{size / 960:.2f}".rstrip("0") + " mm"
    return notebook.show(size)
