"""Turns a line of text into its outline: fonts, shaping, directions, arches."""
