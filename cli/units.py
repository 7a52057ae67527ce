"""``wallplan units``: the unit catalogue."""

from __future__ import annotations

from typing import Annotated

import typer
from wallplan_cli.faults import ends_plainly, refuse
from wallplan_cli.shared import Json, put_json, spare_plans, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan units block-8")(units)


def units(
    key: Annotated[str | None, typer.Argument(metavar="[UNIT]", help="One unit in full.", show_default=False)] = None,
    json: Json = None,
) -> None:
    """Show the unit catalogue.

    Sizes, joints, coursing, stock lengths and shapes; one unit in full with where each figure comes from.
    """
    from wallplan.catalogue.load import UnknownUnit, find_unit, spell_key
    from wallplan.catalogue.load import units as all_units
    from wallplan.catalogue.unit import Unit
    from wallplan.lists.unit_tables import report_unit, report_units, units_as_json

    spare_plans("--json", json)
    if key is not None:
        try:
            chosen: tuple[Unit, ...] = (find_unit(spell_key(key)),)
        except UnknownUnit as error:
            near = f"; nearest: {', '.join(error.nearest)}" if error.nearest else ""
            raise refuse(f'UNIT: "{key}" is not in the catalogue{near}; all of them: wallplan units') from None
    else:
        chosen = tuple(all_units().values())
    if json is not None:
        with ends_plainly():
            put_json(units_as_json(chosen), json)
    if json != "-":
        typer.echo(report_units(chosen, terminal_width()) if key is None else report_unit(chosen[0], terminal_width()))
