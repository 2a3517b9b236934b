"""The design file: its tables, and the whole of it as read.

Read ``part_table`` (a part: its shape, and ``place_keys``, ``coverings``, ``embed_keys``,
``fill_keys``; in ``builder_words`` too), ``record_table``, ``lone_table`` (a table by itself),
``parsed`` (all tables of a text), then ``document``: a file to a ``Design``, all faults at once.
"""
