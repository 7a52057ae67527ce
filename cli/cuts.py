"""``wallplan cuts``: the saw list."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from wallplan_cli.faults import ends_plainly
from wallplan_cli.shared import Plan, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan cuts samples/pier.toml")(cuts)


def cuts(
    plan: Plan,
    csv: Annotated[
        str | None, typer.Option("--csv", metavar="FILE", help="Write the list as CSV; - for standard output.")
    ] = None,
) -> None:
    """Write the saw list of PLAN.

    Each cut's letter, length and count, what it is sawn from, and which cut its offcut serves.
    """
    from wallplan.lists.csv_files import write_saw_csv
    from wallplan.lists.cuts import list_cuts
    from wallplan.lists.report import report_cuts
    from wallplan.planner import lay_plan

    with ends_plainly():
        layout = lay_plan(plan)
        listed = list_cuts(layout)
        if csv is not None:
            _put_csv(write_saw_csv(listed, layout.job.measure), csv)
        if csv != "-":
            typer.echo(report_cuts(listed, layout.job, terminal_width()))


def _put_csv(text: str, target: str) -> None:
    if target == "-":
        typer.echo(text, nl=False)
    else:
        from wallplan.files import write_file

        write_file(Path(target), text.encode())
