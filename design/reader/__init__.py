"""The strict reader: text to typed values, each fault with its line, its key and what to type.

Read ``typed_text``, ``raw_values`` and ``scan`` (where what stands), ``schema`` (what a table may
hold), ``kind_words``, ``kinds`` and ``lists_of_lengths`` (values by kind), ``row`` (one table as
read), ``near_names`` and ``mending`` (what was meant), ``sheet_names``,
``file_text`` (bytes to text).
"""
