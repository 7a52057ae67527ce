"""The catalogue room: unit families as data, each with its source, and the plan's own units."""
