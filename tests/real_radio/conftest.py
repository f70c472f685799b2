"""What lies here runs inside the virtual machine: pytest must not import it."""

collect_ignore_glob = ["*.py"]
