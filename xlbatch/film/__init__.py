"""Turns decals into strips, runs and film to buy, with a proof of how little film would do."""
