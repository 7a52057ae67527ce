"""``[[wall]]`` read into ticks, as far as it can be."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

from wallplan.lengths import LONGEST
from wallplan.plan.abuts_table import read_abutment
from wallplan.plan.bare_number import say_bare
from wallplan.plan.built_pier import is_built, read_built_pier
from wallplan.plan.found import print_found
from wallplan.plan.height import MOST_COURSES, beds_close, count_courses, least_height
from wallplan.plan.job import Abutment, EndKind, LaidWith, Masonry, Opening, Outline, Pier, Wall
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.opening_table import read_opening
from wallplan.plan.outline_table import ReadOutline, in_order, read_outline

if TYPE_CHECKING:
    from wallplan.plan.schema import WallTable

Sizes = Literal["actual", "nominal"]


@dataclass(frozen=True)
class ReadWall:
    """A wall as far as it could be read: a length that is missing or wrong is None.

    ``openings`` and ``control_joints`` hold the sound ones, each with its path. ``courses`` is the count that the
    height holds, None where the height or the unit is not known. ``least_piece`` and joints are in ``masonry``.
    Where walls that go straight on are read as one, ``table`` and ``path`` are those of the first, ``last`` those of the
    last, and ``parts`` says where each begins.
    """

    path: KeyPath
    table: WallTable
    length: int | None
    height: int | None
    courses: int | None
    control_joints: tuple[tuple[KeyPath, int], ...]
    bond_beams: tuple[int, ...]
    openings: tuple[tuple[KeyPath, Opening], ...]
    last: tuple[KeyPath, WallTable] | None = None
    parts: tuple[tuple[str, int], ...] = ()
    read_outline: ReadOutline = field(default_factory=ReadOutline)
    outline: Outline | None = None
    abuts: tuple[tuple[KeyPath, Abutment], ...] = ()
    piers: tuple[tuple[KeyPath, Pier], ...] = ()
    laid_with: LaidWith | None = None

    @property
    def is_pier(self) -> bool:
        """Whether it is a pier of another wall, read as a short wall."""
        return len(self.path) > 1 and self.path[-2] == "pier"

    @property
    def highest(self) -> int | None:
        """The wall's highest place over the datum, None where its height is not known."""
        return self.height if self.outline is None else max(height for _, height in self.outline.top)

    @property
    def end_heights(self) -> tuple[int, int] | None:
        """The level of the top at the left and the right end, eaves under a gable; None where the height is not known."""
        if self.height is None:
            return None
        return self.height, self.height + sum(step.rise for step in self.read_outline.top_steps)

    @property
    def left(self) -> EndKind:
        """How the wall ends on the left."""
        return "abuts" if self._abuts("left") else self.table.left or "end"

    @property
    def right(self) -> EndKind:
        """How the wall ends on the right."""
        return "abuts" if self._abuts("right") else (self.last[1] if self.last else self.table).right or "end"

    def _abuts(self, end: str) -> bool:
        return any(abutment.end == end for _, abutment in self.abuts)

    @property
    def end_path(self) -> KeyPath:
        """Where the plan has the wall that ends on the right."""
        return self.last[0] if self.last else self.path

    @property
    def name(self) -> str | None:
        """What the sheets call the wall: the names of all its parts; None where it has none."""
        return " and ".join(name for name, _ in self.parts) if self.parts else self.table.name

    def finish(self) -> Wall:
        """The wall for the job. Only of a wall in which nothing was wrong: raises ValueError otherwise."""
        highest = self.highest
        if self.length is None or highest is None or self.name is None:
            raise ValueError("a wall with mistakes cannot be finished")
        return Wall(
            name=self.name, length=self.length, height=highest, left_end=self.left, right_end=self.right,
            control_joints=tuple(sorted(centre for _, centre in self.control_joints)),
            bond_beams=self.bond_beams, openings=tuple(opening for _, opening in self.openings), parts=self.parts,
            outline=self.outline, abuts=tuple(abutment for _, abutment in self.abuts), laid_with=self.laid_with,
            piers=tuple(sorted((pier for _, pier in self.piers), key=lambda pier: pier.left)),
        )


