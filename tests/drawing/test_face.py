"""The inside face: turned round, cut off at corners by the thickness, told by the outside's distances."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.jobs import inches
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.face import show_face
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_length
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def sample(name: str) -> Layout:
    return lay(load_plan(next(path for path in SAMPLES if path.stem == name)))


def test_between_two_outside_corners_both_thicknesses_are_hidden() -> None:
    """Pencil: 15 ft 11 5/8 in. outside less twice 7 5/8 in. is 14 ft 8 3/8 in.; the door from 5 ft 11 5/8 to 9 ft 4 in.
    from the left stands, from 15 ft 4 in. on the inside's left, from 6 ft 0 to 9 ft 4 3/8 in."""
    layout = sample("pump-shed-closed")
    wall, face = show_face(layout.walls[0], layout.job.masonry.unit.thickness, "inside")
    assert print_length(wall.wall.length, "feet") == "14'-8 3/8\""
    (door,) = wall.wall.openings
    assert (door.left, door.right) == (inches(72), inches("112 3/8"))
    assert face.told_left(door.left, door.right) == inches("71 5/8")
    for course in wall.courses:
        assert {piece.shape for piece in course.pieces} <= {"corner", "stretcher", "lintel", "bond beam", "sash"}
        assert min(piece.left for piece in course.pieces) in (0, layout.job.masonry.joint)
        assert max(piece.right for piece in course.pieces) in (wall.wall.length, wall.wall.length - layout.job.masonry.joint)


def test_at_an_inside_corner_the_inside_face_shows_a_thickness_more() -> None:
    layout = sample("kiosk-with-porch")
    (outside,) = (wall for wall in layout.walls if wall.wall.name == "Kiosk side")  # inside corner left, outside corner right
    inside, _ = show_face(outside, layout.job.masonry.unit.thickness, "inside")
    assert inside.wall.length == outside.wall.length
    assert (inside.wall.left_end, inside.wall.right_end) == ("outside corner", "inside corner")
    ends = [max(course.pieces, key=lambda piece: piece.right) for course in inside.courses[:2]]
    assert sorted(piece.shape for piece in ends) == ["return", "stretcher"]
    assert {piece.right for piece in ends} == {inside.wall.length}


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_both_faces_show_the_same_pieces_where_nothing_is_hidden(path: Path) -> None:
    layout = lay(load_plan(path))
    thickness = layout.job.masonry.unit.thickness
    for wall in layout.walls:
        seen, face = show_face(wall, thickness, "inside")
        for there, here in zip(wall.courses, seen.courses, strict=True):
            told = {(face.told_left(piece.left, piece.right), piece.length, piece.bottom, piece.mark) for piece in here.pieces}
            open_ = {(piece.left, piece.length, piece.bottom, piece.mark) for piece in there.pieces
                     if thickness <= piece.left and piece.right <= wall.wall.length - thickness}
            assert open_ <= told
        if (wall.wall.left_end, wall.wall.right_end) == ("end", "end"):
            assert seen.wall.length == wall.wall.length
            assert seen.courses[0].pieces[-1].right == wall.wall.length - wall.courses[0].pieces[0].left


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_inside_sheets_keep_their_lettering_apart_and_say_what_they_are(path: Path, paper: str) -> None:
    layout = lay(load_plan(path))
    for page in number_sheets(plan_wall_sheets(layout, (), paper, "inside")):
        assert faults_of(page) == []
        assert "-inside" in page.name
        told = " ".join(text.text for text in texts_of(page))
        assert "INSIDE face" in told and "as on the outside face" in told


def test_jambs_are_told_as_on_the_outside_face() -> None:
    layout = sample("pump-shed-closed")
    page = number_sheets(plan_wall_sheets(layout, (), None, "inside"))[0]
    shown = [text for text in texts_of(page) if text.text in ("5'-11 5/8\"", "9'-4\"", "7 5/8\"", "15'-4\"")]
    assert [text.text for text in sorted(shown, key=lambda text: text.x)][:4] == ["15'-4\"", "9'-4\"", "5'-11 5/8\"", "7 5/8\""]
    assert "overall 14'-8 3/8\" inside" in [text.text for text in texts_of(page)]


def test_a_wall_that_shows_hardly_more_than_its_neighbours_are_thick_has_a_small_inside() -> None:
    sides = "".join(f'[[wall]]\nname = "{name}"\nlength = "{length}"\nheight = "2\'"\n'
                    'left = "outside corner"\nright = "outside corner"\n'
                    for name, length in (("A", "8'"), ("B", "1' 8"), ("C", "8'"), ("D", "1' 8")))
    plan = f'title = "Plinth"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n{sides}'
    layout = lay(read_plan(plan, "plinth.toml"))
    pages = number_sheets(plan_wall_sheets(layout, (), None, "inside"))
    assert [page.name for page in pages] == [f"wall-{name}-inside" for name in "abcd"]
    assert [faults_of(page) for page in pages] == [[]] * 4
    assert [show_face(wall, inches("7 5/8"), "inside")[0].wall.length for wall in layout.walls[:2]] == [
        inches("80 3/8"), inches("4 3/8")]
