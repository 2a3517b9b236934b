"""How a piece stands on its ground: what turns it over, what makes it slide, what it presses.

Read ``contact`` (the area it stands on), ``standing`` (lines to turn about, what weight holds),
``wind_moments``, then ``overturning``, ``tipping`` (the least pressure), ``friction``, ``sliding``,
``bearing`` and ``remedies`` (what would do); ``crossing`` closes in on a root.
"""
