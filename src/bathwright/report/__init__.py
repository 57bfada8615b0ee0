"""Plan -> words: terminal text and one-file page. Nothing is computed here: formatting, grouping, ordering by time."""
