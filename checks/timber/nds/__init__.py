"""NDS, the National Design Specification for Wood Construction, as a book of timber."""
