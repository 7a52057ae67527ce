"""Reading the catalogue: every family, read-only, once; and what a wrong key is told."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

import wallplan.catalogue
from wallplan.catalogue.load import FAMILIES, UnknownUnit, find_unit, units
from wallplan.layout.model import Shape


def test_every_family_on_disk_is_read() -> None:
    data = Path(wallplan.catalogue.__file__).parent / "data"
    assert sorted(path.stem for path in data.glob("*.toml")) == sorted(FAMILIES)


def test_catalogue_holds_the_families_that_were_asked_for() -> None:
    us_block = [f"block-{size}" for size in (4, 6, 8, 10, 12)]
    us_brick = ["modular", "engineer-modular", "closure-modular", "roman", "norman", "engineer-norman", "utility",
                "standard", "engineer-standard", "closure-standard", "king", "queen"]
    canada = [f"block-ca-{width}" for width in (90, 140, 190, 240, 290)]
    uk = [f"block-uk-{width}" for width in (75, 90, 100, 140, 150, 190, 200, 215)]
    assert list(units()) == [*us_block, *(f"brick-{name}" for name in us_brick), *canada, *uk,
                             "brick-uk", "brick-au", "brick-df", "brick-nf", "brick-2df"]


def test_catalogue_is_read_once_and_cannot_be_written() -> None:
    assert units() is units()
    with pytest.raises(TypeError):
        units()["block-9"] = find_unit("block-8")  # type: ignore[index]


@pytest.mark.parametrize("key", list(units()))
def test_every_unit_is_possible_and_names_its_source(key: str) -> None:
    unit = find_unit(key)
    assert unit.key == key and unit.name and unit.country
    assert 0 < unit.tightest_joint <= unit.joint <= unit.widest_joint < unit.height < unit.gauge
    assert unit.pieces[0].name == "full" and unit.pieces[0].length == unit.length and not unit.pieces[0].sawn
    lengths = [piece.length for piece in unit.pieces]
    assert lengths == sorted(set(lengths), reverse=True) and lengths[-1] > 0
    assert set(unit.shapes) <= set(Shape.__args__) and unit.shapes[0] == "stretcher"  # type: ignore[attr-defined]
    assert any(word in unit.source for word in ("http", "TEK", "CSA", "from memory", "no source"))
    assert (unit.net_litres is None) == (unit.mass_kg is None)


@pytest.mark.parametrize("key", list(units()))
def test_bed_joints_lie_in_the_range_that_masonry_is_laid_with(key: str) -> None:
    # TMS 602 lets a bed of 3/8 in be 1/8 in thinner or thicker: 1/4 to 1/2 in.
    inch = 24_384
    assert inch // 4 <= find_unit(key).bed_joint <= inch // 2


@pytest.mark.parametrize(("key", "nearest"), [
    ("block 8", "block-8"), ("Block-8", "block-8"), ("modular", "brick-modular"), ("nf", "brick-nf"),
    ("brick-modulr", "brick-modular"), ("uk-brick", "brick-uk"),
])
def test_a_wrong_key_is_told_the_nearest(key: str, nearest: str) -> None:
    with pytest.raises(UnknownUnit) as caught:
        find_unit(key)
    assert isinstance(caught.value, KeyError) and caught.value.key == key
    assert nearest in caught.value.nearest
    assert str(caught.value) == f'"{key}" is no unit of the catalogue; nearest: {", ".join(caught.value.nearest)}'


@pytest.mark.parametrize("key", ["", "zzz", "\n\x1b[2J", "x" * 100_000])
def test_a_key_like_no_other_still_gets_one_short_line(key: str) -> None:
    with pytest.raises(UnknownUnit) as caught:
        find_unit(key)
    assert str(caught.value).endswith("try block-8 or brick-modular")
    assert str(caught.value).isprintable() and len(str(caught.value)) < 130


def test_reading_the_catalogue_imports_nothing_slow() -> None:
    slow = {"pydantic", "numpy", "shapely", "typer", "difflib", "importlib.resources"}
    code = f"import sys; from wallplan.catalogue.load import units; units(); print(sorted({slow} & set(sys.modules)))"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True,
                         cwd=Path(wallplan.catalogue.__file__).parents[2])
    assert run.stdout.strip() == "[]"
