"""Who must be away, who must be near."""
