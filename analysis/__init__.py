"""From a recording to breakaway and rotating torque, an interval, and a result against a limit.

Everything here takes arrays and returns frozen dataclasses; only ``analysis.pipeline`` knows what a recording is.
"""
