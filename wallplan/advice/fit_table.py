"""The fit report as text: the sizes that do not fit, and what to do about them; one line where all fit."""

from __future__ import annotations

from wallplan.advice.fit import Size, measure_fit
from wallplan.advice.names import size_text
from wallplan.advice.remedies import find_remedies, tell_off
from wallplan.lists.columns import set_columns
from wallplan.plan.job import Job

MOST_TOLD = 12
TAKEN = {"unnoticed": "joints take it unseen", "noticed": "joints take it, and it shows", "broken": "no joint takes it"}


def report_fit(job: Job, width: int) -> dict[str, str]:
    """For each wall by name, its sizes against module and coursing. A job without walls gives {}."""
    sizes = measure_fit(job)
    return {wall.name: _report([size for size in sizes if size.wall == wall.name], job, width) for wall in job.walls}


def _report(sizes: list[Size], job: Job, width: int) -> str:
    misfits = [size for size in sizes if size.taken != "fits"]
    if not misfits:
        return "Fit: every length, opening, sill and head stands on the module."
    rows = [["size", "", "is", "off", "remedy, the first to try first"]]
    for size in misfits[:MOST_TOLD]:
        remedies = "; else ".join(find_remedies(size, job))
        rows.append([size.what, size.name if size.what not in ("length", "height") else "",
                     size_text(size.size, job.measure), tell_off(size, job), f"{TAKEN[size.taken]}: {remedies}"])
    more = [f"... and {len(misfits) - MOST_TOLD} more"] if len(misfits) > MOST_TOLD else []
    return "\n".join([f"Fit: {len(misfits)} of {len(sizes)} sizes are off the module or the coursing.",
                      set_columns(rows, width, indent=2), *more])
