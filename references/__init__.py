"""Published tables as data files, one a table, each with its source; and their loader."""

from .fingerprint import digest
from .table import CONFIDENCES, Table, TableRow, table, table_names

__all__ = ["CONFIDENCES", "Table", "TableRow", "digest", "table", "table_names"]
