"""The safety checks that gate the first pull: the cautions of this trade that can hurt people, one line each."""

from __future__ import annotations

from analysis.cautions import CAUTIONS

CHECKS = tuple(caution.text for caution in CAUTIONS if caution.gate)
