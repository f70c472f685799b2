"""How far two colours stand apart."""


def luminance(colour: str) -> float:
    """Give the relative luminance of an ``#rrggbb`` colour (WCAG 2.1, definition of relative luminance)."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Give the contrast ratio of two colours, 1 to 21 (WCAG 2.1, definition of contrast ratio).

    Examples
    --------
    >>> contrast("#000000", "#ffffff")
    21.0
    """
    dark, light = sorted((luminance(one), luminance(other)))
    return round((light + 0.05) / (dark + 0.05), 4)
