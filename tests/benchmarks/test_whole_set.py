"""The whole set of a building against a Python that only imports what it needs: the least of each, in turn, in one run."""

from __future__ import annotations

import re
from pathlib import Path

import pypdf

from tests.benchmarks.measuring import least_ratio, start, time_in_turn
from tests.cli.running import run

FLOOR = "import typer, pydantic, shapely, svgwrite, matplotlib.backends.backend_pdf"

WALL = """
[[wall]]
name   = "{}"
length = "{}"
height = "8' 8"
left   = "outside corner"
right  = "outside corner"
bond_beams = ["top"]
  [[wall.opening]]
  name = "{}"
  from_left = "{}"
  width = "{}"
  sill = "{}"
  height = "{}"
"""

PLAN = """title = "Tug office"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
""" + "".join(WALL.format(*words) for words in (
    ("Quay", "24' 8", "Door", "6' 2", "3' 4", "0", "7' 4"), ("Yard", "16'", "Window", "5' 4", "4'", "3' 4", "4'"),
    ("Road", "24' 8", "Hatch", "10'", "5'", "3' 4", "4'"), ("Slip", "16'", "Vent", "7'", "2'", "5' 4", "2'")))


def test_the_set_of_four_walls_with_four_openings_takes_four_times_its_imports(tmp_path: Path) -> None:
    plan = tmp_path / "office.toml"
    plan.write_text(PLAN, encoding="utf-8")
    shown = run("sheets", plan, "--into", tmp_path / "out")
    assert shown.returncode == 0, shown.stderr
    (whole,) = (tmp_path / "out").glob("*.pdf")
    pages = pypdf.PdfReader(whole).pages
    assert len(pages) >= 14 and re.search(r"tug-office-wall-quay", shown.stdout)
    sizes = [path.stat().st_size for path in (tmp_path / "out").iterdir()]
    assert max(sizes) < 300_000 and whole.stat().st_size < 300_000 * len(pages)

    def measure() -> float:
        taken = time_in_turn({"floor": start(["-c", FLOOR]),
                              "set": start(["-m", "wallplan_cli", "sheets", str(plan), "--into", str(tmp_path / "out")])}, 5)
        ratio = taken["set"] / taken["floor"]
        print(f"\n{len(pages)} sheets: {taken['set'] * 1000:.0f} ms, floor {taken['floor'] * 1000:.0f} ms, ratio {ratio:.2f}")
        return ratio

    assert least_ratio(measure, 4.0) <= 4.0
