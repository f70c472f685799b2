"""What the window knows and decides, without Qt: every module here runs and is tested with no Qt imported."""
