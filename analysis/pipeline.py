"""From a recording file to its reading: the only module of the analysis that knows what a recording is."""
