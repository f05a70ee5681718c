"""Outlines: closed, welded, measured. Lengths in mm, y upward."""
