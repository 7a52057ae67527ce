"""Start-up of whole commands against a Python that only imports what they need: medians, interleaved, in one run.

Run alone, and looked at as a table: ``python3 -m pytest tests/benchmarks -s``.
"""

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
KIOSK = ROOT / "samples" / "ticket-kiosk.toml"
ROUNDS = 9


def time_together(cases: dict[str, list[str]]) -> dict[str, float]:
    """Median seconds of each command, all of them run in turn so that a busy machine slows them alike."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    taken: dict[str, list[float]] = {name: [] for name in cases}
    for turn in range(ROUNDS + 1):
        for name, words in cases.items():
            begun = time.perf_counter()
            subprocess.run([sys.executable, *words], check=True, capture_output=True, cwd=ROOT, env=environment)
            if turn:  # the first turn only fills caches
                taken[name].append(time.perf_counter() - begun)
    return {name: statistics.median(seconds) for name, seconds in taken.items()}


@pytest.mark.parametrize(("command", "imports", "most"), [
    ("lay", "typer, pydantic", 2.0),
    ("cuts", "typer, pydantic", 2.0),
    ("sheets", "typer, pydantic, shapely, svgwrite, matplotlib.backends.backend_pdf", 1.6),
])
def test_a_command_starts_near_the_floor_of_what_it_imports(command: str, imports: str, most: float, tmp_path: Path) -> None:
    words = ["-m", "wallplan_cli", command, str(KIOSK)]
    if command == "sheets":
        words += ["--into", str(tmp_path)]
    medians = time_together({"floor": ["-c", f"import {imports}"], command: words})
    ratio = medians[command] / medians["floor"]
    print(f"\n{command}: {medians[command] * 1000:.0f} ms, floor {medians['floor'] * 1000:.0f} ms, ratio {ratio:.2f}")
    assert ratio <= most
