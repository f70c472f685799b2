"""From pulls to a result: repeats, limits, risk, what was corrected, and recordings taken together."""
