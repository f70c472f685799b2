"""Hours in milliseconds: sessions under an event loop whose time, radio, port and device are simulated."""
