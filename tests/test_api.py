"""The code in the documents runs as it stands there, and prints what stands below it."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
BLOCK = re.compile(r"```python\n(.*?)```(?:\n+```text\n(.*?)```)?", re.DOTALL)
BLOCKS = [(name, code, printed) for name in ("README.md", "docs/api.md")
          for code, printed in BLOCK.findall((ROOT / name).read_text(encoding="utf-8"))]


@pytest.mark.parametrize(("name", "code", "printed"), BLOCKS, ids=[f"{name} {index}" for index, (name, *_) in enumerate(BLOCKS)])
def test_code_in_the_documents(name: str, code: str, printed: str, tmp_path: Path) -> None:
    (tmp_path / "samples").symlink_to(ROOT / "samples")
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, cwd=tmp_path,
                         env={**os.environ, "PYTHONPATH": str(ROOT)})
    assert (ran.returncode, ran.stderr) == (0, "")
    assert ran.stdout == printed if printed else ran.stdout


def test_a_plan_is_laid_in_five_lines() -> None:
    first = next(code for name, code, _ in BLOCKS if name == "README.md")
    assert len([line for line in first.splitlines() if line.strip()]) <= 5
    assert len(BLOCKS) >= 4
