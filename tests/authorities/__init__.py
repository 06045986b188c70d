"""What others have published, against what we draw."""
