"""Letters of cuts: every sawn piece has one, a letter is one saw setting over the whole job, and a setting one letter."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.findings import Finding
from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.lengths import Measure, print_size
from wallplan.rules.sources import LETTERS

SAWN = ("cut", "closer")

LIMIT = "one letter for each size that is sawn"

Setting = tuple[str, ...]


def check_letters(layout: Layout) -> tuple[Finding, ...]:
    """Each wall's letters against those of the whole job: held, or the first place of each that is wrong. () for no walls.

    Sizes that print alike are one; so are a piece and the same turned end for end.
    """
    by_letter, by_setting = dict[str, Setting](), dict[Setting, str]()
    return tuple(finding for wall in layout.walls for finding in _check(wall, layout.job.measure, by_letter, by_setting))


def _check(wall: WallLayout, measure: Measure, by_letter: dict[str, Setting],
           by_setting: dict[Setting, str]) -> Iterator[Finding]:
    letters, broken = set[str](), False
    for piece, course in _find_sizes(wall):
        figure = _judge(piece, measure, by_letter, by_setting)
        letters.update([piece.mark] if piece.mark else ())
        if figure:
            broken = True
            yield Finding("letters", False, wall.wall.name, course, piece.left, figure, LIMIT, LETTERS,
                          "letter the cuts anew by their sizes")
    if not broken:
        many = "letter" if len(letters) == 1 else "letters"
        told = f"{len(letters)} {many} for what is sawn" if letters else "nothing is sawn"
        yield Finding("letters", True, wall.wall.name, None, None, told, LIMIT, LETTERS, "")


def _find_sizes(wall: WallLayout) -> list[tuple[Piece, int]]:
    """A wall's pieces that are sawn or lettered, the lowest of each size and letter, with its course."""
    found: dict[object, tuple[Piece, int]] = {}
    for course in wall.courses:
        for piece in (*course.bricks, *wall.pier_pieces(course.number)):
            if piece.mark is not None or piece.piece in SAWN:
                kind = piece.mark, piece.piece, piece.length, piece.height, piece.rake, piece.notch
                found.setdefault(kind, (piece, course.number))
    return list(found.values())


def _judge(piece: Piece, measure: Measure, by_letter: dict[str, Setting], by_setting: dict[Setting, str]) -> str:
    """What is wrong with a piece's letter; "" for nothing. A letter and a setting that are new are noted."""
    size, setting = print_size(piece.length, measure), _set_saw(piece, measure)
    if piece.mark is None:
        return f"a {piece.piece} of {size} without a letter"
    if piece.piece not in SAWN:
        return f"a {piece.piece}, which is not sawn, lettered {piece.mark}"
    known, letter = by_letter.setdefault(piece.mark, setting), by_setting.setdefault(setting, piece.mark)
    if known != setting:
        return f"{piece.mark} is {size} by {setting[1]} here and {known[0]} by {known[1]} elsewhere"
    return "" if letter == piece.mark else f"{size} by {setting[1]} is {piece.mark} here and {letter} elsewhere"


def _set_saw(piece: Piece, measure: Measure) -> Setting:
    """All that the saw is set to, as printed, the same for a piece turned end for end."""
    lengths: list[int] = []
    if piece.rake is not None:
        lengths = [ticks for side in sorted([(piece.rake.left, piece.rake.top_left),
                                             (piece.rake.right, piece.length - piece.rake.top_right)]) for ticks in side]
    if piece.notch is not None:
        ends = sorted((piece.notch.left, piece.length - piece.notch.right))
        lengths += [piece.notch.height, *ends]
    return (*(print_size(ticks, measure) for ticks in (piece.length, piece.height, *lengths)), piece.piece)
