"""Recordings as files: written, read, found again after a crash, with their sidecars and photographs."""
