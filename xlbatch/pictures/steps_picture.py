"""The picture on Start here: from the list to the shirt, in five panels."""

from xlbatch.paper.picture import Picture, drawn

HEIGHT = 84.0  # points
INK, PAPER, SHADE, FILM = "#17202a", "#ffffff", "#e3e8ec", "#14508c"
WORDS = ("1  list", "2  what differs", "3  drop", "4  plan", "5  press")

_GRID = "".join(
    f'<rect x="{x}" y="{y}" width="18" height="8" fill="{SHADE if y == 0 else PAPER}"/>'
    for y in (0, 8, 16, 24, 32)
    for x in (0, 18, 36)
)
_SHEET = f'<rect width="34" height="42" fill="{PAPER}"/><path d="M6 10h22M6 17h22M6 24h22M6 31h14" fill="none"/>'
_SHIRT = f'<path d="M18 0 L0 10 L7 22 L12 19 V44 H44 V19 L49 22 L56 10 L38 0 Q28 10 18 0z" fill="{PAPER}"/>'
PICTURES = (
    _GRID,
    f'{_SHEET}<rect x="18" y="20" width="26" height="14" fill="{SHADE}"/><path d="M22 27h18" fill="none"/>',
    f'<rect x="6" y="28" width="42" height="16" fill="{SHADE}"/><path d="M27 0v20M19 13l8 9 8-9" fill="none" '
    'stroke-width="2.5"/>',
    f'<g transform="translate(12 -2)">{_SHEET}</g><g transform="translate(4 4)">{_SHEET}</g>',
    f'{_SHIRT}<rect x="17" y="20" width="22" height="7" fill="{FILM}" stroke="none"/>',
)


def steps_picture(width: float) -> Picture:
    """The five panels side by side in `width` points."""
    across = width / len(WORDS)
    panels = "".join(
        f'<g transform="translate({step_no * across:.2f} 0)"><g transform="translate({across / 2 - 28:.2f} 8)" '
        f'stroke="{INK}" stroke-width="1.2">{picture}</g><text x="{across / 2:.2f}" y="{HEIGHT - 14}" '
        f'text-anchor="middle" font-size="11" font-weight="700" fill="{INK}">{word}</text></g>'
        for step_no, (word, picture) in enumerate(zip(WORDS, PICTURES, strict=True))
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{HEIGHT}" font-family="Arimo">'
        f"{panels}</svg>"
    )
    return drawn(svg, "Five steps: list, what differs, drop, plan, press")
