"""Gravity, wind (a file a standard), people and combinations."""
