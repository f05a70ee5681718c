"""Sign-up sheets: the questions sent round before there is a list, and the answers that come back."""
