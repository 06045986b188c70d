"""Tests of the form: its shapes, how tapes are laid on it, and how it is fitted."""
