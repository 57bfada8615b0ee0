"""Clock and calendar; which law was looked at."""
