"""A pencil: works out every sum that a line's why gives, knowing nothing of walls."""

from __future__ import annotations

import re
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from fractions import Fraction

_WORDS = re.compile(r"[A-Za-z%'\"]{2,}|\ba\b|%")
_RESULT = re.compile(r"\s*(\d+(?:\.\d+)?)[^,;]*(?:, up to (\d+(?:\.\d+)?))?")


def work_out(text: str) -> Fraction:
    """The value of ``3 x (4 + 1.5) / 2``: x and / before + and -, left to right. Words between figures are passed over."""
    plain = _WORDS.sub(" ", text.rsplit(":", 1)[-1]).replace(",", " ")
    tokens = re.findall(r"\d+(?:\.\d+)?|[-+x/()]", plain)
    value, rest = _add(tokens)
    assert rest == [], f"no sum: {text!r}"
    return value


def _add(tokens: list[str]) -> tuple[Fraction, list[str]]:
    value, rest = _multiply(tokens)
    while rest and rest[0] in "+-":
        sign = rest[0]
        more, rest = _multiply(rest[1:])
        value = value + more if sign == "+" else value - more
    return value, rest


def _multiply(tokens: list[str]) -> tuple[Fraction, list[str]]:
    value, rest = _take(tokens)
    while rest and rest[0] in "x/":
        sign = rest[0]
        more, rest = _take(rest[1:])
        value = value * more if sign == "x" else value / more
    return value, rest


def _take(tokens: list[str]) -> tuple[Fraction, list[str]]:
    if tokens[0] == "(":
        value, rest = _add(tokens[1:])
        assert rest[0] == ")"
        return value, rest[1:]
    return Fraction(tokens[0]), tokens[1:]


def follow(why: str) -> set[Fraction]:
    """Every figure that the sums of a why come to. Asserts that each comes to what is printed, to its last digit."""
    reached: set[Fraction] = set()
    for clause in why.split(";"):
        if "=" not in clause:
            continue
        sum_text, result_text = clause.split("=", 1)
        found = _RESULT.match(result_text)
        assert found, clause
        printed, exact = Decimal(found[1]), work_out(sum_text)
        digit = Decimal(1).scaleb(int(printed.as_tuple().exponent))
        assert abs(exact - Fraction(printed)) <= Fraction(digit) / 2, clause
        reached.add(Fraction(found[1]))
        if found[2]:
            up = Decimal(found[2])
            step = Decimal(1).scaleb(min(0, int(up.as_tuple().exponent)))
            assert up == printed.quantize(step, ROUND_CEILING) or up - printed < step, clause
            reached.add(Fraction(found[2]))
    return reached


def round_half_up(value: Fraction, places: int) -> Fraction:
    """A figure to so many decimals, as a pencil rounds."""
    exact = Decimal(value.numerator) / Decimal(value.denominator)
    return Fraction(exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP))
