"""The page in a browser: stepping, tapping, picking, by touch and by key; nothing asked of a network, nothing complained of."""

from __future__ import annotations

from pathlib import Path

import pytest
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.actions import interaction
from selenium.webdriver.common.actions.action_builder import ActionBuilder
from selenium.webdriver.common.actions.pointer_input import PointerInput
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webelement import WebElement

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from tests.teaching.page.browser import Driver, read_console, read_requests
from tests.teaching.page.conftest import Show
from wallplan.layout.build import lay
from wallplan.planner import lay_plan
from wallplan.teaching.page.practice import list_questions
from wallplan.teaching.runs import read_runs
from wallplan.teaching.why import why_piece

SAMPLES = Path(__file__).parents[3] / "samples"


def by_id(driver: Driver, name: str) -> WebElement:
    return driver.find_element(By.ID, name)


def do(driver: Driver, mode: str) -> None:
    driver.find_element(By.CSS_SELECTOR, f"[data-mode={mode}]").click()


def pieces_on_strip(driver: Driver) -> list[WebElement]:
    return driver.find_elements(By.CSS_SELECTOR, "#strip button.piece")


def plain(text: str) -> str:
    """Text with the spaces that keep a fraction beside its number made plain."""
    return text.replace("\u00a0", " ")


def touch(driver: Driver, across: int) -> None:
    """A finger on the picture's middle, moved across and lifted."""
    finger = PointerInput(interaction.POINTER_TOUCH, "finger")
    builder = ActionBuilder(driver, mouse=finger)
    builder.pointer_action.move_to(by_id(driver, "picture")).pointer_down()
    builder.pointer_action.move_by(across, 0).pointer_up()
    builder.perform()


def test_step_by_button_key_slider_and_swipe(show: Show) -> None:
    driver = show(lay(pump_house()))
    where = by_id(driver, "where")
    assert where.text == "Course 1 of 13"
    by_id(driver, "next").click()
    assert where.text == "Course 2 of 13"
    by_id(driver, "next").send_keys(Keys.ARROW_RIGHT)
    assert where.text == "Course 3 of 13"
    by_id(driver, "slide").send_keys(Keys.END)
    assert where.text == "Course 13 of 13"
    assert not by_id(driver, "next").is_enabled()
    by_id(driver, "back").click()
    touch(driver, 90)
    assert where.text == "Course 11 of 13"
    touch(driver, -90)
    assert where.text == "Course 12 of 13"
    assert by_id(driver, "slide").get_attribute("aria-valuetext") == "Course 12 of 13"


def test_a_course_is_told_in_words_that_a_reader_hears(show: Show) -> None:
    layout = lay(pump_house())
    driver = show(layout)
    by_id(driver, "next").click()
    assert by_id(driver, "say").get_attribute("role") == "status"
    # Pencil: the even courses begin and end with a half; the door's left jamb, at 47 5/8 in., takes another half.
    assert "3 × half block" in by_id(driver, "say").text
    assert len(pieces_on_strip(driver)) == len(layout.walls[0].courses[1].pieces)


def test_tap_a_piece_for_its_size_and_why(show: Show) -> None:
    layout = lay(pump_house())
    driver, runs = show(layout), read_runs(layout, 0)
    by_id(driver, "next").click()
    pieces_on_strip(driver)[0].click()
    told = plain(by_id(driver, "piece").text)
    assert 'Half block' in told and '7 5/8" long' in told and 'from 0" to 7 5/8"' in told
    assert why_piece(runs, 2, layout.walls[0].courses[1].pieces[0]) in told
    assert pieces_on_strip(driver)[0].get_attribute("aria-pressed") == "true"


def test_tap_a_piece_in_the_picture(show: Show) -> None:
    driver = show(lay(pump_house()))
    by_id(driver, "slide").send_keys(Keys.END)
    touch(driver, 0)
    # The picture's middle, 119 13/16 in. from the left end and 52 in. high, is in course 7: 48 to 56 in.
    assert by_id(driver, "piece").text.startswith("Full block")
    assert "Course 7," in by_id(driver, "piece").text
    assert by_id(driver, "where").text == "Course 13 of 13"


def test_pieces_by_key_alone(show: Show) -> None:
    driver = show(lay(pump_house()))
    keys = ActionChains(driver)
    driver.execute_script("document.querySelector('nav button:last-child').focus()")
    keys.send_keys(Keys.TAB, Keys.ENTER).perform()
    assert driver.switch_to.active_element.get_attribute("data-place") == "0"
    keys = ActionChains(driver)
    keys.send_keys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_LEFT).perform()
    focused = driver.switch_to.active_element
    assert focused.get_attribute("data-place") == "1" and focused.get_attribute("aria-pressed") == "true"
    assert (focused.get_attribute("aria-label") or "").startswith("2 of ")
    assert by_id(driver, "where").text == "Course 1 of 13"
    ActionChains(driver).send_keys(Keys.TAB, Keys.TAB).perform()
    assert driver.switch_to.active_element.get_attribute("id") == "next", "back is switched off on the first step"


def test_leads_first_then_the_fill_with_the_closure_last(show: Show) -> None:
    layout = lay(pump_house())
    driver = show(layout)
    do(driver, "laid")
    titles = driver.execute_script(
        "const titles = []; for (let at = 1; at <= wall().steps.length; at += 1) { go(at); titles.push(find('say').firstChild.textContent); }"
        "return titles")
    assert not by_id(driver, "next").is_enabled()
    leads = layout.job.masonry.leads
    assert titles[:leads] == [f"Left lead, course {number}, lift 1 of 3" for number in range(1, leads + 1)]
    assert titles[leads] == "Right lead, course 1, lift 1 of 3"
    fill = titles.index("Fill, course 1, lift 1 of 3")
    assert fill == 2 * leads and titles[-1].startswith("Fill, course 13")
    driver.execute_script("go(arguments[0])", fill + 1)
    turns = [button.find_element(By.CLASS_NAME, "turn").text for button in pieces_on_strip(driver)
             if "new" in (button.get_attribute("class") or "")]
    assert turns.count("last") == 1 and "1." in turns


