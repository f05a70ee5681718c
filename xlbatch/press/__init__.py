"""Turns placements and batches into press steps, in the order they are pressed."""
