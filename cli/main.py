"""The command ``wallplan`` and its verbs."""

from __future__ import annotations

import typer
from wallplan_cli import advise, check, cuts, lay, new, order, sheets, teach, units

app = typer.Typer(
    name="wallplan", no_args_is_help=True, add_completion=False, rich_markup_mode=None,
    pretty_exceptions_enable=False, context_settings={"help_option_names": ["-h", "--help"]},
    help="Lay out masonry walls course by course, prove the layout, and draw the sheet to tape to the mortar board.\n\n"
         "It lays out and counts; it never designs structure. Local codes and licensed designers go first.",
    epilog="Begin with: wallplan new my-wall.toml",
)
for module in (new, lay, check, sheets, cuts, order, advise, teach, units):
    module.add_to(app)
