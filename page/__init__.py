"""The page: a small server on this machine, and the files that it hands to a browser."""
