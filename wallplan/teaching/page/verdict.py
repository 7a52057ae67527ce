"""What the rules of ``check`` say of a pick, in words for the one who made it."""

from __future__ import annotations

from typing import Literal, NamedTuple

from wallplan.findings import Finding, RuleName
from wallplan.layout.model import Piece
from wallplan.lengths import print_size
from wallplan.rules.as_laid import ROUNDING
from wallplan.teaching.page.bench import Bench
from wallplan.teaching.why import why_piece
from wallplan.teaching.why_headers import find_breaks, is_of_headers

Kind = Literal["right", "dearer", "wrong"]
Fault = Literal["", "more pieces", "too long", "sliver", "straight joint", "short lap", "sliver next", "gap", "out of plumb",
                "out of turn", "closer out of place",
                "joint above"]

ORDER: tuple[RuleName, ...] = ("cover", "least piece", "lap", "joints", "headers", "plumb")


class Verdict(NamedTuple):
    """What a pick does: ``rule`` and ``at`` (ticks from the left end) are those of the first rule that it breaks."""

    kind: Kind
    fault: Fault
    rule: RuleName | None
    at: int | None
    words: str


def judge(bench: Bench, length: int) -> Verdict | None:
    """The verdict on a piece of ``length`` ticks; None for one that is no worse than the layout's own."""
    piece = bench.piece
    if abs(length - piece.length) <= ROUNDING:
        return Verdict("right", "", None, None, _tell_right(bench))
    laid = bench.lay(length)
    broken = bench.find_breaks(laid)
    if broken:
        first = min(broken, key=lambda finding: (_beside(bench, finding, length), ORDER.index(finding.rule)))
        fault = _name_fault(bench, first, length)
        at = bench.piece.left + length if fault == "out of plumb" else first.at  # which line is off, more courses would tell
        return Verdict("wrong", fault, first.rule, at, _tell_wrong(bench, first, fault, length))
    clash = bench.find_clash_above(laid)
    if clash is not None:
        return Verdict("wrong", "joint above", clash.rule, clash.at, _tell_clash(bench, clash))
    return _compare(bench, laid, length)


def _beside(bench: Bench, finding: Finding, length: int) -> int:
    """0 for a place at the piece itself, 1 for what comes of it farther on, 2 for what has no place."""
    if finding.at is None:
        return 2
    left, right = bench.piece.left - ROUNDING, bench.piece.left + length + ROUNDING
    return 0 if left <= finding.at <= right or finding.rule == "cover" else 1


def _name_fault(bench: Bench, finding: Finding, length: int) -> Fault:
    match finding.rule:
        case "lap":
            return "straight joint" if finding.figure == print_size(0, bench.job.measure) else "short lap"
        case "least piece":
            at_piece = finding.at is not None and abs(finding.at - bench.piece.left) <= ROUNDING
            if length > bench.job.masonry.unit.length and at_piece:
                return "too long"
            return "sliver" if at_piece else "sliver next"
        case "cover":
            return "too long" if bench.piece.left + length > bench.run.right else "gap"
        case "joints":
            return "gap"
        case "headers":
            return "closer out of place" if "closer" in finding.figure else "out of turn"
        case _:
            return "out of turn" if bench.job.masonry.one_brick else "out of plumb"


def _tell_wrong(bench: Bench, finding: Finding, fault: Fault, length: int) -> str:
    measure, masonry = bench.job.measure, bench.job.masonry
    below, end = f"course {bench.course - 1}", bench.run.end.words
    over = bench.piece.left + length - bench.run.right
    match fault:
        case "straight joint":
            return (f"Straight joint: a joint here would stand right over the joint in {below}, and a wall opens along "
                    f"joints in line. The lap must be {finding.limit} at least; here it is none.")
        case "short lap":
            return (f"Too little lap: this brings a joint only {finding.figure} from a joint in {below}. "
                    f"The lap must be {finding.limit} at least.")
        case "sliver":
            return (f"Sliver: with its joint it fills only {finding.figure}, and nothing under {finding.limit} is laid in "
                    "this wall. Short pieces break in the saw and show in the wall.")
        case "sliver next":
            return (f"It leaves a sliver behind it: what comes next would have only {finding.figure} with its joint, and "
                    f"nothing under {finding.limit} is laid. Look ahead to {end}: two longer pieces are better than a "
                    "sliver.")
        case "too long" if length > masonry.unit.length + ROUNDING:
            return f"No {masonry.unit.kind} is so long: a full one is {print_size(masonry.unit.length, measure)}."
        case "too long":
            return (f"Too long: it would reach {print_size(over, measure)} past {end}. "
                    f"There is room for {print_size(bench.run.right - bench.piece.left, measure)}.")
        case "gap":
            return _tell_gap(bench, length)
        case "closer out of place":
            return ("Closer out of place: it stands beside the header at an end or a jamb and nowhere else, never at the "
                    "end itself.")
        case "out of turn":
            return f"Out of turn: {_tell_turn(bench)} A joint here leaves the line of the other courses of its kind."
        case _:
            kind = "odd" if bench.course % 2 else "even"
            return (f"Out of plumb: the {kind} courses share their joints, one straight above the other from the footing "
                    f"up. A joint here leaves that line.")


