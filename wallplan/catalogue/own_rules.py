"""What a plan's own unit must hold to: every mistake in its definition, a line each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from wallplan.lengths import Measure, print_size

Measured = int | tuple[int, ...]
"""A specified size in ticks, or the sizes of several units as measured."""

SHAPES = ("stretcher", "corner", "sash", "bond beam", "lintel")
"""The shapes that a unit may be listed in."""

_SCATTER = Fraction(6, 5)
"""Measurements of one size further apart than this are a slip of the rule or the pen (common practice, no source):
bricks that vary 5/32 in either way from 2 1/4 in stay inside it."""

Mistakes = tuple[tuple[str, str], ...]
"""Each mistake as (field, what was found and what is allowed)."""

_UNDER = (
    ("joint", "height"), ("joint", "length"), ("height", "gauge"), ("half_high", "height"),
    ("quarter", "half"), ("half", "three_quarter"),
    ("quarter", "length"), ("half", "length"), ("three_quarter", "length"), ("ell_return", "length"),
)
_AT_MOST = (("tightest_joint", "joint"), ("joint", "widest_joint"))


class OwnUnitError(ValueError):
    """A plan's own unit that cannot be; ``mistakes`` holds every mistake, and the text a line for each."""

    def __init__(self, mistakes: Mistakes) -> None:
        super().__init__("\n".join(f"{field}: {text}" for field, text in mistakes))
        self.mistakes = mistakes


def mean_of(measured: Measured) -> int:
    """The mean of the measurements, exact and then rounded to the nearest tick. None at all raises OwnUnitError."""
    if isinstance(measured, int):
        return measured
    if not measured:
        raise OwnUnitError((("measured", "no measurement; measure at least one unit, better ten"),))
    return round(Fraction(sum(measured), len(measured)))


def find_size_mistakes(sizes: Mapping[str, Measured | Fraction | None], measure: Measure) -> Mistakes:
    """Each size that is nothing, scattered, or at odds with another. Sizes in ticks; None is not given.

    A size that is wrong in itself is not held against the others. No sizes give no mistakes.
    """
    alone = {field: text for field, size in sizes.items() if (text := _wrong_alone(size, measure))}
    sound = {
        field: Fraction(mean_of(size)) if isinstance(size, tuple) else Fraction(size)
        for field, size in sizes.items() if size is not None and field not in alone
    }
    return (*alone.items(), *_wrong_together(sound, measure))


def _wrong_alone(size: Measured | Fraction | None, measure: Measure) -> str | None:
    if size is None:
        return None
    every = size if isinstance(size, tuple) else (size,)
    if not every:
        return "no measurement; measure at least one unit, better ten"
    least, most = min(every), max(every)
    if least <= 0:
        return "must be more than nothing"
    if most > least * _SCATTER:
        found = f"{print_size(round(least), measure)} and {print_size(round(most), measure)}"
        return f"measurements of {found} are more than a fifth apart; measure again"
    return None


def _wrong_together(sound: Mapping[str, Fraction], measure: Measure) -> Iterator[tuple[str, str]]:
    for pairs, must in ((_UNDER, "must be under"), (_AT_MOST, "must be no more than")):
        for small, large in pairs:
            if small not in sound or large not in sound:
                continue
            if sound[small] > sound[large] or (must == "must be under" and sound[small] == sound[large]):
                yield small, f"{_shown(sound[small], measure)} {must} {_named(large, sound, measure)}"


def _named(field: str, sound: Mapping[str, Fraction], measure: Measure) -> str:
    return f"{field}, which is {_shown(sound[field], measure)}"


def _shown(size: Fraction, measure: Measure) -> str:
    return print_size(round(size), measure)


def find_count_mistakes(courses: int, leads: int | None, shapes: tuple[str, ...] | None) -> Iterator[tuple[str, str]]:
    """Counts under one and shapes that are not in SHAPES, as (field, text). None is not given."""
    if courses < 1:
        yield "gauge", f"{courses} courses have no height; write at least 1 course"
    if leads is not None and leads < 1:
        yield "leads", f"{leads} is too few courses for a lead; write at least 1"
    for shape in shapes or ():
        if shape not in SHAPES:
            yield "shapes", f'"{shape}" is not a shape; write {", ".join(SHAPES)}'
