"""xlbatch: a list of people in; the sheets to buy, cut, weed, press, hand out and settle a batch out."""

__version__ = "0.1.0"
