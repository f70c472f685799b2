"""The program's version, written once (pyproject.toml says the same; a test compares them)."""

VERSION = "0.3.0"
