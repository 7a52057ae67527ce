"""A reason: what kind it is, the words, and the figures in them."""

from __future__ import annotations

from typing import Literal, NamedTuple

ReasonKind = Literal[
    "return", "precast", "lintel", "bond beam", "sash", "corner unit", "corner L",
    "full", "stock length", "cut", "half-high", "ripped for an opening",
    "ripped for the footing", "raked", "notched", "ripped for the height",
    "a full unit would fall short of the lap", "stock lengths do not fill the run", "plumb with another course",
    "lap", "stack", "joint opened", "joint closed",
    "first course", "begins", "lap of the course", "jambs", "sill", "head", "corner", "control joint", "bond beam course",
    "header", "over a stretcher", "stretcher", "quoin stretcher", "sawn pair", "closer", "without the closer",
    "closer not at the end", "bond does not fill the run", "kinds of the course", "behind the face", "closers of the course",
    "ends alike", "same as",
]


class Reason(NamedTuple):
    """One sentence. ``figures`` are the ticks, counts and course numbers that it tells, in the order of its kind."""

    kind: ReasonKind
    words: str
    figures: tuple[int, ...] = ()
