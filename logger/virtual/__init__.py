"""A virtual transducer: physics with known truth, that speaks real bytes."""
