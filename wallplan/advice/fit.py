"""The fit report: which sizes of a plan stand on the module, by how much the others are off, and what a mason would do.

Lengths of masonry are to be a multiple of the bond's step less a joint, openings a multiple and a joint (BDA's coordinating
sizes CO- and CO+); levels are to be course lines. A joint that opens or closes by 1/16 in. (1.5 mm) goes unnoticed, one by
1/8 in. (3 mm) is noticed, more breaks a rule: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from wallplan.advice.bays import bond_halves, find_bays
from wallplan.advice.names import name_edge
from wallplan.advice.one_brick import list_fitting, list_open
from wallplan.advice.spans import bond_step, find_lengths
from wallplan.layout.outline import set_rows
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.coursing import bed_range
from wallplan.plan.job import Job, Masonry, Wall

Taken = Literal["fits", "unnoticed", "noticed", "broken"]
What = Literal["length", "pier", "bay", "width", "sill", "head", "height"]

TICKS_OF_ROUNDING = 2


@dataclass(frozen=True)
class Size:
    """One size of a wall, in ticks: how far it is over the nearest that fits (under it where negative), how many joints
    would share that, and whether they can. ``odd`` is True where it is an odd number of the bond's steps: the
    ends differ. ``others`` are sizes near it that fit in a bond with headers, each with whether both its ends are alike.
    """

    wall: str
    what: What
    name: str
    size: int
    off: int
    joints: int
    taken: Taken
    odd: bool = False
    others: tuple[tuple[int, bool], ...] = ()

    @property
    def fitting(self) -> int:
        """The nearest size that fits."""
        return self.size - self.off

    @property
    def joint_change(self) -> int:
        """How much each joint opens (or closes, where negative) to take the difference; 0 where there are none."""
        return self.off // self.joints if self.joints else 0


def measure_fit(job: Job) -> tuple[Size, ...]:
    """Every length, pier, bay between piers, width, sill, head and height of a job, wall by wall in the plan's order.

    What ends at a corner is left out: which length fits there hangs on the wall that it meets; in bonds with headers it does
    not, and whole walls are told too.
    """
    return tuple(size for wall in job.walls for size in _measure_wall(wall, job))


def _measure_wall(wall: Wall, job: Job) -> Iterator[Size]:
    step, joint = bond_step(job.masonry), job.masonry.joint
    met = {("left end", 0): wall.left_end != "end", ("right end", 0): wall.right_end != "end"}
    if job.masonry.one_brick:
        # Behind an inside corner a wall goes on as far as it is thick: the bond begins at its quoin.
        behind = job.masonry.thickness * (wall.left_end, wall.right_end).count("inside corner")
        yield _along(job, wall, "length", wall.name, (wall.length, joint + behind, step))
    elif not any(met.values()):
        yield _along(job, wall, "length", wall.name, (wall.length, joint, step))
    for bay in find_bays(wall):
        yield _along(job, wall, "bay", bay.name, (bay.size, (1 - bay.sides) * joint, bond_halves(job.masonry)))
    for opening in wall.openings:
        yield _along(job, wall, "width", opening.name, (opening.right - opening.left, -joint, step))
        if opening.bottom:
            yield _upright(job, wall, "sill", opening.name, opening.bottom)
        if opening.top < wall.height:
            yield _upright(job, wall, "head", opening.name, opening.top)
    for length in find_lengths(wall, job.masonry):
        passed = any(length.left < pier.right and pier.left < length.right for pier in wall.piers)
        if length.size < wall.length and not passed and not met.get(length.left_edge) and not met.get(length.right_edge):
            name = f"{name_edge(wall, length.left_edge)} to {name_edge(wall, length.right_edge)}"
            yield _along(job, wall, "pier", name, (length.size, joint, step))
    yield _upright(job, wall, "height", wall.name, wall.outline.coursed if wall.outline else wall.height)


def _along(job: Job, wall: Wall, what: What, name: str, size: tuple[int, int, int]) -> Size:
    ticks, joint, step = size
    if job.masonry.one_brick:
        return _along_headers(job, wall, what, name, (ticks, joint))
    off = _over(ticks + joint, step)
    masonry = job.masonry
    units = -(-(ticks + joint - off) // masonry.module)
    joints = units if what in ("width", "bay") else max(0, units - 1)
    taken = _grade(off, joints, job, (masonry.tightest_joint - masonry.joint, masonry.widest_joint - masonry.joint))
    return Size(wall.name, what, name, ticks, off, joints, taken, odd=(ticks + joint - off) // step % 2 == 1)


def _along_headers(job: Job, wall: Wall, what: What, name: str, size: tuple[int, int]) -> Size:
    """A size in a bond with headers: against what keeps the bond, ends alike, and fitting too with ends in turn."""
    masonry, (ticks, joint) = job.masonry, size
    nominal = ticks + joint
    if what == "width":
        fitting = [(length, True) for length in list_open(masonry, nominal)]
    else:
        fitting = [(length, alike) for alike in (True, False) for length in list_fitting(masonry, nominal, alike=alike)]
    near = next((length for length, _ in fitting if abs(length - nominal) <= TICKS_OF_ROUNDING), fitting[0][0])
    off = 0 if abs(nominal - near) <= TICKS_OF_ROUNDING else nominal - near
    joints = max(0, near // masonry.module - (what != "width"))
    spare = max(0, masonry.module // 4 - masonry.least_lap)
    room = max(masonry.tightest_joint - masonry.joint, -spare), min(masonry.widest_joint - masonry.joint, spare)
    taken = _grade(off, joints, job, room) if abs(off) <= masonry.module // 4 or not off else "broken"
    return Size(wall.name, what, name, ticks, off, joints, taken, others=tuple(
        (length - joint, alike) for length, alike in fitting))


def _over(nominal: int, step: int) -> int:
    """Ticks over the nearest multiple of a step, negative where under it; the rounding of thirds counts as nought."""
    over = (nominal + step // 2) % step - step // 2
    return 0 if abs(over) <= TICKS_OF_ROUNDING else over


def _upright(job: Job, wall: Wall, what: What, name: str, level: int) -> Size:
    unit, rows = job.masonry.unit, set_rows(wall, job.masonry)
    count = max(1, round(level / unit.gauge))
    lines = [unit.height_of_courses(number) for number in ((count - 1, count) if unit.half_high else (count,))]
    if what != "height" and rows and rows[0].kind != "regular":
        lines = [row.top for row in rows]  # a first course that is lower moves all that is above it
    off = min((level - line for line in lines if line), key=abs)
    if unit.half_high and any(
            abs(level - line - unit.bed_joint - unit.half_high) <= TICKS_OF_ROUNDING for line in lines):
        off = 0
    low, high = bed_range(job.masonry)
    off = 0 if abs(off) <= TICKS_OF_ROUNDING else off
    taken = _grade(off, min(count, len(rows)), job, (low - unit.bed_joint, high - unit.bed_joint))
    return Size(wall.name, what, name, level, off, min(count, len(rows)), taken)


def _grade(off: int, joints: int, job: Job, room: tuple[int, int]) -> Taken:
    if not off:
        return "fits"
    unnoticed, noticed = noticed_from(job)
    low, high = room
    if not joints or not low * joints <= off <= high * joints or abs(off) > noticed * joints:
        return "broken"
    return "unnoticed" if abs(off) <= unnoticed * joints else "noticed"


def noticed_from(job: Job) -> tuple[int, int]:
    """How far a joint may be off before it is noticed, and before it counts as poor work; ticks."""
    feet = job.measure == "feet"
    step = TICKS_PER_INCH // 16 if feet else TICKS_PER_MM * 3 // 2
    return step, 2 * step


def shared_joint(masonry: Masonry, size: Size) -> int:
    """The joint that would take the difference, in ticks."""
    aimed = masonry.unit.bed_joint if size.what in ("sill", "head", "height") else masonry.joint
    return aimed + size.joint_change
