"""Many recordings: rows, tables, and the batch that fills them."""
