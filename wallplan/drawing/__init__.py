"""Layout and findings -> Drawing -> SVG and PDF.

In: a finished layout with what was found of it. Out: pages of primitives in paper millimetres, and two
renderers of them.
The steps: a wall is counted, its paper, scale and split are planned by measuring, each sheet is drawn on a board
(panels, dimensions, elevation), and the pages are written by svg.py and pdf.py, which know no walls.
"""
