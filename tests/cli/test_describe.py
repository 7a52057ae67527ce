"""The page about the commands is what the commands say."""

from pathlib import Path

from wallplan_cli.describe import describe_commands


def test_the_page_is_written_from_the_commands() -> None:
    page = Path(__file__).parents[2] / "docs" / "commands.md"
    assert page.read_text(encoding="utf-8") == describe_commands()
