"""All benchmarks as one table, printed and written to docs/benchmarks.md.

    python3 -m tests.benchmarks --walls 40 --page docs/benchmarks.md

Growth, and the search against the constraint solver, are told in seconds of the processor, so that other work on the machine
counts little; start-ups by the least of several turns.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import subprocess
import sys
import tempfile
import textwrap
from pathlib import Path

from tests.benchmarks.against_solver import compare_all
from tests.benchmarks.masons_walls import make_masons_wall
from tests.benchmarks.measuring import ROOT, start, time_in_turn
from tests.oracle.random_walls import make_small_wall

MASONS_WALLS, LIMIT = 12, 10.0
"""So many walls, and what the solver may do for each, in its own measure of work: about a second of the processor each."""

SIZES = (10, 32, 100, 316, 1000)
"""Courses, and units in each: a hundred to a million units."""

SHEETS_TO = 10_000
"""Units up to which sheets are drawn: beyond, no sheet of paper would be read."""

MEASURE = """
import json, resource, sys, time
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.planner import draw_set, prove, take_off
units, draw = int(sys.argv[1]), sys.argv[2] == "draw"
job = read_plan(f'title="Mole"\\nmeasure="feet"\\nsizes="nominal"\\n[masonry]\\nunit="block-8"\\n[[wall]]\\nname="W"\\n'
                f'length="{units * 16}"\\ncourses={units}\\n', "mole.toml")
taken = {}
def take(name, act):
    begun = time.process_time()
    done = act()
    taken[name] = time.process_time() - begun
    return done
layout = take("lay", lambda: lay(job))
findings = take("check", lambda: prove(layout))
taken["megabytes"] = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
take("order", lambda: take_off(layout))
if draw:
    take("sheets", lambda: draw_set(layout, findings, None, ()))
assert all(finding.held for finding in findings)
print(json.dumps(taken))
"""

STARTS = (
    ("--help", "typer"), ("units", "typer"), ("lay", "typer, pydantic"), ("cuts", "typer, pydantic"), ("order", "typer, pydantic"),
    ("advise", "typer, pydantic"), ("check", "typer, pydantic, numpy, shapely"),
    ("sheets", "typer, pydantic, shapely, svgwrite, matplotlib.backends.backend_pdf"),
)
"""Commands, and what each cannot do without importing."""


def tell_search(walls: int) -> list[str]:
    """The search against the constraint solver on the same walls: the same least cutting, and how much sooner."""
    compare_all([make_small_wall(5)], LIMIT)  # loads the solver and what the search imports late
    return [
        "## The search against a constraint solver (OR-tools CP-SAT)", "",
        *textwrap.wrap(
            "Walls as masons build them (`tests/benchmarks/masons_walls.py`) are 15 to 30 ft long with one to three openings, on "
            "the whole inch in 8 in. block and modular brick, on 18.75 mm in brick of the United Kingdom; joints are fixed for "
            "both. Tiny walls (`tests/oracle/random_walls.py`) are those of the tests that hold search and solver equal. The "
            "solver has one core, as the search has, and the model that was quickest (`tests/oracle/bond_model.py`); it is asked "
            "for cutting alone, where the search also settles all that comes after it and the layout is set out. Seconds are the "
            "processor's; the limit is on the solver's own measure of its work, about a second each. Walls that it does not "
            "prove within it are in no other column.", 110), "",
        "| walls | proven by both | same least cutting | not proven by the solver | search, median | solver, median | "
        "median ratio | least ratio |", "|---|---|---|---|---|---|---|---|",
        compare_all(map(make_masons_wall, range(MASONS_WALLS)), LIMIT).tell("as masons build them", LIMIT),
        compare_all(map(make_small_wall, range(walls)), LIMIT).tell("tiny", LIMIT), "",
    ]


def tell_growth() -> list[str]:
    """Layout, check, order and sheets of ever larger walls, in seconds of the processor."""
    lines = ["## Growth", "", "| units | lay | check | order | sheets | memory after check |", "|---|---|---|---|---|---|"]
    for size in SIZES:
        draw = "draw" if size * size <= SHEETS_TO else "no"
        shown = subprocess.run([sys.executable, "-c", MEASURE, str(size), draw], check=True, capture_output=True, text=True, cwd=ROOT)
        taken: dict[str, float] = json.loads(shown.stdout)
        cells = [f"{taken[name]:.2f} s" if name in taken else "" for name in ("lay", "check", "order", "sheets")]
        lines.append(f"| {size * size:,} | {' | '.join(cells)} | {taken['megabytes']:.0f} MB |")
    return [*lines, ""]


def tell_starts(rounds: int) -> list[str]:
    """Whole commands on a sample against a Python that only imports what they cannot do without."""
    lines = ["## Start-up", "", "| command | whole | imports alone | ratio |", "|---|---|---|---|"]
    with tempfile.TemporaryDirectory() as place:
        for command, imports in STARTS:
            words = ["-m", "wallplan_cli", command]
            words += [] if command in ("--help", "units") else [str(ROOT / "samples" / "ticket-kiosk.toml")]
            words += ["--into", place] if command == "sheets" else []
            taken = time_in_turn({"floor": start(["-c", f"import {imports}"]), "whole": start(words)}, rounds)
            lines.append(f"| `wallplan {command}` | {taken['whole'] * 1000:.0f} ms | {taken['floor'] * 1000:.0f} ms ({imports}) | "
                         f"{taken['whole'] / taken['floor']:.2f} |")
    return [*lines, ""]


def main() -> None:
    """Measure, print, and write the page."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    asked.add_argument("--walls", type=int, default=40)
    asked.add_argument("--rounds", type=int, default=7)
    asked.add_argument("--page", type=Path, default=ROOT / "docs" / "benchmarks.md")
    words = asked.parse_args()
    busy = os.getloadavg()[0]
    lines = [
        "# Benchmarks", "", "Written by `python3 -m tests.benchmarks`. Ratios and growth are held by `python3 -m pytest tests/benchmarks`.",
        "", f"Measured with Python {platform.python_version()} on {os.cpu_count()} processors, with {busy:.1f} programs at work at the "
        "start: on an idle machine the seconds are fewer.", "",
        *tell_search(words.walls), *tell_growth(), *tell_starts(words.rounds),
    ]
    page = "\n".join(lines).rstrip() + "\n"
    words.page.write_text(page, encoding="utf-8")
    print(page)


if __name__ == "__main__":
    main()
