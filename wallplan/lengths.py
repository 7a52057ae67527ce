"""Lengths: whole ticks inside, feet-inches or millimetres at the door.

A tick is 1/960 mm. Ticks hold 1/64 in (381 ticks), a third of an inch (8,128) and a tenth of a
millimetre (96) exactly, so pieces and joints close a run to the last tick.
The inch is exactly 25.4 mm (international yard and pound agreement, 1959).
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from typing import Literal

Measure = Literal["feet", "metric"]

TICKS_PER_MM = 960
TICKS_PER_INCH = 24_384
TICKS_PER_FOOT = 12 * TICKS_PER_INCH
LONGEST = 3_000_000 * TICKS_PER_MM
"""The longest length that is read: 3,000 m."""

_MARKS = str.maketrans(
    {"′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"', "–": "-", "−": "-", "‑": "-", "⁄": "/",
     "\u00a0": " ", "\u202f": " "}
)
_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}

_NUMBER = r"(?:\d+(?:\.\d*)?|\.\d+)"
_INCHES = rf"(?:(?P<whole>\d+)[ -]+(?P<top>\d+)/(?P<low>\d+)|(?P<top2>\d+)/(?P<low2>\d+)|(?P<decimal>{_NUMBER}))"
_INCH_MARK = r"""\s*(?P<inch>"|''|in\.?|inch(?:es)?)"""
_METRIC = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m)")
_FEET = re.compile(
    rf"(?P<feet>{_NUMBER})\s*(?:'(?!')|ft\.?|feet|foot)(?:\s*-?\s*{_INCHES}(?:{_INCH_MARK})?)?"
)
_BARE_INCHES = re.compile(rf"{_INCHES}(?:{_INCH_MARK})?")
_POINTED = re.compile(r"\d\.\d{3},")
_THOUSANDS = re.compile(r"\d,\d{3}(?!\d|\s*c?m\b)")
_METRIC_TICKS = {"mm": TICKS_PER_MM, "cm": 10 * TICKS_PER_MM, "m": 1000 * TICKS_PER_MM}


class LengthError(ValueError):
    """A text that is not a length; the message says what was found and shows one that would do."""


def read_length(value: object, measure: Measure) -> int:
    """Read a length in ticks from a plan's text or number.

    A bare number is inches where ``measure`` is "feet" and millimetres where it is "metric".
    Raises LengthError for anything else, for negatives, NaN, infinities and over 3,000 m.
    """
    ticks = _ticks(value, measure)
    if ticks < 0:
        raise LengthError(f"{_shown(value)} is negative; write it as a positive length, {_example(measure)}")
    if ticks > LONGEST:
        raise LengthError(f"{_shown(value)} is over 3,000 m; write a shorter length, {_example(measure)}")
    return round(ticks)


def _ticks(value: object, measure: Measure) -> Fraction:
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise LengthError(f"{_shown(value)} is not a length; write {_example(measure)}")
    if isinstance(value, str):
        return _ticks_of_text(value, measure)
    if not math.isfinite(value if isinstance(value, float) else 0):
        raise LengthError(f"{_shown(value)} is not a length; write {_example(measure)}")
    exact = Fraction(value) if isinstance(value, int) else Fraction(str(value))
    return exact * (TICKS_PER_INCH if measure == "feet" else TICKS_PER_MM)


def _ticks_of_text(text: str, measure: Measure) -> Fraction:
    plain = text.translate(_MARKS)
    for mark, fraction in _VULGAR.items():
        plain = plain.replace(mark, f" {fraction}")
    plain = plain.strip().lower()
    unsigned = plain.removeprefix("-").lstrip()
    ticks = _ticks_unsigned(unsigned, measure) if len(plain) <= 40 and plain.isascii() else None
    if ticks is None:
        instead = _without_comma(text, measure) or _as_meant(text, measure) or _example(measure)
        raise LengthError(f"{_shown(text)} is not a length; write {instead}")
    return ticks if unsigned == plain else -ticks


def _as_meant(text: str, measure: Measure) -> str | None:
    """What to write for a text that was likely meant as a length, None where none is seen in it."""
    from wallplan.meant_length import guess_lengths  # only a mistake needs it

    for words, guess in guess_lengths(text, measure):
        ticks = _ticks_unsigned(guess, measure) if guess.isascii() else None
        if ticks is not None and ticks <= LONGEST:
            return words + _quoted(guess)
    return None


def _quoted(length: str) -> str:
    """A length as a plan holds it: in double quotes, in single ones with an inch mark, without that mark after feet."""
    return f"'{length}'" if '"' in length and "'" not in length else '"' + length.replace('"', "") + '"'


def _without_comma(written: str, measure: Measure) -> str | None:
    """What to write for a text with one comma: thousands of feet, inches or millimetres, else a point, else nothing for it.

    None where that is no length either.
    """
    text = written.replace(".", "") if _POINTED.search(written) else written
    ways = [("a decimal point, no comma", "."), ("it without the comma", "")]
    for words, mark in reversed(ways) if _THOUSANDS.search(text) else ways:
        meant = text.replace(",", mark)
        if text.count(",") == 1 and _ticks_unsigned(meant.translate(_MARKS).strip().lower(), measure) is not None:
            return f"{words}, {_quoted(meant)}"
    if not re.search(r"\d,\d", text):
        return None
    meant = (_as_meant(text.replace(",", "."), measure) if text.count(",") == 1 else None) or _example(measure)
    return f"a decimal point, no comma, {meant}"


