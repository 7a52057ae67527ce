"""Teaching: the order in which a wall is laid, why each piece is where it is, and the lesson's sheets for paper.

A layout goes in; words and pages come out. Nothing here lays a wall or judges one: what is told is read off the layout.
"""
