"""How long Tapeline takes: `./run bench`."""
