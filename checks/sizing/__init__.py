"""What would hold a piece: the same checks turned round, by trying."""
