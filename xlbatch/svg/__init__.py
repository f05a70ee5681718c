"""Turns an SVG drawing into the ink of each of its colors."""
