"""The independent check: a finished layout in, findings out. It shares no code with what lays the wall.

One module a question: cover, joints, coursing, lap, pieces, plumb, openings, control. ``check`` asks them all.
"""
