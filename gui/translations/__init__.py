"""Catalogues of the window's texts: ``.ts`` to edit, ``.qm`` released from it by ``make translations``."""
