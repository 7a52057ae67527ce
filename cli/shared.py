"""Arguments that several commands share, and how text and JSON go out."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Annotated

import typer

Plan = Annotated[Path, typer.Argument(metavar="PLAN", help="The plan file (TOML).", show_default=False)]
Json = Annotated[
    str | None, typer.Option("--json", metavar="FILE", help="Write JSON to FILE; - for standard output.", show_default=False)
]

NARROWEST, WIDEST = 60, 160


def terminal_width() -> int:
    """Columns to write in."""
    return max(NARROWEST, min(WIDEST, shutil.get_terminal_size((100, 24)).columns))


def put_json(value: object, target: str) -> None:
    """Write JSON to a file, or to standard output for ``-``. Raises FileFault."""
    import json

    put_text(json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n", target)


def put_text(text: str, target: str) -> None:
    """Write text to a file as it is, or to standard output for ``-``. Raises FileFault."""
    if target == "-":
        typer.echo(text, nl=False)
    else:
        from wallplan.files import write_file

        write_file(Path(target), text.encode())
