"""From a torque transducer's bytes to a recording that survives.

Conventions: inside the program every quantity is an SI float with its unit in the name (``torque_nm``, ``time_s``);
a recording holds the reading as the device delivered it, in the device's own unit. Samples travel in blocks of
arrays, never one object a sample.
"""
