"""Turns a plan into the workbook to print: one module a returned sheet."""
