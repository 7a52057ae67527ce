"""The same plan is the same bytes: under other hash seeds, in other folders, at other times and places, however many plans."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from tests.cli.running import ROOT, SAMPLES


def draw(folder: Path, seed: str, zone: str, *others: Path) -> dict[str, bytes]:
    folder.mkdir()
    plan = Path(shutil.copy(SAMPLES / "breaks-a-rule.toml", folder / f"plan-{seed}.toml"))
    environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone, "PYTHONPATH": str(ROOT)}
    shown = subprocess.run([sys.executable, "-m", "wallplan_cli", "sheets", plan.name, *map(str, others), "--full-size"],
                           env=environment, cwd=folder, capture_output=True, text=True, timeout=120, check=False)
    assert shown.returncode == 1, shown.stderr
    return {path.name: path.read_bytes() for path in plan.with_suffix("").iterdir()}


def test_seeds_folders_times_and_company_change_nothing(tmp_path: Path) -> None:
    one = draw(tmp_path / "one", "1", "UTC")
    other_plan = Path(shutil.copy(SAMPLES / "pier.toml", tmp_path))
    other = draw(tmp_path / "another folder", "4242", "Pacific/Auckland", other_plan)
    assert {name.rpartition(".")[2] for name in one} == {"svg", "pdf", "csv", "sha256"}
    assert one == other
