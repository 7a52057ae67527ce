"""How far each letter of DejaVu Sans advances, in 1/2048 of the font size: the font's own table (DejaVu Fonts 2.37).

Kept here so that a sheet can be measured without opening the font; a test holds the figures to the font's file.
"""

from __future__ import annotations

UNITS = 2048
"""Units in the font size."""

CAPITALS = 1493
"""Height of the capitals, in units."""

_PRINTABLE = (
    651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690, 1303, 1303, 1303, 1303,
    1303, 1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087, 2048, 1401, 1405, 1430, 1577, 1294, 1178,
    1587, 1540, 604, 604, 1343, 1141, 1767, 1532, 1612, 1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251,
    1403, 799, 690, 799, 1716, 1024, 1024, 1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995,
    1298, 1253, 1300, 1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716,
)
_LATIN = (
    651, 821, 1303, 1303, 1303, 1303, 690, 1024, 1024, 2048, 965, 1253, 1716, 739, 2048, 1024, 1024, 1716, 821, 821,
    1024, 1303, 1303, 651, 1024, 821, 965, 1253, 1985, 1985, 1985, 1087, 1401, 1401, 1401, 1401, 1401, 1401, 1995,
    1430, 1294, 1294, 1294, 1294, 604, 604, 604, 604, 1587, 1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612, 1499,
    1499, 1499, 1499, 1251, 1239, 1290, 1255, 1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260, 569,
    569, 569, 569, 1253, 1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300, 1212,
)
_OTHERS = {
    "–": 1024, "—": 2048, "‘": 651, "’": 651, "“": 1061, "”": 1061, "…": 2048, "′": 465, "″": 765, "⅓": 1985,
    "⅔": 1985, "⅛": 1985, "⅜": 1985, "⅝": 1985, "⅞": 1985, "•": 1208, "Œ": 2191, "œ": 2095, "Š": 1300, "š": 1067,
    "Ž": 1403, "ž": 1075, "Ÿ": 1251, "€": 1303,
}

ADVANCES: dict[str, int] = {
    **{chr(32 + place): advance for place, advance in enumerate(_PRINTABLE)},
    **{chr(160 + place): advance for place, advance in enumerate(_LATIN)},
    **_OTHERS,
}
"""Advance of each letter, in units."""

UNMEASURED = 1767
"""Advance taken for any other letter: that of M, which few letters pass."""

_RANGES = (
    (0x20, 0x7E), (0xA1, 0xAC), (0xAE, 0x24F), (0x370, 0x377), (0x37A, 0x37E), (0x384, 0x38A), (0x38C, 0x38C),
    (0x38E, 0x3A1), (0x3A3, 0x525), (0x531, 0x556), (0x559, 0x55F), (0x561, 0x587), (0x589, 0x58A), (0x10A0, 0x10C5),
    (0x10D0, 0x10FC), (0x1E00, 0x1EFB), (0x1F00, 0x1F15), (0x1F18, 0x1F1D), (0x1F20, 0x1F45), (0x1F48, 0x1F4D),
    (0x1F50, 0x1F57), (0x1F5F, 0x1F7D), (0x1F80, 0x1FB4), (0x1FB6, 0x1FC4), (0x1FC6, 0x1FD3), (0x1FD6, 0x1FDB),
    (0x1FDD, 0x1FEF), (0x1FF2, 0x1FF4), (0x1FF6, 0x1FFE), (0x2010, 0x2027), (0x2030, 0x205E), (0x20A0, 0x20B5),
    (0x2100, 0x2109), (0x210B, 0x2149), (0x2150, 0x2185), (0x2190, 0x22FF), (0x25A0, 0x25FF),
)
"""Letters of Latin, Greek, Cyrillic, Armenian and Georgian that the font has, and signs: what is read from left to right,
letter beside letter."""


def has_letter(letter: str) -> bool:
    """Whether a letter can be drawn: the font has it, and it stands by itself."""
    return letter in ADVANCES or any(first <= ord(letter) <= last for first, last in _RANGES)
