"""Published answers worked out again: what a book prints beside what these rooms give."""