def test_odd_and_even_side_by_side(show: Show) -> None:
    driver = show(lay(pump_house()))
    do(driver, "pairs")
    told = plain(by_id(driver, "say").text)
    assert told.splitlines()[0] == "Courses 1 and 2"
    assert "course 1 begins with a full block, course 2 with a half block" in told
    assert 'No joint of one is nearer than 8" to a joint of the other; 4" is the least that will do.' in told
    assert [one.get_attribute("aria-label") for one in driver.find_elements(By.CSS_SELECTOR, "#strip ul")] == [
        "Course 2, left to right", "Course 1, left to right"]


def test_wrong_and_right_picks(show: Show) -> None:
    layout = lay(pump_house())
    driver, questions = show(layout), list_questions(read_runs(layout, 0))
    do(driver, "practice")
    for number, question in enumerate(questions[:6], start=1):
        assert plain(by_id(driver, "say").text).startswith(f"Question {number} of {len(questions)}\n{question.words}")
        kinds = [offer.verdict.kind for offer in question.offers]
        wrong = next(turn for turn, kind in enumerate(kinds) if kind == "wrong")
        picks = driver.find_elements(By.CSS_SELECTOR, "#offers button")
        assert len(picks) == len(question.offers)
        if number % 2:
            picks[wrong].click()
            assert plain(by_id(driver, "verdict").text) == f"Not this one\n{question.offers[wrong].verdict.words}"
            assert driver.find_elements(By.CLASS_NAME, "fault") or question.offers[wrong].verdict.at is None
        driver.find_elements(By.CSS_SELECTOR, "#offers button")[kinds.index("right")].click()
        right = question.offers[kinds.index("right")].verdict.words.removeprefix("Right. ")
        assert plain(by_id(driver, "verdict").text).startswith(f"Right\n{right}")
        by_id(driver, "next").click()
    assert "Right at the first pick: 3 of 6." in by_id(driver, "say").text


def test_each_wall_of_a_plan(show: Show) -> None:
    layout = lay_plan(SAMPLES / "pump-shed-closed.toml")
    driver = show(layout)
    names = [wall.wall.name for wall in layout.walls]
    assert by_id(driver, "which").text.split("\n") == names
    by_id(driver, "which").send_keys(names[2])
    assert by_id(driver, "wall-name").text.startswith(names[2])
    do(driver, "list")
    shown = [table.is_displayed() for table in driver.find_elements(By.CSS_SELECTOR, "section.courses")]
    assert shown == [name == names[2] for name in names]
    assert "end of a block of" in by_id(driver, "courses").text


@pytest.mark.parametrize("sample", ["boat-store-gable", "slip-wall-steps", "reclaimed-brick", "high-sill"])
def test_nothing_hangs_over_a_phones_edge(show: Show, sample: str) -> None:
    driver = show(lay_plan(SAMPLES / f"{sample}.toml"))
    for mode in ("courses", "laid", "pairs", "practice", "list"):
        do(driver, mode)
        assert driver.execute_script("return document.scrollingElement.scrollWidth") <= 360, mode


def test_a_strip_that_still_scrolls_when_it_is_put_away(show: Show) -> None:
    """A strip that is no longer shown is as wide as nothing: it marked a place of less than no width in a short wall's picture."""
    driver = show(lay(make_job(make_masonry(), make_wall(inches("31 5/8"), inches(48)))))
    driver.execute_script("setMode('list'); strip.scroll.dispatchEvent(new Event('scroll'))")
    assert float(driver.execute_script("return picture.view.getAttribute('width') || '0'")) >= 0


def test_a_long_label_leaves_room_for_back_and_next(show: Show) -> None:
    masonry = make_masonry("brick-engineer-modular")
    driver = show(lay(make_job(masonry, make_wall(inches(48), 24 * masonry.unit.gauge))))
    driver.execute_script("setMode('pairs'); go(22)")
    assert by_id(driver, "where").text == "Courses 22 and 23"
    assert driver.execute_script("return document.scrollingElement.scrollWidth") <= 360


def test_without_scripts_every_course_stands_there_in_words(show: Show, driver: Driver) -> None:
    driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        show(lay(pump_house()))
        assert "Scripts are switched off" in driver.find_element(By.TAG_NAME, "noscript").text
        assert "3 × half block" not in by_id(driver, "courses").text, "the list goes from left to right"
        assert '1 × half block (7 5/8")' in by_id(driver, "courses").text
        assert not by_id(driver, "stepper").is_displayed() and not driver.find_element(By.TAG_NAME, "nav").is_displayed()
    finally:
        driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


def test_the_watch_sees_a_request_and_a_complaint(driver: Driver, tmp_path: Path) -> None:
    """That the two readings above can fail at all."""
    path = tmp_path / "asking.html"
    path.write_text("<script src='http://127.0.0.1:9/lost.js'></script><script>lost()</script>", encoding="utf-8")
    driver.get(path.as_uri())
    assert read_requests(driver) == ["http://127.0.0.1:9/lost.js"]
    assert any("lost is not defined" in line for line in read_console(driver))
