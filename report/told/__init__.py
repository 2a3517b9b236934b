"""What is said of one matter each: the word, what to do, what to mend, what was not looked at.

Read ``facts`` (the amounts that sentences take), ``verdict_words``, ``what_to_do``, ``mends``, then
the matter that is asked for: members, posts, loads, odds, cautions, assumptions.
"""
