"""docs/sources.md names every source that the program and its checks cite, and every file of checks; and no file that is not."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from wallplan.catalogue.load import FAMILIES

ROOT = Path(__file__).parents[1]
PAGE = (ROOT / "docs" / "sources.md").read_text(encoding="utf-8")
CHECKS = sorted((ROOT / "tests" / "published").glob("test_*.py"))
CITING = sorted(path for pattern in ("*.py", "*.toml") for path in (ROOT / "wallplan").rglob(pattern))

AUTHORITY = re.compile(
    r"NCMA TEK [\w-]+|NAVEDTRA \d+|TMS \d+|DIN \d+|CSA A[\d.]*\d|AS/NZS \d+|EN \d+(?:-\d)?|ASTM [A-Z]\d+|"
    r"BIA Technical Note \w+|29 CFR [\d.]*\d|PCA handbook|LABC|NHBC [\d.]*\d|CCMPA|PD \d+|ISO \d+|ANSI/ASME [A-Z][\d.]*\d|RFC \d+|"
    r"Masonry Magazine,? \w+,? \d+|Knuth and Plass|Gilmore and Gomory|Bertele and Brioschi")
ADDRESS = re.compile(r"https?://[^\s,;)\"'`|]+")


def addresses_in(text: str) -> set[str]:
    """Addresses without the stop or colon that ends their sentence."""
    return {found.rstrip(".:") for found in ADDRESS.findall(text)}


def plain(authority: str) -> str:
    return authority.replace(",", "")


@pytest.mark.parametrize("check", CHECKS, ids=lambda path: path.stem)
def test_each_file_of_checks_is_named_on_the_page_and_says_its_authority_first(check: Path) -> None:
    assert f"`{check.name}`" in PAGE
    assert check.read_text(encoding="utf-8").startswith('"""')


def test_the_page_names_no_file_that_is_not_there() -> None:
    for name in re.findall(r"`(test_\w+\.py)`", PAGE):
        assert (ROOT / "tests" / "published" / name).exists(), name
    for path in re.findall(r"`(tests/[\w/.]+)`", PAGE):
        assert (ROOT / path).exists(), path


@pytest.mark.parametrize("path", CITING, ids=lambda path: path.name)
def test_what_a_module_cites_stands_on_the_page(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert {plain(one) for one in AUTHORITY.findall(text)} <= {plain(one) for one in AUTHORITY.findall(PAGE)}
    assert addresses_in(text) <= addresses_in(PAGE)


@pytest.mark.parametrize("check", CHECKS, ids=lambda path: path.stem)
def test_what_a_check_cites_stands_on_the_page(check: Path) -> None:
    text = check.read_text(encoding="utf-8")
    assert {plain(one) for one in AUTHORITY.findall(text)} <= {plain(one) for one in AUTHORITY.findall(PAGE)}
    # A file may give its site once and its pages by their own names; those are on the page in full.
    for address in addresses_in(text):
        assert address in PAGE, address


@pytest.mark.parametrize("family", FAMILIES)
def test_each_source_of_a_unit_stands_on_the_page_or_says_that_there_is_none(family: str) -> None:
    data = tomllib.loads((ROOT / "wallplan" / "catalogue" / "data" / f"{family}.toml").read_text(encoding="utf-8"))
    assert data["sources"]
    for line in (*data["sources"], *(line for unit in data["unit"] for line in unit.get("sources", []))):
        named = any(plain(one) in plain(PAGE) for one in AUTHORITY.findall(line)) or addresses_in(line) & addresses_in(PAGE)
        assert named or any(word in line for word in NAMELESS), line


NAMELESS = ("no source", "from memory", "common practice", "free-ed.net masonry course", "measure the brick")
"""What a line says that has no publication behind it: the last where a printed range was settled."""
