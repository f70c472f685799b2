"""Pages that the report is drawn on."""
