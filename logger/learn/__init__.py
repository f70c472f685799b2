"""From what an unknown transducer sends to its description."""
