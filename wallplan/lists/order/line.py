"""One line of the order, and the whole order: values only."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from wallplan.layout.model import Shape
from wallplan.lengths import to_mm
from wallplan.lists.order.figures import plain
from wallplan.lists.order.nesting import Nesting
from wallplan.lists.order.patterns import PLAIN

Group = Literal["units", "mortar", "grout", "steel", "other"]
GROUPS: tuple[Group, ...] = ("units", "mortar", "grout", "steel", "other")


@dataclass(frozen=True)
class Line:
    """What to order: ``net`` is what the layout takes, ``spare`` all that is ordered over it, ``order`` the two together.

    ``why`` gives every sum, so that a pencil comes to the same. ``price`` is of one, None where the plan gives none.
    """

    group: Group
    item: str
    measure: str
    net: Fraction
    spare: Fraction
    why: str
    price: Fraction | None = None

    @property
    def order(self) -> Fraction:
        """What to order: net and spare."""
        return self.net + self.spare

    @property
    def cost(self) -> Fraction | None:
        """The price of all that is ordered, None where the plan gives no price."""
        return None if self.price is None else self.price * self.order

    def as_json(self) -> dict[str, object]:
        """The line as plain values."""
        return {"group": self.group, "item": self.item, "measure": self.measure, "net": plain(self.net),
                "spare": plain(self.spare), "order": plain(self.order), "why": self.why}


class Sawn(NamedTuple):
    """Units sawn alike: into which cuts (name and shape, in the order in which they are sawn), how many units, from which
    stock piece and shape; ticks lost of each.

    Of a rip, a unit stands here for a strip of it.
    """

    kinds: tuple[tuple[str, Shape], ...]
    times: int
    piece: str
    shape: str
    length: int
    kerf: int
    offcut: int

    @property
    def cuts(self) -> tuple[str, ...]:
        """The names of the cuts."""
        return tuple(name for name, _ in self.kinds)


class Ripped(NamedTuple):
    """Units of one shape that are ripped: strips wanted, how many of them other units leave over, and units."""

    shape: str
    strips: int
    reused: int
    units: int


@dataclass(frozen=True)
class Sawing:
    """What is sawn from units of one kind. ``half_high`` units keep their height, as full ones do.

    ``rip`` is the height of strips in ticks, None where nothing is ripped; ``strips`` how many a unit gives, else 1.
    """

    half_high: bool
    rip: int | None
    strips: int
    nesting: Nesting
    sawn: tuple[Sawn, ...]

    def rip_units(self) -> tuple[Ripped, ...]:
        """Units ripped, a shape at a time, stretchers last: they take the strips that other shapes leave over first."""
        ripped: list[Ripped] = []
        for shape in sorted({sawn.shape for sawn in self.sawn}, key=lambda shape: (shape == PLAIN, shape)):
            strips = sum(sawn.times for sawn in self.sawn if sawn.shape == shape)
            left = sum(one.units * self.strips - one.strips for one in ripped)
            reused = min(left, strips) if shape == PLAIN else 0
            ripped.append(Ripped(shape, strips, reused, -(-(strips - reused) // self.strips)))
        return tuple(ripped)


DUES = ("leads", "lintels", "bond beam", "steel", "grout", "scaffold", "brace")
DueKind = Literal["leads", "lintels", "bond beam", "steel", "grout", "scaffold", "brace"]


class Due(NamedTuple):
    """What falls due with a day's courses: its kind, what stands in a table (course numbers, a volume), and the words."""

    kind: DueKind
    figure: str
    words: str


@dataclass(frozen=True)
class DayRow:
    """A stretch of one day's work: which courses of which wall, units, batches, from which height to which (ticks).

    ``lift`` counts the wall's days. ``pour`` is the grout to be poured on these courses and those under them since the last
    pour, net in the measure's volume; None where nothing is poured, or where the unit's void is not known.
    """

    day: int
    wall: str
    lift: int
    courses: tuple[int, int]
    units: int
    batches: Fraction
    bottom: int
    height: int
    pour: Fraction | None
    dues: tuple[Due, ...]

    @property
    def due(self) -> tuple[str, ...]:
        """What is due, in words."""
        return tuple(due.words for due in self.dues)

    def as_json(self) -> dict[str, object]:
        """The stretch as plain values; heights in millimetres."""
        return {"day": self.day, "wall": self.wall, "lift": self.lift, "courses": list(self.courses), "units": self.units,
                "batches": plain(self.batches), "from_mm": to_mm(self.bottom), "to_mm": to_mm(self.height),
                "grout": None if self.pour is None else plain(self.pour), "due": list(self.due)}


@dataclass(frozen=True)
class Order:
    """Everything to order for a job, with how cuts are nested, the batch, the days, and what must be said.

    ``days`` fall as they do at the least output; at the most there are ``fewest_days``.
    """

    title: str
    lines: tuple[Line, ...]
    sawings: tuple[Sawing, ...]
    batch: tuple[tuple[str, str], ...]
    days: tuple[DayRow, ...]
    notes: tuple[str, ...]
    currency: str
    fewest_days: int = 0

    def as_json(self) -> dict[str, object]:
        """The order for other programs."""
        return {"wallplan_order": 1, "lines": [line.as_json() for line in self.lines],
                "batch": dict(self.batch), "days": [row.as_json() for row in self.days], "notes": list(self.notes)}
