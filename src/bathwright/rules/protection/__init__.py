"""What is worn on skin and eyes."""
