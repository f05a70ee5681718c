"""What ends the reading of a picture."""


class Unfit(Exception):
    """Ends the reading of a picture; never leaves trace.py. `args` are a key of the PICTURE_FAULTS of
    unreadable_drawings, and facts in its reason."""
