"""The same result for a terminal and for a program; text for people is made here only."""
