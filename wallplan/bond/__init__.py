"""The bond as numbers: two tracks of head joints along a wall, closed like a zip. Knows no wall and no file.

All lengths here are nominal ticks: a head joint stands at its left edge, a run that starts at ``a`` has a
joint's stand-in at ``a - joint``, one that ends at ``b`` has it at ``b``; a piece is the distance between
neighbours, so joints have no thickness and the widths of openings lose one joint.
"""
