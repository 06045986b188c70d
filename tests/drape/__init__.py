"""The cloth and the garment on a form, against physics and by invariants."""
