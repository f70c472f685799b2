"""The page that someone can sign: one content, two renderers, and the verifier."""
