"""Texts of the analysis in the reader's language: catalogues ``.ts``, and the translator that the window has, too."""
