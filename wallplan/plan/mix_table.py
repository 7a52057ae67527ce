"""``[order.mix]`` and ``[order.cap]`` read and checked."""

from __future__ import annotations

import difflib
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from wallplan.plan.found import print_found, print_number
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.order_wishes import CapWish, Mix

if TYPE_CHECKING:
    from wallplan.plan.order_schema import CapTable, MixTable

PARTS = ("cement", "lime", "masonry_cement", "lime_putty", "fire_clay", "sand")
BINDERS = PARTS[:4]

_MIX: KeyPath = ("order", "mix")
_CAP: KeyPath = ("order", "cap")
_MOST = 1_000_000


def read_mix(table: MixTable, notebook: Notebook) -> Mix:
    """The mix; the usual one where something is wrong, which is noted."""
    if any(wrong.path[:2] == _MIX for wrong in notebook.wrongs):
        return Mix()  # what is left out as wrong is not missed a second time
    parts: dict[str, float | None] = {key: getattr(table, key) for key in PARTS}
    for key, part in parts.items():
        if part is not None and not 0 <= part <= _MOST:
            notebook.note((*_MIX, key), f"{print_number(part)} parts; write 0 to {_MOST:,}")
            return Mix()
    if not any(parts[key] for key in BINDERS):
        notebook.note((*_MIX, "cement"), "nothing that binds the sand; write cement, lime, lime_putty or masonry_cement")
        return Mix()
    if not table.sand:
        if table.sand is not None:
            notebook.note((*_MIX, "sand"), "nothing; write the parts of sand, sand = 12")
        return Mix()
    return Mix(**{key: Fraction(str(part or 0)) for key, part in parts.items()}, bags=bool(table.bags))


def read_cap(table: CapTable, walls: Sequence[str], notebook: Notebook) -> CapWish | None:
    """The caps, None where something is wrong, which is noted. ``walls`` are the names of the plan's walls.

    A joint that is not given is -1: the wall's head joint, which is known later.
    """
    length = notebook.read((*_CAP, "length"), table.length, least=1)
    joint = notebook.read((*_CAP, "joint"), table.joint)
    overhang = notebook.read((*_CAP, "overhang"), table.overhang)
    for number, name in enumerate(table.walls or ()):
        if name not in walls:
            near = difflib.get_close_matches(name, walls, 1) or list(walls)[:1]
            hint = f'; write "{near[0]}"' if near else ""
            notebook.note((*_CAP, "walls", number), f"{print_found(name)} is no wall of this plan{hint}")
    if table.name is not None and not (table.name.strip() and table.name.isprintable() and len(table.name) <= 80):
        notebook.note((*_CAP, "name"), f'{print_found(table.name)} is not a name of 1 to 80 letters; write name = "coping"')
    if length is None:
        return None
    return CapWish(table.name or "cap", length, -1 if joint is None else joint, overhang or 0, tuple(table.walls or ()))