def _tell_turn(bench: Bench) -> str:
    """How the bond goes in this course, in a sentence."""
    if bench.job.masonry.bond == "flemish":
        return "in Flemish bond headers and stretchers take turns in every course."
    if bench.job.masonry.bond == "flemish garden wall":
        return "in Flemish garden wall bond a header follows three stretchers."
    of = "headers" if is_of_headers(bench.runs, bench.run) else "stretchers"
    return f"in {bench.job.masonry.bond_name} this is a course of {of}."


def _tell_gap(bench: Bench, length: int) -> str:
    measure, masonry = bench.job.measure, bench.job.masonry
    short = bench.run.right - bench.piece.left - length
    if 0 < short <= masonry.unit.length:
        return (f"Too short: it would leave {print_size(short, measure)} open to {bench.run.end.words}. The last piece of a "
                f"run fills what is left: {print_size(bench.run.right - bench.piece.left, measure)}.")
    limits = f"{print_size(masonry.tightest_joint, measure)} to {print_size(masonry.widest_joint, measure)}"
    return f"The joints would not come out: each must be {limits} wide, and all of a run alike."


def _tell_clash(bench: Bench, finding: Finding) -> str:
    straight = finding.figure == print_size(0, bench.job.measure)
    near = "right over this one" if straight else f"only {finding.figure} from this one"
    return (f"Nothing below forbids this joint, but think of course {bench.course + 1}: there a joint is to stand {near}, "
            f"and the lap must be {finding.limit} at least.")


def _tell_right(bench: Bench) -> str:
    longest = "The longest piece there is. " if bench.piece.piece == "full" and bench.piece.leaf is None else ""
    return f"Right. {longest}{why_piece(bench.runs, bench.course, bench.piece)}"


def _compare(bench: Bench, laid: tuple[Piece, ...], length: int) -> Verdict | None:
    """A pick that breaks nothing: what it costs more than the layout's own, or None where it costs nothing."""
    if bench.job.masonry.one_brick:
        return _compare_bond(bench, laid, length)
    cuts = [sum(piece.mark is not None for piece in pieces) for pieces in (bench.run.pieces, laid)]
    more, pieces = cuts[1] - cuts[0], len(laid) - len(bench.run.pieces)
    if more < 0 or (more == 0 and pieces <= 0):
        return None
    cost = [f"{more} more {'cut' if more == 1 else 'cuts'}"] if more else []
    cost += [f"{pieces} more {'piece' if pieces == 1 else 'pieces'} to lay"] if pieces > 0 else []
    words = (f"No rule is broken so far, but it costs {' and '.join(cost)} than need be. "
             "Lay the longest piece that the bond and the course below allow.")
    return Verdict("dearer", "more pieces", None, bench.piece.left + length, words)


def _compare_bond(bench: Bench, laid: tuple[Piece, ...], length: int) -> Verdict | None:
    """A brick that breaks no rule: whether it leaves the bond where the layout's own keeps it; None where it does not."""
    out = len(find_breaks(bench.runs, bench.run._replace(pieces=laid))) - len(find_breaks(bench.runs, bench.run))
    cuts = sum(piece.mark is not None for piece in laid) - sum(piece.mark is not None for piece in bench.run.pieces)
    if out <= 0 and cuts <= 0:
        return None
    cost = f" It costs {cuts} more {'cut' if cuts == 1 else 'cuts'} than need be." if cuts > 0 else ""
    words = f"No rule is broken so far, but {'the bond is: ' + _tell_turn(bench) if out > 0 else 'it is dear.'}{cost}"
    return Verdict("dearer", "out of turn" if out > 0 else "more pieces", None, bench.piece.left + length, words)
