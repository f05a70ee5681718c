"""Turns a workbook or .csv into a Job: typed rows, settings with every default filled in, and problems."""
