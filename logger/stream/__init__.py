"""One source of samples while it runs: session, clock, blocks, audience, and two sources side by side."""
