"""Advice as JSON, version 1. Lengths in float millimetres; moves to the right or up are positive."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.advice.advise import Advice, Proposal
from wallplan.advice.compare import Alternative
from wallplan.advice.figures import Figures
from wallplan.advice.fit import Size, measure_fit
from wallplan.advice.moves import Move
from wallplan.advice.remedies import find_remedies
from wallplan.advice.tell import list_figures
from wallplan.lengths import to_mm
from wallplan.plan.job import Job

VERSION = 1


def advice_as_json(advice: Advice, alternatives: Sequence[Alternative]) -> dict[str, object]:
    """Advice and the fit report, as values that json can write."""
    return {
        "wallplan_advice": VERSION, "title": advice.job.title, "fits": advice.fits, "proven": advice.proven,
        "as_planned": _figures(advice.figures), "all_made": _figures(advice.after),
        "proposals": [_proposal(one, advice.job) for one in advice.proposals],
        "sizes": [_size(size, advice.job) for size in measure_fit(advice.job)],
        "alternatives": [
            {"name": one.name, "figures": one.figures and _figures(one.figures), "cutting_at_least": one.wandering}
            for one in alternatives],
    }


def plans_as_json(old: tuple[str, Figures], new: tuple[str, Figures]) -> dict[str, object]:
    """The figures of two plans."""
    return {"wallplan_advice": VERSION, "plans": [{"plan": name, "figures": _figures(one)} for name, one in (old, new)]}


def _figures(figures: Figures) -> dict[str, object]:
    return {name.replace(" ", "_"): value for name, value in list_figures(figures).items()} | {
        "broken_rules": dict(figures.broken)}


def _proposal(proposal: Proposal, job: Job) -> dict[str, object]:
    return {
        "wall": job.walls[proposal.wall].name, "moves": [_move(move, proposal.wall, job) for move in proposal.moves],
        "before": _figures(proposal.before), "after": _figures(proposal.after), "proven": proposal.proven,
    }


def _move(move: Move, wall: int, job: Job) -> dict[str, object]:
    kind, index = move.thing.kind, move.thing.index
    opening = job.walls[wall].openings[index].name if kind in ("opening", "width", "sill", "head") else None
    joint = index + 1 if kind == "control joint" else None
    return {"what": kind, "opening": opening, "control_joint": joint, "by": to_mm(move.by)}


def _size(size: Size, job: Job) -> dict[str, object]:
    return {
        "wall": size.wall, "what": size.what, "name": size.name, "size": to_mm(size.size), "off": to_mm(size.off),
        "joints": size.joints, "taken": size.taken, "remedies": list(find_remedies(size, job)),
    }
