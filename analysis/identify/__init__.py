"""What stands there: ratio, type and stud circle, and slips of what was typed."""
