"""Turns runs, decals and press steps into a time plan for the people there are."""
