"""What is said of one matter each, beside the verdict.

Read ``facts`` (the amounts that sentences take), then the matter that is asked for: what holds a
piece (``held_words``, ``tied_words``, ``posts_words``, ``label_anchors``), sizes, odds, how often,
cautions, assumptions, what was not checked or not verified.
"""
