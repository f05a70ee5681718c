"""Turns a Job into the garments to make, and the problems that hold rows back."""
