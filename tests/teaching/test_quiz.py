"""Quiz answers by hand; on random plans they are counted again with the why lines."""

from __future__ import annotations

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from tests.teaching.lessons import lesson, sample, words_on
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_length, print_size
from wallplan.teaching.quiz import Question, ask_wall


def answers(layout: Layout) -> dict[str, str]:
    return {question.kind: question.answer for question in ask_wall(layout, 0)}


def judge_quiz(layout: Layout, index: int) -> None:
    """Every answer counted and measured again, by loops over the pieces."""
    for question in ask_wall(layout, index):
        assert question.text.endswith("?") and question.how.endswith(".")
        _judge(layout, index, question)


def _judge(layout: Layout, index: int, question: Question) -> None:
    wall, measure, figures = layout.walls[index], layout.job.measure, question.figures
    own = [(course.number, piece) for course in wall.courses for piece in course.pieces if piece.shape != "return"]
    cuts = [piece for _, piece in own if piece.mark]
    match question.kind:
        case "pieces":
            assert str(sum(number == figures[0] for number, _ in own)) == question.answer
            assert f"course {figures[0]}," in question.text
        case "bricks":
            behind = len(wall.courses[figures[0] - 1].backing)
            assert str(sum(number == figures[0] for number, _ in own) + behind) == question.answer
            assert f"course {figures[0]}," in question.text
        case "headers":
            assert question.answer == (str(sum(piece.shape == "header" for _, piece in own)) if figures[0] else "none")
        case "closers":
            count = sum(piece.shape == "closer" for _, piece in own)
            assert question.answer.split(",")[0] == (str(count) if count else "none") and (count,) == figures
        case "closer size":
            alike = [piece for piece in cuts if f"closer {piece.mark} " in question.text]
            assert {print_size(piece.length, measure) for piece in alike} == {question.answer} == {print_size(figures[0], measure)}
        case "halves":
            count = sum(piece.piece == "half" for _, piece in own)
            assert question.answer == (str(count) if count else "none")
        case "no cuts":
            assert not cuts
        case "cut size":
            alike = [piece for piece in cuts if f"cut {piece.mark}?" in question.text]
            assert {print_size(piece.length, measure) for piece in alike} == {question.answer.split(",")[0]}
            plain = [piece.mark for piece in cuts if piece.rake is None and piece.notch is None] or [p.mark for p in cuts]
            assert {piece.mark for piece in alike} == {min(plain, key=lambda mark: (len(mark or ""), mark or ""))}
        case "cut count":
            assert str(sum(f"are cut {piece.mark}?" in question.text for piece in cuts)) == question.answer
        case "height":
            tops = {piece.top for number, piece in own if number == figures[0] and piece.shape != "precast"}
            assert print_length(wall.courses[figures[0] - 1].top, measure) == question.answer
            assert any(abs(top - figures[1]) <= 2 for top in tops) and f"course {figures[0]} " in question.text
        case "last mark":
            assert question.answer == print_length(_last_joint(layout, index), measure)
        case "lap":
            assert question.answer == print_size(figures[0], measure)
        case "head":
            opening = next(opening for opening in wall.wall.openings if f"head of {opening.name}?" in question.text)
            assert str(sum(course.top <= opening.top for course in wall.courses)) == question.answer
        case _:
            raise AssertionError(question.kind)


def _last_joint(layout: Layout, index: int) -> int:
    """The rightmost gap of a joint's width between two pieces of an odd course, control joints left out."""
    wall, widest = layout.walls[index], max(layout.job.masonry.joint, *layout.walls[index].joints)
    found = [one.right for course in wall.courses[::2] for one in course.pieces for other in course.pieces
             if 0 <= other.left - one.right <= widest and other.bottom < one.top and one.bottom < other.top
             and one.right >= 0 and other.left <= wall.wall.length
             and not any(one.right <= place <= other.left for place in wall.wall.control_joints)]
    return max(found)


def test_the_pump_houses_quiz_by_hand() -> None:
    """20 ft nominal: course 1 is 3 blocks, the door, half and 9 blocks: 13 pieces. Nothing is cut. Course 8 of 13 ends
    at 8 x 8 in. The last odd joint is 16 in. from the far end: 239 5/8 - 15 5/8 - 3/8 = 223 5/8. Half bond laps 8 in."""
    told = answers(lay(pump_house()))
    assert told["pieces"] == "13" and told["no cuts"] == "none" and told["height"] == "5'-4\""
    assert told["last mark"] == "18'-7 5/8\"" and told["lap"] == '8"' and told["head"] == "11"


def test_the_cut_of_the_nominal_trap_by_hand() -> None:
    """20 ft exactly, joints fixed: course 2 can be half, 13 blocks, 13 5/8 in., half; one cut a course at the least."""
    told = answers(lay(make_job(make_masonry(joints_move=False), make_wall(inches(240), inches(32)))))
    assert int(told["cut count"]) >= 1 and told["cut size"].endswith('"')


def test_a_wall_without_courses_is_not_asked_about() -> None:
    from dataclasses import replace

    layout = lay(pump_house())
    assert ask_wall(Layout(layout.job, (replace(layout.walls[0], courses=()),)), 0) == ()


def test_questions_and_answers_go_by_the_same_numbers_and_only_one_sheet_has_answers() -> None:
    drawing = lesson(sample("ticket-kiosk"))
    quiz, key = (next(words_on(page) for page in drawing.pages if page.name == name) for name in ("quiz", "quiz-answers"))
    asked = [line for line in quiz.split("\n") if line[:2].rstrip(".").isdigit()]
    assert asked == [line for line in key.split("\n") if line[:2].rstrip(".").isdigit() and "." in line[:3]]
    assert "18'-7 5/8\"" in key.split("\n") and "18'-7 5/8\"" not in quiz
