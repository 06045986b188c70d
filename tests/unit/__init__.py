"""Single files of Tapeline, each on its own."""
