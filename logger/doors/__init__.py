"""The commands of ``heldwheel-log``, one module each."""
