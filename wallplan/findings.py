"""Findings: a rule held or broken, where, by how much, whose rule, and what would mend it; and plan errors."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

RuleName = Literal[
    "cover", "joints", "lap", "least piece", "plumb", "openings", "control joints", "coursing", "corners",
    "ties", "in plan", "steps", "headers", "units", "letters",
]


@dataclass(frozen=True)
class Finding:
    """One rule looked at in one wall. A held rule has ``held`` True and ``where`` only names the wall; it may have a remedy.

    ``figure`` and ``limit`` are printed lengths or counts ("3 in" against "4 in"); ``at`` is ticks from the
    wall's left end; ``source`` is the standard or "common practice, no source". ``notice`` is what the wall's sheet tells
    whoever builds it, though the plan rules: what publications ask over it; "" for nothing.
    """

    rule: RuleName
    held: bool
    wall: str
    course: int | None
    at: int | None
    figure: str
    limit: str
    source: str
    remedy: str
    notice: str = ""

    @property
    def where(self) -> str:
        """The place in words, without the distance."""
        return f'wall "{self.wall}"' + (f", course {self.course}" if self.course is not None else "")


@dataclass(frozen=True)
class PlanMistake:
    """One mistake in a plan file: ``message`` names the field, what was found, what is allowed and what to write."""

    file: str
    line: int | None
    place: str
    message: str

    def __str__(self) -> str:
        """``FILE:LINE: wall "North", opening "Door": width: ...`` as one line."""
        head = self.file if self.line is None else f"{self.file}:{self.line}"
        return f"{head}: {self.place}: {self.message}" if self.place else f"{head}: {self.message}"


class NotDrawn(ValueError):
    """A sound plan of which something asked for is not drawn; the text says what, and what to ask for instead."""


class PlanError(ValueError):
    """A plan that cannot be used; ``mistakes`` holds every mistake found, in file order."""

    def __init__(self, mistakes: tuple[PlanMistake, ...]) -> None:
        super().__init__("\n".join(str(mistake) for mistake in mistakes))
        self.mistakes = mistakes
