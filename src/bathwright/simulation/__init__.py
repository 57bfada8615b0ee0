"""Steps on a clock, room and weather: courses over time. Couples the physics, judges nothing."""
