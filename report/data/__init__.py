"""What a program reads: results as JSON, and the schemas of results and design files.

Read ``checking`` (a design to its result), ``result`` and ``result_schema``, then
``design_schema``, ``odds_record``, ``cut_object`` and ``catalogue`` (many designs).
"""
