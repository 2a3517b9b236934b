"""The shapes that a part may have, a family a file: exact volume, centroid and outline of each."""
