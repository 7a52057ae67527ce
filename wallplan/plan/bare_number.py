"""Numbers without a mark that are far too small: feet written for inches, metres or centimetres for millimetres."""

from __future__ import annotations

import re

from wallplan.lengths import LONGEST, Measure

_BARE = re.compile(r"\s*\d+(?:\.\d+)?\s*")
_UNITS: dict[Measure, tuple[tuple[str, int], ...]] = {"feet": (("'", 12),), "metric": ((" cm", 10), (" m", 1000))}


def say_bare(measure: Measure) -> str:
    """How a bare number is read, and how a longer unit is written."""
    return 'a bare number is mm, "3.6 m" is metres' if measure == "metric" else "a bare number is inches, \"12'\" is feet"


def find_meant(written: object, ticks: int, least: int, measure: Measure) -> str | None:
    """A length as it was likely meant: ``written`` is a bare number, read as ``ticks``, and with the next longer unit it
    comes to ``least`` ticks. None where it is no bare number, or no unit does that.
    """
    if isinstance(written, bool) or not isinstance(written, int | float | str) or not _BARE.fullmatch(str(written)):
        return None
    for mark, times in _UNITS[measure]:
        if least <= ticks * times <= LONGEST:
            return f'"{str(written).strip()}{mark}"'
    return None
