"""``[[wall.pier]]`` of piers wider or thicker than their wall: what is read, and every mistake in a line of its own."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.plan.kiosk import mistakes_in
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.job import Pier
from wallplan.plan.load import read_plan

HEAD = 'title = "Slipway wall"\nmeasure = "metric"\n[masonry]\nunit = "{}"\n[[wall]]\nname = "Wall"\nlength = 5000\ncourses = 12\n'
GATE = '[[wall.opening]]\nname = "Gate"\nfrom_left = 1000\nwidth = 900\nheight = 900\nlintel = "none"\n'


def plan(*piers: str, unit: str = "brick-uk", more: str = "") -> str:
    """A wall of UK brick with these piers, each its keys."""
    return HEAD.format(unit) + more + "".join(f"[[wall.pier]]\n{pier}\n" for pier in piers)


def mm(value: str) -> int:
    return int(Fraction(value) * TICKS_PER_MM)


def told(*piers: str, unit: str = "brick-uk", more: str = "") -> list[str]:
    """Each mistake without its line and wall."""
    return [f"{place.split(', ')[1]}: {message}" for _, place, message in mistakes_in(plan(*piers, unit=unit, more=more))]


@pytest.mark.parametrize(("keys", "pier"), [
    # A half-brick wall is 102.5 thick; 215 - 102.5 = 112.5, 440 - 102.5 = 337.5, of which each face has half.
    ("from_left = 500\nwidth = 215", ("500", "215", "0", "112.5")),
    ('from_left = 0\nwidth = 440\nface = "outside"', ("0", "440", "337.5", "0")),
    ('from_left = 500\nwidth = 440\nface = "both"', ("500", "440", "168.75", "168.75")),
    ("from_left = 500\nwidth = 440\ndepth = 215", ("500", "440", "0", "112.5")),
    ("from_left = 500\nwidth = 440\nprojects = 225", ("500", "440", "0", "225")),
    ('from_left = 500\ndepth = "327.5 mm"\nface = "both"', ("500", "327.5", "112.5", "112.5")),
    ("from_left = 500\nwidth = 328", ("500", "327.5", "0", "225")),
])
def test_a_pier_is_read(keys: str, pier: tuple[str, str, str, str]) -> None:
    (wall,) = read_plan(plan(keys), "wall.toml").walls
    assert wall.piers == (Pier("Wall, pier 1", *(mm(size) for size in pier)),)


def test_nominal_sizes_count_a_joint() -> None:
    text = plan('from_left = "8\'"\nwidth = "16"\ndepth = "12"', unit="block-8").replace('"metric"', '"feet"\nsizes = "nominal"')
    (pier,) = read_plan(text.replace("5000", '"20\'"'), "wall.toml").walls[0].piers
    # 16 in. less a joint wide; 12 in. less a joint through, of which the wall takes 7 5/8.
    assert (pier.left, pier.width, pier.back) == (96 * TICKS_PER_INCH, 125 * TICKS_PER_INCH // 8, 4 * TICKS_PER_INCH)


def test_a_pier_as_wide_as_the_wall_is_thick_is_still_a_short_wall() -> None:
    job = read_plan(plan("from_left = 500", "from_left = 1500\nprojects = 225"), "wall.toml")
    assert job.walls[0].piers == ()
    assert [wall.abuts[0].tie for wall in job.walls[1:]] == ["interlocked", "interlocked"]


def test_piers_are_kept_from_left_to_right_and_where_walls_go_straight_on() -> None:
    text = plan("from_left = 1500\nwidth = 215", "from_left = 500\nwidth = 440", more='right = "straight"\n')
    text += '[[wall]]\nname = "More"\nlength = 4000\ncourses = 12\nleft = "straight"\n[[wall.pier]]\nfrom_left = 700\nwidth = 215\n'
    (wall,) = read_plan(text, "wall.toml").walls
    assert [(pier.name, pier.left) for pier in wall.piers] == [
        ("Wall, pier 2", mm("500")), ("Wall, pier 1", mm("1500")), ("More, pier 1", mm("5700"))]


@pytest.mark.parametrize(("keys", "message"), [
    # Whole cells of 56.25 less a joint: 215 and 327.5 (with a depth that is as odd, no bricks fill 271.25 squared).
    ("from_left = 500\nwidth = 300", "width: 300 mm is filled by no whole, half and quarter units with their joints; the nearest "
     "are 215 mm and 327.5 mm"),
    ("from_left = 500\nwidth = 215\ndepth = 290\nface = \"both\"", "depth: 290 mm is filled by no whole, half and quarter units "
     "with their joints; the nearest are 215 mm and 327.5 mm"),
    ("from_left = 500\nwidth = 215\nprojects = 100", "projects: 100 mm is filled by no whole, half and quarter units with their "
     "joints; the nearest are 56.25 mm and 112.5 mm"),
    ("from_left = 500\nwidth = 215\ndepth = 90", "depth: 90 mm is no thicker than the wall, which is 102.5 mm; write more, or leave "
     "the pier out"),
    ("from_left = 500\nwidth = 90", "depth: missing: as deep as it is wide, 90 mm, the pier is no thicker than the wall, which is "
     "102.5 mm; write depth or projects"),
    ("from_left = 500\nwidth = 215\ndepth = 215\nprojects = 112", "projects: depth says already how far the pier stands out; leave "
     "one of the two out"),
    ("from_left = 500\nface = \"both\"", "width: missing, and so is depth; a pier on both faces needs one of them: write "
     "width = \"215\""),
    # Two and three quarter bricks by two and a half, 281.25 in front of the wall: each course would be sawn.
    ("from_left = 500\nwidth = 552.5\ndepth = 383.75", "width: a pier wider than 496.25 mm is laid of whole and half units alone, "
     "and they do not fill this one without sawing; write 496.25 or less, or change its depth"),
    ("from_left = 500\nwidth = 890", "width: piers are laid up to 665 mm; write a smaller one"),
    ("from_left = 4700\nwidth = 440", "from_left: the pier reaches 140 mm past the wall's right end at 5000 mm; write 4560 mm for a "
     "pier at that end, or less"),
    ("from_left = 30\nwidth = 215", "from_left: 30 mm of wall are left between the pier and the wall's left end; leave none, or "
     "67 mm at least"),
    ("width = 215", "from_left: missing; write from_left = \"7' 8\""),
    ('from_left = "far"\nwidth = 215', 'from_left: "far" is not a length'),
])
def test_each_mistake_is_told(keys: str, message: str) -> None:
    (found,) = told(keys)
    assert found.startswith(f"pier 1: {message}")


def test_a_pier_stands_in_no_opening_and_beside_one_leaves_none_or_a_piece() -> None:
    (over,) = told("from_left = 1200\nwidth = 215", more=GATE)
    assert over == ('pier 1: from_left: the pier, from 1200 mm to 1415 mm, stands in opening "Gate", from 1000 mm to 1900 mm; move '
                    "one of them")
    (near,) = told("from_left = 765\nwidth = 215", more=GATE)
    assert near == ('pier 1: from_left: 20 mm of wall are left between the pier and opening "Gate"; leave none, so that the pier is '
                    "the jamb, or 67 mm at least")
    assert read_plan(plan("from_left = 785\nwidth = 215", more=GATE), "wall.toml").walls[0].piers[0].right == mm("1000")


def test_a_control_joint_runs_up_a_piers_face_or_keeps_clear() -> None:
    (amiss,) = told("from_left = 2450\nwidth = 440", more="control_joints = [2500]\n")
    assert amiss == ("pier 1: from_left: the control joint at 2500 mm runs up in the pier or beside it; at the pier's face it stands "
                     "at 2445 mm or 2895 mm, else 67 mm away")
    for centre in (2445, 2895):
        job = read_plan(plan("from_left = 2450\nwidth = 440", more=f"control_joints = [{centre}]\n"), "wall.toml")
        assert job.walls[0].control_joints == (mm(str(centre)),)


def test_piers_keep_clear_of_one_another_and_have_names_of_their_own() -> None:
    assert told("from_left = 500\nwidth = 440", "from_left = 700\nwidth = 440") == [
        'pier 2: from_left: one place is taken by the pier and pier "Wall, pier 1"; leave 67 mm at least']
    assert told("from_left = 500\nwidth = 440", "from_left = 960\nwidth = 440") == [
        'pier 2: from_left: 20 mm of wall are left between the pier and pier "Wall, pier 1"; leave 67 mm at least']
    (alike,) = told('name = "Wall"\nfrom_left = 500\nwidth = 440')
    assert alike.startswith('pier "Wall": name: "Wall" is the name of another wall or pier')


def test_units_of_which_no_pier_bonds_are_refused() -> None:
    (amiss,) = told("from_left = 500\nwidth = 440", unit="block-uk-100")
    assert amiss.startswith("pier 1: width: block-uk-100 is not a quarter, a third, half or three quarters as thick as long")


def test_a_wall_of_one_course_ties_no_pier_in() -> None:
    text = plan("from_left = 500\nwidth = 440").replace("courses = 12", "courses = 1")
    ((_, _, message),) = mistakes_in(text)
    assert message.startswith("from_left: the wall is one course high, and a pier is tied in by every other course")


@pytest.mark.parametrize(("at", "told"), [
    ("0", '; for a pier at the end itself write its width, and depth or projects: width = "115"'),
    ("2375 mm", '; for a pier at the end itself write its width, and depth or projects: width = "115"'),
    ("20 mm", ""),
])
def test_a_pier_as_wide_as_the_wall_at_its_end_is_told_how_to_be_written(at: str, told: str) -> None:
    text = ('title = "Slip"\nmeasure = "metric"\n[masonry]\nunit = "brick-nf"\n[[wall]]\nname = "Slip"\nlength = "2490 mm"\n'
            f'courses = 4\n[[wall.pier]]\nfrom_left = "{at}"\nprojects = 125\n')
    ((_, place, message),) = mistakes_in(text)
    shown = "0 mm" if at == "0" else at
    assert (place, message) == ('wall "Slip", pier 1', f'from_left: {shown} leaves no piece between this pier and an end of wall '
                                f'"Slip"; write 73 mm to 2302 mm{told}')
    if told:
        assert read_plan(text + 'width = "115"\n', "plan.toml").walls[0].piers[0].width == 115 * 960
