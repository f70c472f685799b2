"""Where the parts of a job card are filled in: job, fixture, limit, transducer."""
