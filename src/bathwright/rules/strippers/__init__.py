"""Paint strippers with dichloromethane."""
