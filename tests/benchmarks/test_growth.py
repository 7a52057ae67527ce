"""How layout and check grow from ten thousand pieces to a million, and what memory a million take; ratios in one run."""

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

MEASURE = """
import json, resource, sys, time
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.rules.check import check
units = int(sys.argv[1])
text = f'title="Big"\\nmeasure="feet"\\nsizes="nominal"\\n[masonry]\\nunit="block-8"\\n[[wall]]\\nname="W"\\n' \\
       f'length="{units * 16}"\\ncourses={units}\\n'
job = read_plan(text, "big.toml")
begun = time.perf_counter()
layout = lay(job)
laid = time.perf_counter()
findings = check(layout)
checked = time.perf_counter()
print(json.dumps({
    "pieces": sum(len(course.pieces) for course in layout.walls[0].courses), "lay": laid - begun, "check": checked - laid,
    "held": all(finding.held for finding in findings),
    "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
}))
"""


def measure(units: int) -> dict[str, float]:
    """A wall of ``units`` courses by ``units`` units, in a process of its own."""
    shown = subprocess.run([sys.executable, "-c", MEASURE, str(units)], check=True, capture_output=True, text=True, cwd=ROOT)
    found: dict[str, float] = json.loads(shown.stdout)
    return found


def test_time_grows_no_faster_than_the_wall_and_a_million_pieces_fit_in_a_gigabyte() -> None:
    small, large = measure(316), measure(1000)
    for name in ("lay", "check"):
        growth = large[name] / small[name] / (large["pieces"] / small["pieces"])
        print(f"\n{name}: {small[name]:.2f} s for {small['pieces']:.0f} pieces, {large[name]:.2f} s for {large['pieces']:.0f}")
        # Ten times the pieces in at most eleven times the time, and room for what a busy machine adds.
        assert growth <= 1.5
    assert small["held"] and large["held"]
    assert large["megabytes"] < 1000
