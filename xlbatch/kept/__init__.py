"""The plan's memory: the job as planned, every decal ever cut and where it stands, and what has changed since."""
