"""Tables that other programs wrote, read as traces: text, spreadsheets, Parquet, JSON."""
