"""From torque at the sensor to torque at the axle: lever, fixture, true zero, dial, drag."""
