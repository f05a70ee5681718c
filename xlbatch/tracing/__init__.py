"""Turns a picture made of dots, or a page of a PDF, into the outlines of its flat colors."""
