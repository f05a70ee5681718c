"""The records of a job, which every later stage reads."""
