"""The weather at the film."""
