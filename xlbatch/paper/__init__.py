"""A workbook as it is written and printed: cells, looks, widths, pages."""
