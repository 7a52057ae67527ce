"""The saw list: what is cut, from what, and what offcuts serve."""

import csv
import io
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest

from tests.lists.walls import BRICK, PIER, lay_text
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_inches
from wallplan.lists.csv_files import write_saw_csv
from wallplan.lists.cuts import Cut, count_pieces, list_cuts, list_wall_cuts
from wallplan.lists.order.sawing import nest_cuts
from wallplan.lists.saw_report import report_cuts
from wallplan.plan.load import load_plan


def test_the_pier_saws_six_of_one_length() -> None:
    # 38 in. = 7 5/8 + 14 + 15 5/8 and two joints of 3/8: one cut of 14 in. a course, six courses.
    (cut,) = list_cuts(lay_text(PIER))
    assert (cut.mark, print_inches(cut.length), cut.count, cut.stock, cut.height) == ("A", '14"', 6, "full", None)
    # What is left of a 15 5/8 in. block after 14 in. and the saw's 1/8 in.
    assert print_inches(cut.offcut) == '1 1/2"'
    assert cut.courses == (1, 2, 3, 4, 5, 6)


def test_every_piece_is_counted_once_and_cuts_agree_with_the_layout() -> None:
    layout = lay_text(BRICK)
    pieces = [piece for wall in layout.walls for course in wall.courses for piece in course.pieces]
    assert count_pieces(layout).total() == len(pieces)
    assert sum(cut.count for cut in list_cuts(layout)) == sum(piece.piece == "cut" for piece in pieces)


ROOT = Path(__file__).parents[2]

RIPS_AND_CUTS = """
title = "Quay"
measure = "feet"
[masonry]
unit = "block-8"
[[wall]]
name = "Front"
length = "15' 3"
height = "7'"
  [[wall.opening]]
  name = "Hatch"
  from_left = "4' 1"
  width = "2' 7"
  sill = "2' 3"
  height = "2' 7"
"""

LAYOUTS = [pytest.param(layout, id=name) for name, layout in [
    *((path.stem, lay(load_plan(path))) for path in sorted((ROOT / "samples").glob("*.toml"))),
    ("bench", lay_text(BRICK)), ("quay", lay_text(RIPS_AND_CUTS)), ("pier", lay_text(PIER)),
]]


@pytest.mark.parametrize("layout", LAYOUTS)
def test_saw_list_and_order_are_one_sawing_plan(layout: Layout) -> None:
    """What is sawn from units of its own is what units are sawn for; what is sawn from offcuts, the rest of them."""
    cuts, sawings = list_cuts(layout), nest_cuts(layout)
    # Two raked cuts that one sawing gives, ``E + E``, are both of a unit of their own.
    marked = Counter(one for sawing in sawings for sawn in sawing.sawn for name in sawn.cuts * sawn.times
                     for one in name.split(" + "))
    first = Counter(one for sawing in sawings for sawn in sawing.sawn for name in sawn.cuts[:1] * sawn.times
                    for one in name.split(" + "))
    for mark in {cut.mark for cut in cuts}:
        alike = [cut for cut in cuts if cut.mark == mark]
        assert sum(cut.count for cut in alike) == marked[mark]
        assert sum(cut.count - cut.served for cut in alike) == first[mark]
    for wall in layout.walls:
        for row in list_wall_cuts(wall, cuts):
            assert row.offcut == any(cut.served for cut in cuts if cut.mark == row.mark)
    told = report_cuts(cuts, sawings, layout.job, 80)
    units = [int(line.split()[0]) for line in told.partition("sawn into:")[2].splitlines()
             if line.strip()[:1].isdigit()]
    assert sum(units) == sum(sawing.nesting.units for sawing in sawings if cuts)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_an_offcut_serves_only_what_it_is_long_enough_for(layout: Layout) -> None:
    cuts: dict[str, list[Cut]] = {}
    for cut in list_cuts(layout):
        cuts.setdefault(cut.mark, []).append(cut)
        assert cut.served <= cut.count and (cut.offcut > 0 or not cut.serves)
    for cut in (cut for alike in cuts.values() for cut in alike if cut.serves):
        for mark in cut.serves.split(", ") if cut.serves else ():
            if mark in cuts:  # halves that are broken have no letter
                assert min(small.length for small in cuts[mark]) <= layout.job.masonry.unit.length - cut.length - 3048


def test_a_wall_without_cuts_has_an_empty_list() -> None:
    layout = lay_text(PIER.replace('38"', '39 5/8"'))
    assert list_cuts(layout) == ()
    assert write_saw_csv((), "feet").count("\r\n") == 1


def test_the_csv_is_rfc_4180_with_units_in_its_header() -> None:
    text = write_saw_csv(list_cuts(lay_text(PIER)), "feet")
    assert text.endswith("\r\n") and "\n" not in text.replace("\r\n", "")
    header, row = csv.reader(io.StringIO(text, newline=""))
    assert header[1] == "length (in)" and row[1] == "14"
    assert dict(zip(header, row, strict=True))["length (mm, exact)"] == "355.60"


def test_names_with_commas_and_quotes_stay_one_field() -> None:
    text = write_saw_csv(list_cuts(lay_text(PIER.replace('name = "Pier"', "name = 'North, \"gate\"'"))), "feet")
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert rows[1][rows[0].index("walls")] == 'North, "gate"'


def test_a_saw_list_that_needs_no_solver_loads_none() -> None:
    code = (
        "import sys; from pathlib import Path; from wallplan.planner import lay_plan; from wallplan.lists.cuts import list_cuts\n"
        f"assert list_cuts(lay_plan(Path({str(ROOT / 'samples' / 'pier.toml')!r})))\n"
        "print([name for name in ('numpy', 'scipy') if name in sys.modules])")
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert shown.stdout.strip() == "[]"
