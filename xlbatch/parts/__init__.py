"""A drawing's layers → its parts, and the drawing with parts left out, replaced, or set in other words."""
