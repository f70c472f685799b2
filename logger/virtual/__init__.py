"""A virtual transducer: physics with known truth, that speaks real bytes. Everything it makes is marked simulated.

::

    pack         friction elements: clutch packs, drags, a tyre on the floor
    hand         the person at the lever: ramp, tremor, hesitation, yank, re-grip
    lever        where the force goes, and what weight and inertia add
    drivetrain   wheels, half shafts, packs, pinions, case: marched through time
    sensor       from torque to what a transducer delivers, with its faults
    truth        onset, breakaway, plateau of every pull, exactly
    physics      ``simulate(scenario, seed) -> Run``
    scenarios    by name;  practice: dialled in, with mistakes
    device       a run as described bytes;  port: on a pseudo-terminal
"""
