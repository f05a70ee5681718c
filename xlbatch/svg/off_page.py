"""What of a drawing lies beyond its page. It is cut all the same: a page's edge cuts no film."""

from collections.abc import Iterator, Sequence

from xlbatch.geometry.path import Box
from xlbatch.svg.layer import Layer, Note

NEAR = 1.0  # units, of a page of about 2,000: a shape that ends at the page's edge does not reach beyond it
SIDES = ("left", "bottom", "right", "top")


def beyond_page(layers: Sequence[Layer], page: Box | None) -> Iterator[Note]:
    """One note that names the shapes that lie beyond the page, if any do: how many, their colors, on which sides."""
    if page is None:
        return
    beyond = {
        layer_no: sides for layer_no, layer in enumerate(layers) if len(layer.path) and (sides := _sides(layer, page))
    }
    if not beyond:
        return
    colors = dict.fromkeys(layer.color for layer_no, layer in enumerate(layers) if layer_no in beyond)
    reached = [side for side in SIDES if any(side in crossed for crossed in beyond.values())]
    shapes = "1 shape" if len(beyond) == 1 else f"{len(beyond)} shapes"
    what = f"{shapes} ({', '.join(colors)}) at the {' and '.join(reached)}"
    yield Note("artwork-off-page", {"what": what})


def _sides(layer: Layer, page: Box) -> tuple[str, ...]:
    """The sides of the page that a shape reaches beyond."""
    box = layer.path.bounds
    over = (page[0] - box[0], page[1] - box[1], box[2] - page[2], box[3] - page[3])
    return tuple(side for side, by in zip(SIDES, over, strict=True) if by > NEAR)
