"""When each step runs: earliest start under least and most waits, windows, working hours."""
