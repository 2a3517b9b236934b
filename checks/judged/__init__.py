"""What a check says, beneath all that judges: read ``judging`` (its kind, subject and ratio).

``finding`` has what is told beside one, as data with slots; ``build_steps`` in what steps people
build, and how the step is found at which a check turns.
"""
