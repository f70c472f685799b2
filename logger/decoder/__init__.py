"""Bytes to samples, without IO."""