def _ticks_unsigned(plain: str, measure: Measure) -> Fraction | None:
    if found := _METRIC.fullmatch(plain):
        return Fraction(found["number"]) * _METRIC_TICKS[found["unit"]]
    if found := _FEET.fullmatch(plain):
        return Fraction(found["feet"]) * TICKS_PER_FOOT + _inches(found) * TICKS_PER_INCH
    if found := _BARE_INCHES.fullmatch(plain):
        bare_metric = measure == "metric" and not found["inch"]
        return _inches(found) * (TICKS_PER_MM if bare_metric else TICKS_PER_INCH)
    return None


def _inches(found: re.Match[str]) -> Fraction:
    low = found["low"] or found["low2"]
    if low is not None and int(low) == 0:
        raise LengthError(f"{_shown(found.string)} divides by zero; write a fraction such as 5/8")
    if found["whole"]:
        return int(found["whole"]) + Fraction(int(found["top"]), int(found["low"]))
    if found["top2"]:
        return Fraction(int(found["top2"]), int(found["low2"]))
    return Fraction(found["decimal"] or 0)


def _shown(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | dict):
        return "a list" if isinstance(value, list) else "a table"
    if isinstance(value, int) and abs(value) >= 10**60:  # Python refuses to print a number of some thousand digits
        return "a number of over 60 digits"
    text = f'"{value}"' if isinstance(value, str) else str(value)
    text = "".join(c if c.isprintable() else "?" for c in text[:61])
    return text if len(text) <= 60 else text[:57] + "..."


def _example(measure: Measure) -> str:
    return "for example \"12' 4 5/8\" or '7 5/8\"'" if measure == "feet" else 'for example 3600 or "3.6 m"'


def print_length(ticks: int, measure: Measure, *, exact_half: bool = True) -> str:
    """Print ticks as feet-inches to the nearest 1/16 in (``12'-4 5/8"``) or as whole millimetres.

    A metric length that is an exact half millimetre keeps its half (112.5), unless ``exact_half`` is False.
    """
    sign, size = ("-", -ticks) if ticks < 0 else ("", ticks)
    if measure == "metric":
        halves = Fraction(size * 2, TICKS_PER_MM)
        if exact_half and halves.denominator == 1 and halves.numerator % 2:
            return f"{sign}{halves.numerator // 2}.5"
        return f"{sign}{(size + TICKS_PER_MM // 2) // TICKS_PER_MM}"
    sixteenths = (size * 16 + TICKS_PER_INCH // 2) // TICKS_PER_INCH
    feet, rest = divmod(sixteenths, 12 * 16)
    inches = f"0 {_print_sixteenths(rest)}" if feet and 0 < rest < 16 else _print_sixteenths(rest)
    return f"{sign}{feet}'-{inches}" if feet else f"{sign}{inches}"


def _print_sixteenths(sixteenths: int) -> str:
    whole, part = divmod(sixteenths, 16)
    if not part:
        return f'{whole}"'
    fraction = Fraction(part, 16)
    shown = f"{fraction.numerator}/{fraction.denominator}"
    return f'{whole} {shown}"' if whole else f'{shown}"'


def print_inches(ticks: int) -> str:
    """Print ticks as inches to the nearest 1/16 in, without feet (``15 5/8"``)."""
    if ticks < 0:
        return f"-{print_inches(-ticks)}"
    return _print_sixteenths((ticks * 16 + TICKS_PER_INCH // 2) // TICKS_PER_INCH)


def print_size(ticks: int, measure: Measure) -> str:
    """Print the size of a piece or joint: inches without feet, or millimetres with ``mm``."""
    return print_inches(ticks) if measure == "feet" else f"{print_length(ticks, measure)} mm"


def print_joint(ticks: int, measure: Measure) -> str:
    """Print a joint as laid: as ``print_size``, or in decimals where it is off that (``0.402"``, ``9.3 mm``)."""
    inches, tenths = Fraction(ticks * 16, TICKS_PER_INCH), Fraction(ticks * 2, TICKS_PER_MM)
    if abs(inches - round(inches)) * 8 <= 1 if measure == "feet" else abs(tenths - round(tenths)) * 10 <= 1:
        return print_size(ticks, measure)
    return f'{ticks / TICKS_PER_INCH:.3f}"' if measure == "feet" else f"{ticks / TICKS_PER_MM:.1f} mm"


def to_mm(ticks: int) -> float:
    """Ticks as float millimetres, for drawings and JSON."""
    return ticks / TICKS_PER_MM


def to_inches(ticks: int) -> float:
    """Ticks as float inches."""
    return ticks / TICKS_PER_INCH


def from_mm(millimetres: float) -> int:
    """Millimetres as the nearest tick."""
    return round(Fraction(str(millimetres)) * TICKS_PER_MM)


def from_inches(inches: float | Fraction) -> int:
    """Inches as the nearest tick."""
    return round(Fraction(str(inches)) * TICKS_PER_INCH)
