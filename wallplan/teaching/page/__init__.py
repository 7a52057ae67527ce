"""The page for the phone: one HTML file that holds the whole lesson of a layout and asks nothing of any network.

``build`` writes it; ``wall_data`` and ``practice`` tell what it shows, all words and figures ready made, so that the page's
scripts only show and hide; ``course_list`` is what stands there without any script.
"""
