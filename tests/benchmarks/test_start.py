"""Start-up of whole commands against a Python that only imports what they need: the least of each, in turn, in one run.

Run alone, and looked at as a table: ``python3 -m pytest tests/benchmarks -s``.
"""

from pathlib import Path

import pytest

from tests.benchmarks.measuring import ROOT, least_ratio, start, time_in_turn

KIOSK = ROOT / "samples" / "ticket-kiosk.toml"
ROUNDS = 7


@pytest.mark.parametrize(("command", "imports", "most"), [
    ("--help", "typer", 1.5),
    ("lay", "typer, pydantic", 2.0),
    ("cuts", "typer, pydantic", 2.0),
    ("sheets", "typer, pydantic, shapely, svgwrite, matplotlib.backends.backend_pdf", 1.6),
])
def test_a_command_starts_near_the_floor_of_what_it_imports(command: str, imports: str, most: float, tmp_path: Path) -> None:
    words = ["-m", "wallplan_cli", command, *([] if command == "--help" else [str(KIOSK)])]
    if command == "sheets":
        words += ["--into", str(tmp_path)]

    def measure() -> float:
        taken = time_in_turn({"floor": start(["-c", f"import {imports}"]), command: start(words)}, ROUNDS)
        ratio = taken[command] / taken["floor"]
        print(f"\n{command}: {taken[command] * 1000:.0f} ms, floor {taken['floor'] * 1000:.0f} ms, ratio {ratio:.2f}")
        return ratio

    assert least_ratio(measure, most) <= most
