"""Dockets: what is read, what is refused and in which words."""
