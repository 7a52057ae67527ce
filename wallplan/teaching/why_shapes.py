"""Why a piece is another shape than a stretcher."""

from __future__ import annotations

from wallplan.layout.model import Piece
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Opening
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import WallRuns, is_at_end


def explain_shape(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """Why the piece is a return, a lintel, a bond-beam, sash or corner unit; () for a stretcher."""
    match piece.shape:
        case "return":
            return (_explain_return(runs, number, piece),)
        case "lintel" | "precast":
            return _explain_lintel(runs, number, piece)
        case "bond beam":
            return (Reason("bond beam", "Bond-beam unit: bars and grout lie in its channel, as the designer gives them."),)
        case "sash":
            return _explain_sash(runs, piece)
        case "corner L":
            return (Reason("corner L", "L corner unit: it turns the corner, so that the bond comes out on both walls."),)
        case "corner":
            return _explain_corner_unit(runs, number, piece)
        case _:
            return ()


def _explain_return(runs: WallRuns, number: int, piece: Piece) -> Reason:
    kind = "odd" if number % 2 else "even"
    joins = not is_at_end(runs.wall, piece) or piece.of in {abutment.meets for abutment in runs.wall.wall.abuts}
    place = "where the two join" if joins else "at this corner"
    return Reason("return", f"The end of a unit of {piece.of}, laid and counted there: in {kind} courses {piece.of} runs "
                            f"through {place}, in the others this wall does.")


def find_headed(runs: WallRuns, number: int, piece: Piece) -> tuple[Opening, int, int] | None:
    """The opening whose lintel a lintel piece belongs to, and where that lintel begins and ends, ticks."""
    course = runs.course(number)
    alike = sorted((other.left, other.right) for other in (course.pieces if course else ())
                   if other.shape == piece.shape and other.bottom == piece.bottom)
    widest = max(runs.job.masonry.widest_joint, runs.job.masonry.joint) + 2
    left, right = piece.left, piece.right
    for start, end in alike:
        right = max(right, end) if 0 < start - right <= widest else right
    for start, end in reversed(alike):
        left = min(left, start) if 0 < left - end <= widest else left
    heads = [opening for opening in runs.wall.wall.openings
             if opening.left < right and opening.right > left and opening.top <= piece.bottom + widest]
    if not heads:
        return None
    over = max(heads, key=lambda opening: (opening.top, -abs(opening.left + opening.right - piece.left - piece.right)))
    beside = [opening for opening in heads if opening.top == over.top]
    return (over, max([left, *(opening.right for opening in beside if opening.right <= over.left)]),
            min([right, *(opening.left for opening in beside if opening.left >= over.right)]))


def _explain_lintel(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    found = find_headed(runs, number, piece)
    measured = runs.job.measure
    kind, name = ("precast", "Precast lintel") if piece.shape == "precast" else ("lintel", "Lintel unit")
    if found is None:
        return (Reason("lintel", f"{name}."),)
    opening, left, right = found
    bears = opening.left - left, right - opening.right
    words = (f"{name} on the head of {opening.name}: the lintel bears {print_size(bears[0], measured)} on the left and "
             f"{print_size(bears[1], measured)} on the right; {print_size(opening.bearing, measured)} is asked for.")
    return (Reason("precast" if kind == "precast" else "lintel", words, (*bears, opening.bearing)),)


def _explain_sash(runs: WallRuns, piece: Piece) -> tuple[Reason, ...]:
    place = min(runs.wall.wall.control_joints, default=None,
                key=lambda place: min(abs(place - piece.left), abs(place - piece.right)))
    if place is None:
        return ()
    return (Reason("sash", f"Sash unit: its groove takes the gasket of the control joint at "
                           f"{print_length(place, runs.job.measure)}.", (place,)),)


def _explain_corner_unit(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    run = runs.run_of(number, piece)
    shown = [end.words for end, own in ((run.start, piece == run.pieces[0]), (run.end, piece == run.pieces[-1]))
             if own and end.kind in ("end", "jamb")]
    if shown:
        return (Reason("corner unit", f"Corner unit: its plain end shows at {' and at '.join(shown)}."),)
    return (Reason("corner unit", "Corner unit: it has a plain end."),)
