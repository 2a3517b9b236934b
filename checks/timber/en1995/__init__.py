"""Wood and fasteners by EN 1995-1-1."""
