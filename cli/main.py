"""The command ``wallplan`` and its verbs."""

from __future__ import annotations

from typing import Annotated

import typer
from wallplan_cli import advise, check, cuts, lay, new, order, sheets, teach, units
from wallplan_cli.calls import Program

app = typer.Typer(
    name="wallplan", cls=Program, no_args_is_help=True, add_completion=False, rich_markup_mode=None,
    pretty_exceptions_enable=False, context_settings={"help_option_names": ["-h", "--help"]},
    help="Lay out masonry walls course by course, prove the layout, and draw the sheet to tape to the mortar board.\n\n"
         "It lays out and counts; it never designs structure. Local codes and licensed designers go first.",
    epilog="Begin with: wallplan new my-wall.toml",
)
for module in (new, lay, check, sheets, cuts, order, advise, teach, units):
    module.add_to(app)


def _show_version(asked: bool) -> None:
    if asked:
        from wallplan import __version__

        typer.echo(f"wallplan {__version__}")
        raise typer.Exit


@app.callback()
def begin(
    version: Annotated[bool, typer.Option(
        "--version", help="Show which version this is.", is_eager=True, callback=_show_version, show_default=False)] = False,
) -> None:
    """Hold the options that stand before a verb. Does nothing else: each verb is a command of its own."""
