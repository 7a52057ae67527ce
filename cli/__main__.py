"""``python -m wallplan_cli``."""

from wallplan_cli.main import main

main()
