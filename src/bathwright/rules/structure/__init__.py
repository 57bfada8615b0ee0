"""Is the fixture sound, dry and still."""
