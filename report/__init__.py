"""Words for people, drawings and data for programs: text is made here only.

Read ``wording`` (what all share), ``fastening`` and ``told`` (sentences by matter), ``drawings``,
then what is handed over: ``screens``, ``data``, ``calculation`` and ``printed`` (``templates``).
"""
