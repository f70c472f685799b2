"""The window: models without Qt, and thin views over them."""
