"""Print the commands in README's shell blocks, one a line."""

import re
from pathlib import Path

readme = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
for block in re.findall(r"```sh\n(.*?)```", readme, re.DOTALL):
    for line in block.strip().splitlines():
        print(line)
