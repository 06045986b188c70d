"""Golden drawings, old and new: read from their texts, measured against each other, shown on one page."""
