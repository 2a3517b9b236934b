"""How a printed table is read: within its range, and between its rows.

``ranges`` refuses what lies outside what a relation is stated for; ``interpolation`` goes between
printed values. In that order; every relation of a book uses them.
"""
