"""The ferry landing's kiosk as a plan, and its mistakes once something in it is changed."""

from __future__ import annotations

import pytest

from wallplan.findings import PlanError
from wallplan.plan.load import read_plan

KIOSK = """\
title = "Ferry landing"
measure = "feet"

[masonry]
unit = "block-8"

[[wall]]
name = "Landing side"
length = "20'"
height = "8' 8"

  [[wall.opening]]
  name = "Door"
  from_left = "4'"
  width = "3' 4"
  height = "7' 4"

  [[wall.opening]]
  name = "Window"
  from_left = "10' 8"
  width = "4'"
  sill = "3' 4"
  height = "4'"

[[wall]]
name = "Water side"
length = "12'"
courses = 13
"""

Told = tuple[int | None, str, str]


def changed(old: str, new: str) -> str:
    """The kiosk's text with one passage replaced."""
    assert KIOSK.count(old) == 1, f"{old!r} stands {KIOSK.count(old)} times in the kiosk"
    return KIOSK.replace(old, new)


def mistakes_in(text: str) -> list[Told]:
    """Line, place and message of every mistake that reading the text tells."""
    with pytest.raises(PlanError) as refused:
        read_plan(text, "kiosk.toml")
    for mistake in refused.value.mistakes:
        assert str(mistake).isprintable(), f"not one line: {mistake}"
        assert len(str(mistake)) < 400
    return [(mistake.line, mistake.place, mistake.message) for mistake in refused.value.mistakes]


def marked_line(text: str) -> int:
    """The line, from 1, that the text marks with ``#!``."""
    (line,) = [number for number, line in enumerate(text.split("\n"), start=1) if "#!" in line]
    return line
