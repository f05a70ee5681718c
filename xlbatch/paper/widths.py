"""How wide a table's columns are, in points."""

from collections.abc import Iterable, Sequence

from xlbatch.paper.measure import text_width
from xlbatch.paper.style import SMALL

PAD = 4.5  # points taken by the two edges of a cell
LONG_WORD = 66.0  # a word longer than this may be broken


def least_width(heading: str, texts: Iterable[str], size: float, bold: bool, *, whole: bool = False) -> float:
    """Room for the longest word of the heading, and of the texts as far as these are no monsters; for the longest
    text where it must stay `whole`."""
    words = (text_width(word, size, bold) for text in texts for word in ([text] if whole else text.split()))
    longest = max((width for width in words if whole or width <= LONG_WORD), default=0.0)
    return PAD + 0.5 + max(longest, *(text_width(word, SMALL, True) for word in heading.split() or [""]))


def own_width(least: float, most: float, texts: Iterable[str], size: float, bold: bool) -> float:
    """As wide as the longest text, within limits."""
    longest = max((text_width(line, size, bold) for text in texts for line in text.split("\n")), default=0.0)
    return max(least, min(most, longest + PAD + 1))


def filled(shares: Sequence[float], least: Sequence[float], room: float) -> list[float]:
    """Widths in the ratio of the shares, none below its least, that take up the room exactly; where the room is too
    small for that, the least widths."""
    narrow: set[int] = set()
    while True:
        left = room - sum(least[column] for column in narrow)
        wide = sum(share for column, share in enumerate(shares) if column not in narrow)
        factor = left / wide if wide else 0.0
        more = {
            column for column, share in enumerate(shares) if column not in narrow and share * factor < least[column]
        }
        if not more:
            return [least[column] if column in narrow else share * factor for column, share in enumerate(shares)]
        narrow |= more
