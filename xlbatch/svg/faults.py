"""What ends the reading of a drawing."""


class Unreadable(Exception):
    """Ends the reading of a drawing; never leaves artwork.py. `args` are keys of the FAULTS of unreadable_drawings."""
