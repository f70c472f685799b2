"""The faces that PDF pages are set in, with the licence that comes with them."""
