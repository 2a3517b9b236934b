"""Published tables as data files, one a table, each with its source; and their loader."""

from .fingerprint import digest
from .table import CONFIDENCES, Row, Table, names, table

__all__ = ["CONFIDENCES", "Row", "Table", "digest", "names", "table"]
