"""What is built in with the units: joint reinforcement, gaskets and ties, only where the plan asks for them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from wallplan.layout.model import Course, Layout, WallLayout
from wallplan.lengths import print_size
from wallplan.lists.order.figures import scale_of, settle, settle_up, show
from wallplan.lists.order.line import Line
from wallplan.lists.order.steel import find_runs, print_bar, splice
from wallplan.lists.order.tied import order_tied
from wallplan.lists.order.units import add_spare


def order_built_in(layout: Layout) -> Iterator[Line]:
    """Lines of what is built in; none where the plan asks for nothing."""
    yield from _order_reinforcement(layout)
    yield from _order_gasket(layout)
    yield from _order_steel_lintels(layout)
    yield from _order_ties(layout)
    yield from order_tied(layout)


def _order_reinforcement(layout: Layout) -> Iterator[Line]:
    job, steel, scale = layout.job, layout.job.order.steel, scale_of(layout.job.measure)
    courses = _reinforced(layout)
    runs = [run for wall, course in courses
            for run in find_runs(course.pieces, job.masonry.widest_joint, wall.wall.control_joints)]
    if not runs:
        return
    laps = sum(splice(run, steel.reinforcement_stock, steel.reinforcement_lap)[0] for run in runs)
    length, lap, stock = (scale.run_of(ticks) for ticks in (sum(runs), steel.reinforcement_lap, steel.reinforcement_stock))
    total = settle(length + laps * lap, 2)
    net = settle(total / stock, 2)
    order = settle_up(total / stock)
    name = f"joint reinforcement, {print_bar(steel.reinforcement_stock, job)} long"
    why = (f"in the bed under {len(courses)} courses, every {steel.reinforcement_courses} of a wall, parted at "
           f"control joints: {show(length)} "
           f"{scale.run}; laps {laps} x {show(lap)} = {show(laps * lap)}; {show(length)} + "
           f"{show(laps * lap)} = {show(total)}; {show(total)} / {show(stock)} = {show(net)}, up to {show(order)}; "
           f"{show(order)} - {show(net)} = {show(order - net)}; what is left of one is lapped into the next")
    yield Line("steel", name, "each", net, order - net, why, job.order.of(name).price)


def _reinforced(layout: Layout) -> list[tuple[WallLayout, Course]]:
    """Courses with joint reinforcement under them: it lies on every so many courses, never on the footing.

    It stops at control joints (common practice, no source).
    """
    every = layout.job.order.steel.reinforcement_courses
    if every is None:
        return []
    above = ((wall, course) for wall in layout.walls for course in wall.courses if course.number > 1)
    return [(wall, course) for wall, course in above if (course.number - 1) % every == 0]


def _order_gasket(layout: Layout) -> Iterator[Line]:
    job, scale = layout.job, scale_of(layout.job.measure)
    joints = sorted(Counter(scale.run_of(_joint_height(wall, at, job.masonry.widest_joint))
                            for wall in layout.walls for at in wall.wall.control_joints).items(), reverse=True)
    net = sum((count * height for height, count in joints), Fraction(0))
    if not job.order.steel.gasket or not net:
        return
    order = settle_up(net)
    terms = " + ".join(f"{count} x {show(height)}" for height, count in joints)
    yield Line("other", "control-joint gasket", scale.run, net, order - net,
               f"joints x height: {terms} = {show(net)} {scale.run}, up to {show(order)}; "
               f"{show(order)} - {show(net)} = {show(order - net)}", job.order.of("control-joint gasket").price)


def _joint_height(wall: WallLayout, at: int, widest: int) -> int:
    """Height of a control joint in ticks: of the courses that have pieces on both sides of it, with their beds."""
    return sum(course.top - course.bottom for course in wall.courses
               if any(at - widest <= piece.right <= at for piece in course.pieces)
               and any(at <= piece.left <= at + widest for piece in course.pieces))


def _order_steel_lintels(layout: Layout) -> Iterator[Line]:
    """Angles or plates by their length, no spare: the opening and its bearings. Their section is the designer's."""
    job = layout.job
    found = Counter(opening.right - opening.left + 2 * opening.bearing for wall in layout.walls
                    for opening in wall.wall.openings if opening.lintel == "steel")
    for length, count in sorted(found.items(), reverse=True):
        name = f"steel lintel {print_bar(length, job)} long"
        yield Line("other", name, "each", Fraction(count), Fraction(0),
                   f"openings with one, width and two bearings: counted in the layout {count}; no spare; its section is the "
                   "designer's", job.order.of(name).price)


def _order_ties(layout: Layout) -> Iterator[Line]:
    """Ties in the beds: one for each spacing begun, in every stretch of every so many courses."""
    job, steel = layout.job, layout.job.order.steel
    if steel.tie_courses is None:
        return
    found: Counter[int] = Counter()
    for wall in layout.walls:
        for course in wall.courses:
            if course.number % steel.tie_courses == 0:
                found.update(-(-run // steel.tie_spacing) for run in find_runs(course.pieces, job.masonry.widest_joint))
    if found:
        net = sum(count * ties for ties, count in found.items())
        terms = " + ".join(f"{count} x {ties}" for ties, count in sorted(found.items()))
        why = (f"on every {steel.tie_courses} courses of a wall, stretches x ties, a tie for each "
               f"{print_size(steel.tie_spacing, job.measure)} begun: {terms} = {net}")
        yield add_spare("other", "wall ties", "each", Fraction(net), why, job)
