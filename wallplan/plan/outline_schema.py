"""The keys of a plan file that say where a wall is no rectangle: steps of its footing and of its top, and gables."""

from wallplan.plan.table import REQUIRED, Length, Table
from wallplan.plan.table import write_key as _key

MOST_STEPS = 100


class StepTable(Table):
    """A step of the wall's footing: under its wall, each below a heading of its own. Heights go from the lowest footing."""

    at: Length = _key("From the wall's left end to the riser's face.", "\"10'\"", REQUIRED)
    up: Length = _key("How much higher the footing is to the right of it.", "'8\"'", "down")
    down: Length = _key("How much lower the footing is to the right of it.", "'8\"'", "up")


class TopStepTable(Table):
    """A step of the wall's top: under its wall, each below a heading of its own."""

    at: Length = _key("From the wall's left end to the end of the courses that stop there.", "\"12' 8\"", REQUIRED)
    up: Length = _key("How much higher the wall is to the right of it.", "'8\"'", "down")
    down: Length = _key("How much lower the wall is to the right of it.", "'16\"'", "up")


class GableTable(Table):
    """A gable on top of the wall: under its wall, below a heading of its own. The wall's height is that of the eaves."""

    from_left: Length = _key("From the wall's left end to the gable's left foot.", "\"4'\"", "0")
    width: Length = _key("From its left foot to its right one.", "\"24'\"", "to the wall's right end")
    rise: Length = _key("From the eaves to the ridge.", "\"8'\"", "from pitch")
    pitch: str | None = _key(
        "In place of a rise: inches up to 12 inches along, or degrees.", '"8/12"', "from rise")
    ridge: Length = _key(
        "From the gable's left foot to the ridge: 0 or the width for a roof of one slope.", "\"12'\"", "the middle")
