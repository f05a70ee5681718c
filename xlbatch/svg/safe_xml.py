"""Reads the text of an SVG file safely: no entities, nothing from outside the file, bounded size and depth."""

from collections.abc import Mapping
from xml.etree.ElementTree import Element, TreeBuilder
from xml.parsers import expat

from xlbatch.svg.faults import Unreadable

LARGEST = 5_000_000  # bytes
_DEEPEST = 100
_NAMESPACE = "http://www.w3.org/2000/svg"
_LINK = "http://www.w3.org/1999/xlink href"
_SPACE = "http://www.w3.org/XML/1998/namespace space"
_OTHER = "other"  # the tag of elements that are not SVG, such as a drawing program's own notes


def parse_svg(data: bytes) -> Element:
    """The tree of a drawing, tags and attributes without namespaces. Raises Unreadable."""
    if len(data) > LARGEST:
        raise Unreadable("too large")
    if data.startswith(b"\x1f\x8b"):
        raise Unreadable("compressed")
    root = _tree(data)
    if root.tag != "svg":
        raise Unreadable("not a drawing")
    return root


def _tree(data: bytes) -> Element:
    parser = expat.ParserCreate(namespace_separator=" ")
    tree = _Tree()
    parser.StartElementHandler = tree.start
    parser.EndElementHandler = tree.end
    parser.CharacterDataHandler = tree.text
    parser.ProcessingInstructionHandler = _refuse_style_file
    parser.EntityDeclHandler = _refuse_entity
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        raise Unreadable("broken" if b"<svg" in data else "not a drawing") from error
    except (LookupError, ValueError) as error:  # an encoding that does not exist, or not for XML
        raise Unreadable("letters") from error
    return tree.builder.close()


def _refuse_entity(*_declaration: object) -> None:
    raise Unreadable("entities")


def _refuse_style_file(target: str, _data: str) -> None:
    if target == "xml-stylesheet":
        raise Unreadable("external")


class _Tree:
    """Builds the tree, counting how deep it goes."""

    def __init__(self) -> None:
        self.builder = TreeBuilder()
        self.depth = 0

    def start(self, tag: str, attributes: Mapping[str, str]) -> None:
        self.depth += 1
        if self.depth > _DEEPEST:
            raise Unreadable("too deep")
        plain = {name: value for name, value in attributes.items() if " " not in name}
        if _LINK in attributes:
            plain.setdefault("href", attributes[_LINK])
        if _SPACE in attributes:
            plain["xml:space"] = attributes[_SPACE]
        self.builder.start(_local(tag), plain)

    def text(self, text: str) -> None:
        self.builder.data(text)

    def end(self, tag: str) -> None:
        self.depth -= 1
        self.builder.end(_local(tag))


def _local(tag: str) -> str:
    namespace, _, name = tag.rpartition(" ")
    return name if namespace in ("", _NAMESPACE) else _OTHER
