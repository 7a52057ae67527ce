"""The catalogue as it is read: the families' TOML in, a Unit for each key out."""

from __future__ import annotations

import pkgutil
import re
import tomllib
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Any

from wallplan.catalogue.pieces import half_bat, stock_of
from wallplan.catalogue.unit import Unit
from wallplan.lengths import read_length

FAMILIES = (
    "us_block", "us_brick", "canada_block", "uk_block", "uk_brick", "australia_brick", "germany_brick",
)
"""The families' files under data/, in the order in which the catalogue shows them."""

CUBIC_FOOT_IN_LITRES = Fraction("0.3048") ** 3 * 1000
"""Exact: the foot is 0.3048 m (international yard and pound agreement, 1959)."""

POUND_IN_KG = Fraction("0.45359237")
"""Exact, by the same agreement."""


class UnknownUnit(KeyError):
    """A key that the catalogue does not hold. Its text names the nearest keys, ``nearest`` holds them."""

    def __init__(self, key: str, nearest: tuple[str, ...]) -> None:
        super().__init__(key)
        self.key = key
        self.nearest = nearest

    def __str__(self) -> str:
        """One line: what was asked for and what comes nearest."""
        asked = "".join(letter if letter.isprintable() else "?" for letter in self.key[:60])
        hint = f"nearest: {', '.join(self.nearest)}" if self.nearest else "try block-8 or brick-modular"
        return f'"{asked}" is no unit of the catalogue; {hint}'


@cache
def units() -> Mapping[str, Unit]:
    """Every unit of the catalogue by its key, read-only, families in the order of FAMILIES. Read once."""
    return MappingProxyType({key: unit for family in FAMILIES for key, unit in _units_of(family).items()})


def find_unit(key: str) -> Unit:
    """The unit of a key. Raises UnknownUnit, naming the nearest keys, where the catalogue has none."""
    for family in FAMILIES:  # one after another: a plan in US block need not wait for the other families
        if key in _units_of(family):
            return _units_of(family)[key]
    raise UnknownUnit(key, _nearest(key))


def spell_key(key: str) -> str:
    """A key in the catalogue's letters: it may be written in big ones, and with a blank or ``_`` for the hyphen."""
    return "-".join(key.casefold().replace("-", " ").replace("_", " ").split())


def _nearest(key: str) -> tuple[str, ...]:
    from difflib import get_close_matches  # only a wrong key needs it

    asked = "-".join(re.findall(r"[a-z0-9]+", key[:60].lower())).replace("cmu", "block").removeprefix("concrete-")
    holding = [known for known in units() if asked and (asked in known or asked.removesuffix("size") in known.split("-"))]
    close = get_close_matches(asked, list(units()), n=3, cutoff=0.5)
    return tuple(dict.fromkeys(holding + close))[:3]


@cache
def _units_of(family: str) -> Mapping[str, Unit]:
    return {unit.key: unit for unit in _read_family(family)}


def _read_family(family: str) -> list[Unit]:
    text = pkgutil.get_data("wallplan.catalogue", f"data/{family}.toml")
    if text is None:
        raise FileNotFoundError(f"the catalogue's data/{family}.toml is missing: install wallplan again")
    shared = tomllib.loads(text.decode("utf-8"))
    own = shared.pop("unit")
    return [_build_unit({**shared, **entry, "sources": shared["sources"] + entry.get("sources", [])}) for entry in own]


def _build_unit(entry: Mapping[str, Any]) -> Unit:
    def ticks(name: str) -> int:
        return read_length(entry[name], entry["measure"])

    courses, risen = entry["coursing"][0], read_length(entry["coursing"][1], entry["measure"])
    moulded = "moulded_half" in entry
    half = ticks("moulded_half") if moulded else half_bat(ticks("length"), ticks("joint"))
    return Unit(
        key=entry["key"], name=entry["name"], kind=entry["kind"], country=entry["country"],
        length=ticks("length"), height=ticks("height"), thickness=ticks("thickness"),
        joint=ticks("joint"), tightest_joint=ticks("tightest_joint"), widest_joint=ticks("widest_joint"),
        gauge=round(Fraction(risen, courses)), coursing=(courses, risen),
        pieces=stock_of(ticks("length"), half=half, half_sawn=not moulded),
        half_high=ticks("half_high") if "half_high" in entry else None,
        ell_return=ticks("ell_return") if "ell_return" in entry else None,
        shapes=tuple(entry["shapes"]), leads=entry["leads"], solid=entry["solid"],
        net_litres=_net_litres(entry), mass_kg=_mass_kg(entry), source=" ".join(entry["sources"]),
    )


def _net_litres(entry: Mapping[str, Any]) -> float | None:
    """Mean of the light and the heavy unit's net volume."""
    measured = entry.get("net_cubic_feet")
    if measured is None:
        return None
    mean = sum(Fraction(str(volume)) for volume in measured) / len(measured)
    return round(float(mean * CUBIC_FOOT_IN_LITRES), 3)


def _mass_kg(entry: Mapping[str, Any]) -> tuple[float, float] | None:
    measured = entry.get("mass_pounds")
    if measured is None:
        return None
    low, high = (round(float(Fraction(str(pounds)) * POUND_IN_KG), 2) for pounds in measured)
    return low, high
