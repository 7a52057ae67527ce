"""Drawing plans into folders: the options that commands which draw have in common, and what is said of what they write."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from wallplan_cli.earlier import Earlier
from wallplan_cli.faults import RULE_BROKEN, UNUSABLE, UNWRITTEN, refuse
from wallplan_cli.shared import read_folder

if TYPE_CHECKING:
    from collections.abc import Callable

    from wallplan.batch import Draw, Drawn, Written

Into = Annotated[
    Path | None,
    typer.Option("--into", metavar="FOLDER", help="Folder for the files; else one named as the plan, beside it.",
                 show_default=False, parser=read_folder),
]
PaperName = Annotated[
    str | None,
    typer.Option("--paper", metavar="PAPER", show_default=False,
                 help="letter, tabloid, A4 or A3; else letter for a plan in feet, A4 for metric."),
]

PAPERS = ("letter", "tabloid", "A4", "A3")


def find_paper(given: str | None) -> str | None:
    """The paper as it is known; None where none is asked for. An unknown one is refused."""
    return find_known("--paper", "a paper", [given], PAPERS)[0] if given else None


def find_known(option: str, kind: str, given: list[str], known: Sequence[str]) -> list[str]:
    """What is given as it is known, in letters big or small; what is not known is refused."""
    names = {name.casefold(): name for name in known}
    for name in given:
        if name.casefold() not in names:
            raise refuse(f'{option}: "{name}" is not {kind}; write one of {", ".join(known)}')
    return [names[name.casefold()] for name in given]


def draw_all(plans: list[Path], draw: Draw, into: Path | None, earlier: Earlier) -> int:
    """Draw and write every plan; the worst exit status of all."""
    import os

    from wallplan.batch import Written, draw_plans

    written, counts = Written(), [0, 0, 0, 0]
    with _show_progress(len(plans)) as advance:
        for drawn in draw_plans(plans, draw, os.cpu_count() or 1):
            counts[_write(drawn, into, (written, earlier), alone=len(plans) == 1)] += 1
            advance()
    if len(plans) > 1:
        told = ("drawn", "drawn with broken rules", "not usable", "not written")
        typer.echo(f"{len(plans)} plans: " + ", ".join(f"{count} {words}" for count, words in zip(counts, told, strict=True)
                                                       if count), err=True)
    return max(status for status, count in enumerate(counts) if count)


def _name_folder(plan: Path) -> Path:
    folder = plan.with_suffix("")
    return folder if folder != plan else plan.with_name(f"{plan.name}-sheets")


def _write(drawn: Drawn, into: Path | None, runs: tuple[Written, Earlier], *, alone: bool) -> int:
    """Write what came of a plan and say where; the exit status that it asks for."""
    from wallplan.files import FileFault

    (written, earlier), folder = runs, into or _name_folder(drawn.plan)
    clash = None if drawn.mistakes else written.find_clash(folder, drawn)
    if drawn.mistakes or clash:
        typer.echo("\n".join([clash] if clash else drawn.mistakes), err=True)
        return UNUSABLE
    try:
        paths, left = earlier.write(folder, drawn, own=into is None)
    except FileFault as fault:
        typer.echo(str(fault), err=True)
        return UNWRITTEN
    written.note(folder, drawn)
    for path in paths if alone else ():
        typer.echo(str(path))
    if not alone:
        typer.echo(f"{drawn.plan}: {len(paths)} {'file' if len(paths) == 1 else 'files'} in {folder}, to print: "
                   f"{next((path for path in paths if path.suffix == '.pdf'), 'none')}")
    earlier.tell(folder, left)
    if drawn.broken:
        typer.echo(f"{drawn.broken} broken {'rule' if drawn.broken == 1 else 'rules'}, named on the sheets; "
                   f"see: wallplan check {drawn.plan}", err=True)
    return RULE_BROKEN if drawn.broken else 0


@contextmanager
def _show_progress(count: int) -> Iterator[Callable[[], None]]:
    """What moves a bar on by one plan: on a terminal, and for more than one."""
    import sys

    if count < 2 or not sys.stderr.isatty():
        yield lambda: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    columns = (TextColumn("sheets"), BarColumn(), MofNCompleteColumn(), TextColumn("plans"))
    console, seen = Console(stderr=True), sys.stdout.isatty()  # what goes into a file goes past the bar
    with Progress(*columns, console=console, transient=True, redirect_stdout=seen) as progress:
        task = progress.add_task("", total=count)
        yield lambda: progress.advance(task)
