"""Many recordings side by side: groups, trends, charts, plans, and how good the measuring is."""
