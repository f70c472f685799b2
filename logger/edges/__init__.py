"""Where the program meets people and files: units, TOML, small files, the terminal, the doors."""
