"""What the page says of a step in laying: a lead's course from its end, or the fill of a course to the line."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.teaching.sequence import Step


class WallSteps(NamedTuple):
    """How a wall is laid as a whole: in how many lifts, and all steps of its leads; () for a wall too short for leads."""

    lifts: int
    leads: tuple[Step, ...]

    def name(self, steps: list[Step]) -> str:
        """A title for steps of one course: "Left lead, course 2, lift 1 of 3"."""
        first = steps[0]
        lift = f", lift {first.lift} of {self.lifts}" if self.lifts > 1 and self.leads else ""
        if first.stage == "lead":
            return f"{str(first.side).capitalize()} lead, course {first.course}{lift}"
        return f"{'Fill, c' if self.leads else 'C'}ourse {first.course}{lift}"

    def explain(self, steps: list[Step], kind: str) -> str:
        """What is done in them and what to mind; ``kind`` is the unit's, block or brick."""
        told = [self._tell_lead(steps) if steps[0].stage == "lead" else self._tell_fill(steps)]
        others = sorted({step.piece.of for step in steps if step.piece.shape == "return"})
        told += [f"The {kind} seen end-on at the corner is laid with {other}: it is that wall's turn to run through."
                 for other in others]
        if steps[0].stage == "lead" and self._meets_another(steps[0]):
            told.append("Both walls' leads at this corner go up together.")
        return " ".join(told)

    def _tell_lead(self, steps: list[Step]) -> str:
        count = _count(steps)
        if not count:
            return "Nothing of this wall's own here."
        return (f"{count}, from the {steps[0].side} end inwards. Set the height from the story pole, then make it level and "
                "plumb.")

    def _tell_fill(self, steps: list[Step]) -> str:
        count, to_line = _count(steps), " to the line" if self.leads else ""
        if not count:
            return "Nothing of this wall's own here."
        if not self.leads:
            return f"{count}. The wall is too short for leads: lay each course by the level, and look that it is plumb."
        if any(step.closure for step in steps):
            return (f"{count}{to_line}, from both sides towards the middle. The last one is the closure: butter both its "
                    "ends and both its neighbours.")
        return f"{count}{to_line}, left to right."

    def _meets_another(self, step: Step) -> bool:
        return any(other.piece.shape == "return" and other.side == step.side for other in self.leads)


def _count(steps: list[Step]) -> str:
    own = sum(step.piece.shape != "return" for step in steps)
    return f"{own} {'piece' if own == 1 else 'pieces'}" if own else ""
