"""Templates of pages, and ``typeset``, which hands them what they show, as data."""
