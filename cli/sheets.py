"""``wallplan sheets``: the sheets and lists of a job, or of many, into a folder each."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Annotated

import typer
from wallplan_cli.drawing import Into, PaperName, draw_all, find_known, find_paper
from wallplan_cli.earlier import Earlier, Tidy, refuse_partial_tidy
from wallplan_cli.faults import refuse
from wallplan_cli.shared import Plans

if TYPE_CHECKING:
    from wallplan.batch import Draw


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan sheets samples/ticket-kiosk.toml --paper letter --into kiosk-sheets")(sheets)


def sheets(
    plans: Plans,
    into: Into = None,
    paper: PaperName = None,
    only: Annotated[
        list[str] | None,
        typer.Option("--only", metavar="SHEET", show_default=False,
                     help="Only this: wall, course, marks, pole, leads, saw-list, order or days; may be repeated."),
    ] = None,
    face: Annotated[
        str, typer.Option("--face", metavar="FACE", show_default=False,
                          help="Which face of each wall its sheets show: outside (else) or inside.")
    ] = "outside",
    full_size: Annotated[
        bool, typer.Option("--full-size", help="Draw the story pole in full size too: strips to cut out and join.")
    ] = False,
    tidy: Tidy = False,
) -> None:
    """Draw the sheets and write the lists of each PLAN.

    The main job, ready to print and tape up: wall, course, marks, pole, leads, saw, order and day sheets as one SVG each and
    as pages of one PDF; marks, saw list, order and days as CSV. Of several plans a bad one stops none of the others.
    Files that an earlier run left in the folder, and that are not drawn now, are named, so that none is taped up by mistake.
    """
    draw = _choose_sheets(paper, only or [], face, full_size)
    kind = "inside" if face.casefold() == "inside" else "sheets"
    worst = draw_all(list(dict.fromkeys(plans)), draw, into, Earlier(kind, refuse_partial_tidy(tidy, only)))
    if worst:
        raise typer.Exit(worst)


def _choose_sheets(paper: str | None, only: list[str], face: str, full_size: bool) -> Draw:
    """What draws a plan as the options ask for it; an option that cannot be used is refused."""
    from wallplan.planner import SHEETS, draw_set

    named = find_paper(paper)
    kinds = find_known("--only", "a sheet", only, SHEETS)
    inside = find_known("--face", "a face", [face], ("outside", "inside")) == ["inside"]
    if full_size and kinds and "pole" not in kinds:
        raise refuse("--full-size is of the story pole; add --only pole")
    return partial(draw_set, paper=named, only=tuple(kinds),
                   face="inside" if inside else "outside", full_size=full_size)
