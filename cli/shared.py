"""Arguments that several commands share, and how text and JSON go out."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Annotated

import typer
from wallplan_cli.faults import ends_plainly, refuse

# ``readable``: whether a plan may be read is told by what reads it, in one line.
Plan = Annotated[Path, typer.Argument(metavar="PLAN", help="The plan file (TOML).", show_default=False, readable=False)]
Plans = Annotated[
    list[Path],
    typer.Argument(metavar="PLAN...", help="The plan file (TOML), or several.", show_default=False, readable=False),
]
Json = Annotated[
    str | None, typer.Option("--json", metavar="FILE", help="Write JSON to FILE; - for standard output.", show_default=False)
]

NARROWEST, WIDEST = 60, 160


def read_folder(given: str) -> Path:
    """The folder that is asked for; an empty name, which would be the folder that one stands in, is refused."""
    if not given.strip():
        raise refuse("--into: no folder is named; write --into FOLDER")
    return Path(given)


def terminal_width() -> int:
    """Columns to write in."""
    return max(NARROWEST, min(WIDEST, shutil.get_terminal_size((100, 24)).columns))


def for_each(plans: list[Path], act: Callable[[Path], None]) -> None:
    """Do this for one plan after the other, under its name where there are several; ends with the worst exit status.

    A plan that cannot be used stops none of the others.
    """
    several, worst = list(dict.fromkeys(plans)), 0
    for place, plan in enumerate(several):
        if len(several) > 1:
            typer.echo("\n" * bool(place) + f"{plan}\n{'-' * min(terminal_width(), len(str(plan)))}")
        try:
            with ends_plainly():
                act(plan)
        except typer.Exit as ended:
            worst = max(worst, ended.exit_code)
    if worst:
        raise typer.Exit(worst)


def for_one_only(plans: list[Path], option: str, value: str | None) -> None:
    """Refuse an option that makes one file of one plan where several are given."""
    if value is not None and len(set(plans)) > 1:
        raise refuse(f"{option} is for one plan; {len(set(plans))} are given")


def spare_plans(option: str, target: str | None, *plans: Path | None) -> None:
    """End the command where what it would write has the name of a plan that it reads, or of any plan, or no name."""
    if target in (None, "-"):
        return
    if not target.strip():
        raise refuse(f"{option}: no file is named; write {option} FILE, or {option} - for standard output")
    for plan in plans:
        if plan is not None and _is_same(Path(target), plan):
            raise refuse(f"{option}: {target} is the plan itself; name another file")
    if target.casefold().endswith(".toml") and Path(target).is_file():  # an option in the wrong place
        raise refuse(f"{option}: {target} is there already, and a plan by its name; name another file")


def _is_same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except (OSError, ValueError):  # one of them is not there
        return False


def put_json(value: object, target: str) -> None:
    """Write JSON to a file, or to standard output for ``-``. Raises FileFault."""
    import json

    put_text(json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n", target)


def put_text(text: str, target: str) -> None:
    """Write text to a file as it is, or to standard output for ``-``. Raises FileFault."""
    if target == "-":
        typer.echo(text.encode(), nl=False)  # UTF-8 as in a file, whatever the terminal speaks
    else:
        from wallplan.files import write_file

        write_file(Path(target), text.encode())
