"""What is wanted in a cell, by the kind of its column: said of one that cannot be read."""

WANTED = {
    "text": "text (the spreadsheet made it a date)",
    "count": "a whole number",
    "number": "a number",
    "length": "a length",
    "temperature": "a temperature",
    "seconds": "a time in seconds",
    "yes/no": "yes or no",
    "money": "an amount of money",
    "margin": "a percentage or a price",
    "prices": "a price, or prices by number of pieces",
    "rolls": "lengths of rolls, each with its price",
    "pieces": "pieces of film, width by length",
    "features": "places to keep clear, each with name, side, width x height and from where",
    "stock": "how many are on hand",
    "dots": "iron dots",
    "paid": "an amount, or yes",
    "time": "a time of day",
    "mark": "yes, no, or the day it was done",
    "arrived": "yes, no, or how many came",
}
