"""Plan file in, Job out.

In order: ``load`` reads the file, ``syntax`` its TOML, ``shape`` holds it against the keys of ``schema``; ``unit_table``,
``masonry_table``, ``wall_table`` and ``opening_table`` turn tables into ticks with every default filled in; the ``check_``
modules hold them against each other; ``build`` puts the job together. Every mistake goes into a ``Notebook``, and
``lines`` finds the line it stands on. ``describe`` writes the page about the plan file from the schema.
"""
