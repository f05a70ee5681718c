"""Turns raw sheets into tables: which columns mean what, and each row's cells as values."""
