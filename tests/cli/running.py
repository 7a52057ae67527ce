"""Run the command as a user does: a process of its own."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "samples"


def run(*words: object, width: int = 80, typed: str | None = None) -> subprocess.CompletedProcess[str]:
    """``wallplan`` with these words; ``typed`` is what is typed at its questions."""
    return subprocess.run(
        [sys.executable, "-m", "wallplan_cli", *map(str, words)], input=typed, capture_output=True, text=True,
        env={**os.environ, "COLUMNS": str(width)}, timeout=120, check=False, cwd=ROOT,
    )
