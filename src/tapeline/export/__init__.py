"""One file for each thing a finished garment is written to: print, drawing, data."""
