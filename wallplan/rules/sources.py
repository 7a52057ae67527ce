"""Where each rule comes from, as the findings cite it."""

COVER = "common practice, no source: a run is filled exactly, end to end"
HEAD_JOINTS = (
    "the plan's limits; TMS 602 as summarised by the Mason Contractors Association lets a head joint be 1/4 in. "
    "tighter or 3/8 in. wider than specified, https://masoncontractors.org/technical-talks/construction-tolerances"
)
BEDS = (
    "the plan's limits; TMS 602 as summarised by the Mason Contractors Association: bed joint 3/8 in., 1/8 in. more or "
    "less, first bed 1/4 to 3/4 in., https://masoncontractors.org/technical-talks/construction-tolerances"
)
COURSING = (
    "common practice, no source: courses are level and close on the wall's height, and no unit is taller than it is made"
)
LAP = (
    "the plan's least lap; TMS 402: in running bond head joints in successive courses are offset at least a quarter "
    "of the unit's length, http://www.masonryconstruction.com/how-to/reinforcing-walls_o (1999 code)"
)
LEAST_PIECE = "the plan's least piece; common practice, no source: slivers under a quarter of a unit are avoided"
PLUMB = "TMS 602 (from memory): head joints and cells line up plumb; common practice for the exceptions, no source"
BEARING = (
    "the plan's bearing; 4 in. typical minimum, NCMA TEK 17-1B (2001); 1 in. a foot of clear span and not under 6 in., "
    "PCA handbook, http://www.masonryconstruction.com/how-to/concrete-masonry-lintels_o; in metric 100 mm, over 1.2 m of "
    "opening 150 mm, NHBC 6.1.12 (nhbc-standards.co.uk, 2020)"
)
OPENINGS = "common practice, no source: masonry meets the sill, and the lintel stands on the head"
CONTROL = "the plan; common practice, no source: a control joint is one straight joint through every course"
APART_BLOCK = (
    "NCMA TEK 10-2B (2005): control joints 1 1/2 times the wall's height apart (from memory) and 25 ft at most, with "
    "reinforcement in the beds; the designer's choice"
)
APART_BRICK = (
    "BIA Technical Note 18A (2006): expansion joints 25 ft apart at most, 20 ft with many openings; the designer's choice"
)
APART_METRIC = (
    "PD 6697 (from memory): joints that move 12 m apart at most in clay brick, 6 m in concrete block; the designer's choice"
)
STEPS = (
    "common practice, no source: footings step by whole courses and half units, a unit bridges each riser, raked cuts are "
    "sawn in left and right pairs"
)
CORNERS = (
    "NAVEDTRA 14043 (from memory): at a corner units of alternate courses run through, so that the walls are toothed "
    "together; common practice"
)
HEADERS = (
    "a closer stands next to the quoin header, https://chestofbooks.com/architecture/Building-Construction-5/; lap a "
    "quarter, closer (102.5 - 10) / 2 = 46 mm, http://zhclg.com/brickwork-bricklaying/queen-closer.htm"
)
HEADER_TIES = (
    "TMS 402, empirical design (from memory): where headers tie two leaves, they are 4 percent of each face at least, no "
    "farther than 24 in. apart up and along; the designer's choice"
)
IN_PLAN = "common practice, no source: two units cannot stand in one place, and what is no unit and no opening is a joint"
TIES = (
    "TMS 402 5.1.1.2 (from memory): walls that intersect are tied by half of their units interlocked, or by straps of "
    "1/4 x 1 1/2 x 28 in. at no more than 4 ft, or by bond beams; the designer's choice"
)
PIER_TIES = "common practice, no source: a pier is bonded in, units of every other course going through the wall's face"
PIER_LAP = "the plan's least lap; common practice, no source: no joint shows over a joint on a pier's faces"
UNITS = (
    "common practice, no source: bond-beam units in bond beams, lintel units on a head and its bearings, corner units where "
    "a plain end shows, sash units at control joints"
)
LETTERS = "common practice, no source: one letter for each size that is sawn, and one size to a letter"
