"""The safety checks that gate the first pull, one line each, in the order they are made."""

from __future__ import annotations

# From the cautions of this trade (see the README): before lifting, then before pulling.
CHECKS = (
    "Engine off, key out of reach: one driven wheel in the air drives the other",
    "Wheels chocked both ways: nothing else may hold the car",
    "On stands, on a hard level floor; the jack carries nothing; air suspension off",
    "Hybrid or electric: high-voltage system made safe as the maker says",
    "Axle and oil cool enough to touch, or their temperature written down",
    "Neutral; transfer case neutral; nothing else grounded on this axle's shaft",
    "Brakes of both tested wheels free: looked at, and turned by hand",
    "Nuts snug, adapter centred, never in a hub nut's loosening direction",
    "The held wheel is held by floor or strap, not by hands or a clamped hose",
    "The lever's swing is clear; nobody in its plane; agreed who says stop",
)