def read_wall(table: WallTable, path: KeyPath, masonry: Masonry | None, sizes: Sizes, notebook: Notebook) -> ReadWall:
    """Read one wall. ``masonry`` is None where the unit is not known; what hangs on it is then left alone."""
    joint = masonry.joint if masonry is not None and sizes == "nominal" else 0
    length = notebook.read((*path, "length"), table.length, least=1)
    # On the module a wall counts a joint with every piece: one too many between free or outside ends, none between an
    # outside and an inside corner, where the first joint stands against the other wall's face; so it does in a T. A wall
    # that goes straight on keeps the joint after its last piece.
    given = {one.end or "left" for one in table.abuts or ()}
    inside = [end == "inside corner" or side in given for end, side in ((table.left, "left"), (table.right, "right"))]
    spare, shift = joint * (1 - sum(inside) - (table.right == "straight")), joint if inside[0] else 0
    height = _read_height(table, path, masonry, notebook)
    outline = read_outline(table, path, None if length is None else length - spare, joint, shift, notebook)
    courses = None if masonry is None or height is None else count_courses(_find_highest(height, outline), masonry)
    openings = [
        ((*path, "opening", number), read_opening(opening, (*path, "opening", number), masonry, joint, notebook, shift))
        for number, opening in enumerate(table.opening or ())]
    abuts = [((*path, "abuts", number), read_abutment(one, (*path, "abuts", number), masonry, notebook))
             for number, one in enumerate(table.abuts or ())]
    centres = [((*path, "control_joints", number), notebook.read((*path, "control_joints", number), distance))
               for number, distance in enumerate(table.control_joints or ())]
    return ReadWall(
        path=path, table=table, length=None if length is None else length - spare, height=height, courses=courses,
        control_joints=tuple((where, centre - joint // 2 + shift) for where, centre in centres if centre is not None),
        bond_beams=_read_bond_beams(table.bond_beams or (), path, courses, notebook),
        openings=tuple((where, opening) for where, opening in openings if opening is not None), read_outline=outline,
        abuts=tuple((where, abutment) for where, abutment in abuts if abutment is not None),
        piers=_read_piers(table, path, masonry, (joint, shift), notebook),
    )


def _read_piers(table: WallTable, path: KeyPath, masonry: Masonry | None, nominal: tuple[int, int],
                notebook: Notebook) -> tuple[tuple[KeyPath, Pier], ...]:
    """The wall's piers that are wider or thicker than it. ``nominal``: the joint that sizes count, and distances."""
    joint, shift = nominal
    found = []
    for number, one in enumerate(table.pier or ()):
        where: KeyPath = (*path, "pier", number)
        if is_built(one) and (pier := read_built_pier(one, where, table.name, masonry, joint, notebook)) is not None:
            found.append((where, replace(pier, left=pier.left + shift)))
    return tuple(found)


def _find_highest(height: int, outline: ReadOutline) -> int:
    """The highest level top, gables left aside: it is what the courses close."""
    highest = reached = height
    for step in in_order(outline.top_steps):
        reached += step.rise
        highest = max(highest, reached)
    return highest


def _read_height(table: WallTable, path: KeyPath, masonry: Masonry | None, notebook: Notebook) -> int | None:
    height = notebook.read((*path, "height"), table.height, least=1)
    rise = None if table.courses is None else _read_courses(table.courses, path, masonry, notebook)
    if masonry is None:
        return height
    if height is not None and height < least_height(masonry.unit):
        notebook.note((*path, "height"), f"{notebook.show(height)} is lower than one course can be ripped; "
                      f"write at least {notebook.show_least(least_height(masonry.unit))} ({say_bare(notebook.measure)})")
        return None
    if height is not None and rise is not None:
        _refuse_disagreement(height, rise, table.courses or 0, path, masonry, notebook)
    return rise if height is None else height


def _refuse_disagreement(
    height: int, rise: int, courses: int, path: KeyPath, masonry: Masonry, notebook: Notebook,
) -> None:
    laid = count_courses(height, masonry)
    if laid == courses and beds_close(height, courses, masonry):
        return
    more, way = abs(height - rise), "more" if height > rise else "less"
    instead = f", or write courses = {laid}" if laid != courses else ""
    notebook.note((*path, "courses"), f"{courses} courses are {notebook.show(rise)} high, the height is "
                  f"{notebook.show(height)}: {notebook.show(more)} {way}, which the beds cannot take; leave out one "
                  f"of the two{instead}")


def _read_courses(courses: int, path: KeyPath, masonry: Masonry | None, notebook: Notebook) -> int | None:
    if not 1 <= courses <= MOST_COURSES:
        notebook.note((*path, "courses"),
                      f"{print_found(courses)} is not a number of courses from 1 to {MOST_COURSES:,}; write courses = 13")
        return None
    if masonry is None:
        return None
    rise = masonry.unit.height_of_courses(courses)
    if rise > LONGEST:
        notebook.note((*path, "courses"), f"{courses} courses rise over 3,000 m; write fewer")
        return None
    return rise


def _read_bond_beams(given: Iterable[object], path: KeyPath, courses: int | None, notebook: Notebook) -> tuple[int, ...]:
    """Course numbers, sorted; a course that is wrong is noted and left out."""
    beams: set[int] = set()
    for number, asked in enumerate(given):
        where = (*path, "bond_beams", number)
        top = isinstance(asked, str) and asked.strip().casefold() == "top"
        course = courses if top else asked
        if top and courses is None:
            continue
        if isinstance(course, bool) or not isinstance(course, int) or course < 1:
            notebook.note(where, f'{print_found(asked)} is not a course; write a number from 1, or "top"')
        elif courses is not None and course > courses:
            notebook.note(where, f"course {print_found(course)} is over the last, which is {courses}; "
                          'write a lower number, or "top"')
        elif course in beams:
            notebook.note(where, f"course {course} is given twice; keep one")
        else:
            beams.add(course)
    return tuple(sorted(beams))
