"""A trace of torque against time, read: its pulls, and what each says at the sensor."""
