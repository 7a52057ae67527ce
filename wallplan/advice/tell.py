"""Advice as text: what to move and what it saves, two plans against each other, alternatives side by side."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.advice.advise import Advice, Proposal, stands_alone
from wallplan.advice.compare import Alternative
from wallplan.advice.figures import Figures
from wallplan.advice.fit_table import tell_bays
from wallplan.advice.moves import move_wall
from wallplan.advice.name_moves import name_move
from wallplan.lists.columns import set_columns, wrap_text
from wallplan.plan.job import Job

OWNER = "Whoever owns a dimension decides: ask before an opening, an end or a control joint is moved."
SAW_TIME = "Time at the saw is rough: 3 1/2 minutes a cut (common practice, no source)."


def report_advice(advice: Advice, alternatives: Sequence[Alternative], width: int) -> str:
    """The whole report of ``wallplan advise PLAN``; one line where the plan fits and no alternatives are asked for."""
    compared = ["Alternatives, the walls as planned; min are minutes at the saw:", tell_alternatives(alternatives, width)]
    if advice.fits:
        told = [wrap_text(f"{advice.job.title}: it fits. Nothing is cut and no rule is broken.", width)]
        return "\n\n".join([*told, *(compared if alternatives else [])])
    told = [wrap_text(advice.job.title, width), wrap_text(f"As planned: {_tell_figures(advice.figures)}.", width)]
    told += [_tell_proposal(number, one, advice.job, width) for number, one in enumerate(advice.proposals, start=1)]
    if not advice.proposals:
        told.append(wrap_text("Nothing that may be moved would save a cut or mend a rule.", width))
    elif len(advice.together) > 1:
        told.append(wrap_text(f"The best of each wall, all made: {_tell_change(advice.figures, advice.after)}.", width))
    told += [wrap_text(line, width) for line in _notes(advice)]
    told += [wrap_text(f"{wall.name}: {line}.", width) for wall in advice.job.walls for line in tell_bays(wall, advice.job)]
    return "\n\n".join([*told, *(compared if alternatives else [])])


def _notes(advice: Advice) -> list[str]:
    notes = []
    if advice.left_out:
        notes.append("Left as they are, for what is moved there moves another wall, a step, a gable or a pier: "
                     f"{', '.join(advice.left_out)}.")
    if advice.proposals and not all(stands_alone(wall) for wall in advice.job.walls):
        notes.append("Corners stay where they are, and each proposal is reckoned with them bonded as the plan is laid now.")
    if not advice.proven:
        notes.append("Not everything was tried: where a proposal says so, a better one is not ruled out; try --thorough.")
    return [*notes, SAW_TIME, OWNER] if advice.proposals else notes


def _tell_proposal(number: int, proposal: Proposal, job: Job, width: int) -> str:
    before = job.walls[proposal.wall]
    after = move_wall(before, proposal.moves)
    lines = [f"{number}. {before.name}: {_tell_change(proposal.before, proposal.after)}"
             + ("" if proposal.proven else "; better is not ruled out")]
    lines += [f"   {name_move(move, after, job.measure)}" for move in proposal.moves]
    return "\n".join(wrap_text(line.strip(), width, indent=" " * (len(line) - len(line.lstrip()))) for line in lines)


def _tell_figures(figures: Figures) -> str:
    return ", ".join(f"{value} {_ONE.get(name, name) if value == 1 else name}"
                     for name, value in list_figures(figures).items() if value or name == "cutting")


_ONE = {"broken places": "broken place", "sawn pieces": "sawn piece", "short pieces": "short piece",
        "saw settings": "saw setting", "units to lay": "unit to lay", "minutes at the saw": "minute at the saw"}


def _tell_change(before: Figures, after: Figures) -> str:
    then = list_figures(after)
    return ", ".join(f"{name} {was} to {then[name]}" for name, was in list_figures(before).items() if was != then[name])


def list_figures(figures: Figures) -> dict[str, int]:
    """The figures by their names, in the order in which they are told."""
    return {
        "broken places": figures.broken_places, "cutting": figures.cutting, "sawn pieces": figures.sawn,
        "short pieces": figures.short, "saw settings": len(figures.settings), "units to lay": figures.units,
        "minutes at the saw": figures.saw_minutes,
    }


def tell_alternatives(alternatives: Sequence[Alternative], width: int) -> str:
    """A table, one row an alternative; "" for none."""
    rows = [["", *_HEADS]]
    for one in alternatives:
        cells = [str(value) for value in list_figures(one.figures).values()] if one.figures else ["cannot be laid so"]
        rows.append([one.name, *cells])
    if not alternatives:
        return ""
    return "\n".join([set_columns(rows, width, right=frozenset(range(1, len(_HEADS) + 1))), "",
                      wrap_text(_tell_wandering(alternatives[0]), width)])


def _tell_wandering(planned: Alternative) -> str:
    least, figures = planned.wandering, planned.figures
    if least is None or figures is None or least >= figures.cutting:
        return "Letting perpends wander would save nothing."
    return (f"Letting perpends wander, each course laid on its own, would save {figures.cutting - least} of the cutting at "
            f"most: {least} must be, run by run. Cells for grout and steel then no longer line up.")


_HEADS = ("broken", "cutting", "sawn", "short", "settings", "units", "min")


def tell_two_plans(old: tuple[str, Figures], new: tuple[str, Figures], width: int) -> str:
    """The figures of two plans, and what the change from the first to the second costs or saves."""
    rows = [["", "old", "new", "change"]]
    then = list_figures(new[1])
    for name, was in list_figures(old[1]).items():
        change = then[name] - was
        rows.append([name, str(was), str(then[name]), f"{change:+d}" if change else "same"])
    head = "\n".join(wrap_text(f"{word}: {name}", width) for word, (name, _) in (("old", old), ("new", new)))
    return "\n\n".join([head, set_columns(rows, width, right=frozenset({1, 2, 3}))])
