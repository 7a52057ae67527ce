"""Run the command as a user does: a process of its own."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "samples"


def run(*words: object, width: int = 80, typed: str | None = None,
        before: Callable[[], None] | None = None) -> subprocess.CompletedProcess[str]:
    """``wallplan`` with these words; ``typed`` is what is typed at its questions, ``before`` what its process does first."""
    return subprocess.run(
        [sys.executable, "-m", "wallplan_cli", *map(str, words)], input=typed, capture_output=True, text=True,
        env={**os.environ, "COLUMNS": str(width)}, timeout=120, check=False, cwd=ROOT, preexec_fn=before,
    )


def start(*words: object) -> subprocess.Popen[bytes]:
    """``wallplan`` with these words, running."""
    return subprocess.Popen([sys.executable, "-m", "wallplan_cli", *map(str, words)], stdin=subprocess.PIPE,
                            stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=ROOT)


def names_in(folder: Path) -> set[str]:
    """What stands in a folder, without the records of what was written, whose names begin with a dot."""
    return {path.name for path in folder.iterdir() if not path.name.startswith(".")}
