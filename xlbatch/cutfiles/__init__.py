"""Turns runs into SVG: one file to cut and one guide a run."""
