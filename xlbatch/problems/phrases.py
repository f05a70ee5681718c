"""The parts of sentences about bad input that differ from case to case; {facts} are filled in by whoever finds them."""

from collections.abc import Mapping

PHRASES: Mapping[str, str] = {
    # what was assumed
    "left open": "What the list leaves open",
    "width": "The width of the artwork",
    "wide": "{decal} {width} wide",
    "letter height of": "The letter height of {decal}",
    "measures of": "Measures of {garment}",
    "as the same size": "those of the {garment} in the same size",
    # why a row is left out
    "under a title": "stands under “{title}”",
    "on the sheet": "stands on the sheet “{sheet}”",
    # what a cell should hold
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
    "days of the week": "days of the week",
    "number or word": "a number from {low} to {high}, or “{word}”",
    "one of": "one of: {choices}",
    "between": "{wanted} from {low} to {high}",
    # how columns and sizes were read
    "column read as": "{column} was read as {meaning} (first: {example})",
    "column not used": "{column} (first: {example}) was not used",
    "may change this row": "something that may change this row",
    "letter": "a Portuguese letter",
    "age": "an age or a child's size number",
    "height": "a child's height in cm",
    "chest": "a {measure} of {cm:.0f} cm, EN 13402-3",
    # what lies too close or is too fine, too hot, doubtful
    "at most": "at most {size}",
    "wide and high": "at most {width} wide and {height} high",
    "another font": "Print less of it, or choose another font.",
    "bolder": "Draw it bolder: making it bigger would not help.",
    "higher letters": "It passes with letters {height} high: give it more room, print less of it, or choose another "
    "font.",
    "wider": "It passes at {width} wide; or draw it bolder.",
    "maker's limit": "the maker's limit",
    "care label": "care label: {dots}, ISO 3758",
    "fabric": "{fabric}, label not checked",
    "no film so cool": "No film on the Film sheet is pressed cool enough; choose another garment.",
    "cooler film": "Choose a film kind that is pressed cooler: {kinds}; or a garment that bears more heat.",
    "near": "something beside it may belong to it",
    "covered": "something lies over it",
    "background": "it may be the background",
    # why a film was chosen
    "only film": "it is the only one listed",
    "nearest color": "its color is nearest",
    "used by design": "the design uses it",
    "first film": "it is listed first",
    # what was done to a picture, and what of it left out
    "cmyk": "its colors, meant for a printing press (CMYK), were turned into a screen's",
    "16 bits": "its 65,536 shades of gray (16 bits) were brought down to 256",
    "turned": "it was turned upright, as the camera's note in it says",
    "first page": "of its {pages} pages the first was taken",
    "speck": "1 speck of a few dots left out",
    "specks": "{count} specks of a few dots left out",
    "glow": "a shadow or glow that fades into the background",
    "see-through": "what one can see through",
    "open on own film": "{color} lies on {ground}, which is {film} too, and is left open there",
    "enclosed area": "part {parts} is of the background's color, {color}, and stays open",
    "enclosed areas": "parts {parts} are of the background's color, {color}, and stay open",
    # payments and marks of a plan
    "no such garment": "garment no. {number} is not on the Roster",
    "no amount": "it is no amount",
    "garment twice": "another row has garment no. {number} too",
    "row of sums": "it stands in a row without a garment number",
    "another result": "another result",
    "redo in": "redo garment in {cell}",
    "piece pressed": "piece pressed on it",
    "of its blank": "{heading} of its blank",
    "fits another": "for no. {number}, {piece}",
}


def phrase(key: str, **facts: object) -> str:
    """The words for one case. Raises KeyError where there are none, or a fact lacks."""
    return PHRASES[key].format_map(facts)
