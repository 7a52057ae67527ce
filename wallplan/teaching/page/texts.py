"""Words of the page, each sentence kept once: pieces and courses name them by their place in one list."""

from __future__ import annotations

from wallplan.catalogue.unit import Unit
from wallplan.layout.model import Piece
from wallplan.lengths import Measure, print_length, print_size
from wallplan.lists import sawn_size
from wallplan.plan.job import Job

SIZES = {"full": "full", "three-quarter": "three-quarter", "half": "half", "quarter": "quarter"}
FACES = {"return": "end-on", "precast": "lintel", "lintel": "lintel", "bond beam": "beam"}
SHAPES = {"corner": "corner unit", "corner L": "L corner unit",
          "sash": "sash unit", "bond beam": "bond-beam unit", "lintel": "lintel unit"}


class Texts:
    """A list of sentences that holds each of them once."""

    def __init__(self) -> None:
        """An empty list."""
        self._places: dict[str, int] = {}

    def keep(self, text: str) -> int:
        """The place of a sentence in the list; it is added where it is new."""
        return self._places.setdefault(text, len(self._places))

    def all(self) -> list[str]:
        """The sentences by their places."""
        return list(self._places)


def name_piece(piece: Piece, unit: Unit) -> str:
    """What a mason calls a piece: "Half block, corner unit", "Cut A", "End of a block of Road side"."""
    if piece.shape == "return":
        return f"End of a {unit.kind} of {piece.of}"
    if piece.shape == "precast":
        return "Precast lintel"
    if piece.leaf is not None:
        return _name_brick(piece)
    low = piece.height < unit.height
    if piece.rake is not None or piece.notch is not None:
        name = f"{'raked' if piece.rake is not None else 'notched'} {unit.kind} {piece.mark or ''}".rstrip()
    elif piece.mark is not None:
        name = f"Cut {piece.mark}" if piece.piece == "cut" else f"Ripped {SIZES[piece.piece]} {unit.kind} {piece.mark}"
    else:
        name = f"{'Half-high ' if low else ''}{SIZES.get(piece.piece, 'cut')} {unit.kind}"
    shape = SHAPES.get(piece.shape)
    return name[:1].upper() + name[1:] + (f", {shape}" if shape else "")


def _name_brick(piece: Piece) -> str:
    """What a brick of a wall one brick thick is called: "Header", "Queen closer A", "Cut B, in a pair"."""
    if piece.shape == "closer":
        return f"Queen closer {piece.mark or ''}".rstrip()
    if piece.shape == "header" or piece.piece == "full":
        return "Header" if piece.shape == "header" else "Stretcher"
    return f"Cut {piece.mark}, in a pair" if piece.mark else f"{piece.piece.capitalize()} brick, in a pair"


def label_piece(piece: Piece) -> str:
    """The word that fits on a piece's face: full, half, its cut's letter, or what it is in the wall."""
    if piece.shape in ("return", "precast"):
        return FACES[piece.shape]
    if piece.mark is not None:
        return f"cut {piece.mark}" if piece.shape != "closer" else f"{piece.mark}"
    if piece.leaf is not None and piece.piece == "full":
        return piece.shape
    if piece.shape in FACES:
        return FACES[piece.shape]
    return {"three-quarter": "3/4", "quarter": "1/4"}.get(piece.piece, piece.piece)


def style_piece(piece: Piece) -> str:
    """How a piece is drawn: whole, part (a stock length under the full one), cut or apart (another wall's, precast)."""
    if piece.shape in ("return", "precast"):
        return "apart"
    if piece.mark is not None or piece.piece == "cut":
        return "cut"
    return "whole" if piece.piece == "full" else "part"


def tell_length(ticks: int, measure: Measure) -> str:
    """A distance or a height in words: feet and inches, or millimetres with their name."""
    return print_length(ticks, measure) + ("" if measure == "feet" else " mm")


def tell_size(piece: Piece, measure: Measure) -> str:
    """Length and height of a piece in words; both lengths of a raked one, the notch of a notched one."""
    if piece.rake is not None or piece.notch is not None:
        return sawn_size.tell_size(piece, measure, piece.height)
    return f"{print_size(piece.length, measure)} long, {print_size(piece.height, measure)} high"


def tell_unit(job: Job) -> str:
    """The unit with its three sizes, the bond and the joint, as one line."""
    masonry, measure = job.masonry, job.measure
    unit = masonry.unit
    sizes = " × ".join(print_size(size, measure) for size in (unit.length, unit.height, unit.thickness))
    bond = masonry.bond_name
    return f"{unit.name}, {sizes} (long × high × thick), {bond}, joints of {print_size(masonry.joint, measure)}"
