"""Texts that are no lengths, as the lengths that they were likely meant to be: what to write in place of them."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

_LONGEST = 60
_MARKS = str.maketrans({"´": "'", "`": "'", "ʹ": "'", "ʼ": "'", "‵": "'", "ʺ": '"', "−": "-", "‑": "-", "—": "-"})
_REWRITES = tuple((re.compile(pattern), instead) for pattern, instead in (
    (r"^(?:about|approx\.?|ca\.?|circa|[~≈+±])\s*", ""),
    (r"\s*(?:[(#].*|\b(?:wide|long|high|tall|deep|nominal|actual|o/?a|overall))$", ""),
    (r"milli(?:meter|metre)s?\b", "mm"), (r"centi(?:meter|metre)s?\b", "cm"), (r"(?<![a-z])(?:meter|metre)s?\b", "m"),
    (r"\s+(?:and|&|\+)\s+", " "), (r"\s*/\s*", "/"), (r"(?<=\d)o|\bo(?=['\d])", "0"), (r"(?<![a-z])l(?=\d)|(?<=\d)l\b", "1"),
    (r"^(\d+)\s*m\s+(\d\d)(?:\s*cm)?$", r"\1.\2 m"), (r"^(\d+)\s*m\s+(\d\d\d)(?:\s*mm)?$", r"\1.\2 m"),
    (r"^(\d+)\s*km$", r"\g<1>000 m"), (r"^(\d+'\s*\d+)'$", r"\1"),
))
_FRACTION = re.compile(r"(\d)([¼½¾⅐-⅞])")
_GROUPED = re.compile(r"^(\d{1,3})(?:[ .](\d{3}))+(?:,(\d+))?( ?(?:mm|cm|m))?$")
_YARDS = re.compile(r"^(\d+)\s*(?:yd|yds|yard|yards)\.?$")
_FEET_FRACTION = re.compile(r"^(?:(\d+)[ -])?\s*(\d+)/(\d+)\s*(?:'|ft\.?|feet|foot)$")
_TWO_NUMBERS = re.compile(r"^(\d+)\s*[- :]\s*(\d+(?: \d+/\d+)?)$")


def guess_lengths(text: str, measure: str) -> Iterator[tuple[str, str]]:
    """Texts that may have been meant by one that is no length, the likeliest first, each with words to go before it ("" for
    none). They need not be lengths. ``measure`` is "feet" or "metric". A text of over 60 letters gives none.
    """
    if len(text) > _LONGEST:
        return
    parted = _FRACTION.sub(r"\1 \2", text.translate(_MARKS))
    seen = "".join(letter for letter in unicodedata.normalize("NFKC", parted) if unicodedata.category(letter) != "Cf")
    plain = " ".join(seen.replace("⁄", "/").lower().split())
    for pattern, instead in _REWRITES:
        plain = pattern.sub(instead, plain)
    if measure == "metric" and (found := _GROUPED.match(plain)):
        whole = re.sub(r"[ .](?=\d{3})", "", plain.partition(",")[0])
        yield "", whole if found[3] is None else f"{whole}.{found[3]}{found[4] or ''}"
    if found := _YARDS.match(plain):
        yield "", f"{3 * int(found[1])}'"
    if (found := _FEET_FRACTION.match(plain)) and int(found[3]):
        inches, rest = divmod(12 * int(found[2]), int(found[3]))
        part = f" {rest}/{found[3]}" if rest else ""
        yield "", f"{found[1] or 0}' {inches}{part}"
    if measure == "feet" and (found := _TWO_NUMBERS.match(plain)):
        yield "feet and inches as ", f"{found[1]}' {found[2]}"
    yield "", plain
