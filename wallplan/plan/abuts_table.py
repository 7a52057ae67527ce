"""``[[wall.abuts]]`` read into ticks."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.plan.job import Abutment, Masonry
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.abuts_schema import AbutsTable


def read_abutment(table: AbutsTable, path: KeyPath, masonry: Masonry | None, notebook: Notebook) -> Abutment | None:
    """One abutting end, or None where something of it is missing or wrong. ``at`` is as the plan gives it."""
    at = notebook.read((*path, "at"), table.at)
    spacing = notebook.read((*path, "strap_spacing"), table.strap_spacing, least=1)
    tie = table.tie or "interlocked"
    if tie == "straps" and table.strap_spacing is None:
        notebook.note((*path, "strap_spacing"), "missing; straps are spaced by whoever answers for the structure: ask, then "
                      "write strap_spacing = \"2' 8\"")
    elif tie != "straps" and table.strap_spacing is not None and not notebook.knows((*path, "tie")):
        notebook.note((*path, "strap_spacing"), 'has no meaning without straps; leave it out, or write tie = "straps"')
    elif spacing is not None and masonry is not None and spacing < masonry.unit.gauge:
        notebook.note((*path, "strap_spacing"), f"{notebook.show(spacing)} is less than a course; straps lie in beds: write "
                      f"at least {notebook.show_least(masonry.unit.gauge)}")
    if table.meets is None or at is None or (tie == "straps" and spacing is None):
        return None
    return Abutment(table.end or "left", table.meets, at, (table.face or "inside") == "inside", tie, spacing)
