"""The order list: units, mortar, grout, steel, and how the days fall. Layout in, lines of values out."""
