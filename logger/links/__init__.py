"""Where bytes come from: one small asynchronous interface, with real, virtual and replayed sources side by side."""
