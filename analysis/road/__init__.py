"""Chatter on the road, from the band level of a sound or an acceleration: arrays in, never a torque, never a limit."""
