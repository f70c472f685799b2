"""Descriptions of transducers that come with the program (TOML)."""
