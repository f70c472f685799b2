"""Transducers as property: weighed, kept in a register; levers and limits kept beside them."""
