"""``wallplan new``: a few plain questions, answers ready, and a commented plan file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from wallplan_cli.faults import ends_plainly, refuse

if TYPE_CHECKING:
    from wallplan.plan.draft import Question


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan new my-wall.toml")(new)


def new(
    file: Annotated[
        Path, typer.Argument(metavar="[FILE]", help="The plan file to write.", readable=False)
    ] = Path("wall.toml"),
) -> None:
    """Write a first plan file from a few plain questions.

    An answer stands ready for each question. The file has comments where a beginner would ask. Never overwrites.
    """
    from wallplan.files import FileFault, write_new_file
    from wallplan.plan.draft import next_question, write_draft

    with ends_plainly():
        if file.exists() or file.is_symlink():
            raise FileFault(f"{file}: is there already and stays as it is; give another name")
        typer.echo("Press Enter to take the answer in brackets.", err=True)
        answers: dict[str, str] = {}
        while (question := next_question(answers)) is not None:
            answers[question.key] = _ask(question)
        write_new_file(file, write_draft(answers).encode())
        typer.echo(f"{file} is written. Next: wallplan lay {file}")


def _ask(question: Question) -> str:
    while True:
        try:
            given: str = typer.prompt(question.text, default=question.ready, err=True)
        except typer.Abort:
            raise refuse("\nstopped: nothing is written") from None
        fault = question.find_fault(given)
        if fault is None:
            return given
        typer.echo(fault, err=True)
