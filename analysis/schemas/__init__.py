"""Published schemas of the JSON that the analysis writes."""
