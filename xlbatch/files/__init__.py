"""Turns the bytes of a file, of whatever kind, into sheets of raw cells."""
