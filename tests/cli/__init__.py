"""The command as a real process."""
