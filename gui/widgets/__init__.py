"""The window's own widgets."""
