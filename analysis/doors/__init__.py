"""The commands of ``heldwheel-read``, one module each."""
