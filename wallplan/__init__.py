"""wallplan lays out masonry walls course by course: units, joints, cuts, and the sheets to build from."""

__version__ = "0.1.0"
