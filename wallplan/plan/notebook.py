"""The notebook: each thing found wrong with a plan, by the path of its key, and the reading of lengths into it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, LengthError, Measure, print_length, print_size, read_length

KeyPath = tuple[str | int, ...]
"""Where a value stands in a plan: ("wall", 0, "opening", 1, "width"). Lists count from nought."""


@dataclass(frozen=True)
class Wrong:
    """One thing wrong: the key's path and the message, without the key's name."""

    path: KeyPath
    message: str


class Notebook:
    """Collects what is wrong while a plan that measures in ``measure`` is read; begins with what is known already."""

    def __init__(self, measure: Measure, known: Iterable[Wrong] = ()) -> None:
        self.measure: Measure = measure
        self.wrongs: list[Wrong] = list(known)
        self._noted = set(self.wrongs)

    def note(self, path: KeyPath, message: str) -> None:
        """Write down one thing that is wrong; what is noted in the same words already, as of a thing that stands near two
        others, is not noted again."""
        wrong = Wrong(path, message)
        if wrong not in self._noted:
            self._noted.add(wrong)
            self.wrongs.append(wrong)

    def knows(self, *paths: KeyPath) -> bool:
        """Whether something is told of one of these keys already."""
        return any(wrong.path in paths for wrong in self.wrongs)

    def read(self, path: KeyPath, value: object, *, least: int = 0) -> int | None:
        """A length in ticks. None where it is not given, or is wrong or under ``least`` ticks, which is noted."""
        if value is None:
            return None
        try:
            ticks = read_length(value, self.measure)
        except LengthError as error:
            self.note(path, str(error))
            return None
        if ticks < least:
            self.note(path, f"{self.show(ticks)} is nothing; write a length of more than nothing")
            return None
        return ticks

    def show(self, ticks: int) -> str:
        """A length as the plan measures it, for a message."""
        text = print_length(ticks, self.measure)
        return f"{text} mm" if self.measure == "metric" else text

    def show_size(self, ticks: int) -> str:
        """The size of a piece or joint, for a message."""
        return print_size(ticks, self.measure)

    def show_most(self, ticks: int) -> str:
        """A size that may not be passed, rounded down: what is shown is allowed if it is written."""
        return self.show(ticks - ticks % self.step)

    def show_least(self, ticks: int) -> str:
        """A size that must be reached, rounded up: what is shown is allowed if it is written."""
        return self.show(ticks + -ticks % self.step)

    @property
    def step(self) -> int:
        """The step in which lengths are printed."""
        return TICKS_PER_INCH // 16 if self.measure == "feet" else TICKS_PER_MM
