"""What the maker's papers leave open or contradict."""
