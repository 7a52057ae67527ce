"""``python -m wallplan_cli``."""

from wallplan_cli.start import main

main()
