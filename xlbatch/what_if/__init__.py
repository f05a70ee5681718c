"""Turns a list and its plan into what single changes would save."""
