"""``wallplan teach``: the teaching pack of a job, or of many, into a folder each."""

from __future__ import annotations

from functools import partial
from typing import Annotated

import typer
from wallplan_cli.drawing import Into, PaperName, draw_all, find_known, find_paper
from wallplan_cli.earlier import Earlier, Tidy, refuse_partial_tidy
from wallplan_cli.shared import Plans


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan teach samples/ticket-kiosk.toml --into kiosk-lesson")(teach)


def teach(
    plans: Plans,
    into: Into = None,
    paper: PaperName = None,
    only: Annotated[
        list[str] | None,
        typer.Option("--only", metavar="SHEET", show_default=False,
                     help="Only this: build-up, courses, pole, blank, quiz, wrong-wall, marking, answer, quiz-answers, key "
                          "or page; may be repeated."),
    ] = None,
    tidy: Tidy = False,
) -> None:
    """Draw the teaching pack of each PLAN.

    A lesson as one SVG a sheet and as pages of one PDF: the wall course by course with the lap and why each piece is so,
    corners in plan, the pole beside the wall; a sheet to draw the bond on, a quiz, a wall with five faults to find, a
    marking sheet; and the answers, last. And a page for the phone, one HTML file that needs no network.
    """
    from wallplan.planner import LESSON, draw_lesson

    named = find_paper(paper)
    kinds = find_known("--only", "a lesson sheet", only or [], LESSON)
    draw = partial(draw_lesson, paper=named, only=tuple(kinds))
    worst = draw_all(list(dict.fromkeys(plans)), draw, into, Earlier("lesson", refuse_partial_tidy(tidy, only)))
    if worst:
        raise typer.Exit(worst)
