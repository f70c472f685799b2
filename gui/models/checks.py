"""The safety checks that gate the first pull: the cautions of this trade that can hurt people, one line each."""

from __future__ import annotations

from analysis.cautions import gates_for
from logger.header import Test

CHECKS = tuple(caution.text for caution in gates_for(Test()))
