"""The door: files come in as records with all their faults collected, records go out as files."""
