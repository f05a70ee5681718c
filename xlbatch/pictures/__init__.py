"""Pictures on the sheets: garments, runs, lettering, a ruler."""
