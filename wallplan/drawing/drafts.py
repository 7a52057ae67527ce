"""Drafts: sheets that are planned but not yet drawn, since a sheet says how many there are in all."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from wallplan.drawing.primitives import Page
from wallplan.drawing.title_block import Sheet


@dataclass(frozen=True)
class Draft:
    """A planned sheet. ``title`` is what the sheet list calls it, ``part`` its number and count among the sheets of that
    title; ``draw`` gives the page once its place in the set is known."""

    title: str
    part: tuple[int, int]
    draw: Callable[[Sheet], Page]


def number_sheets(drafts: Iterable[Draft]) -> tuple[Page, ...]:
    """The sheets drawn, each numbered over all of them; () for none."""
    planned = tuple(drafts)
    return tuple(draft.draw(Sheet(number, len(planned), draft.part)) for number, draft in enumerate(planned, start=1))
