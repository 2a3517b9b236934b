"""The design file, and the structure that it describes: parts, shapes, mass, silhouette."""
