"""The parts of a zipped workbook and their XML. Whatever the libraries raise at damage is a Refusal here."""

import io
import lzma
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator
from typing import TypeVar
from xml.etree.ElementTree import Element, ParseError, fromstring, iterparse

from xlbatch.problems.refusals import Refusal

_FAULTS = (  # what zipfile and its decompressors raise
    *(zipfile.BadZipFile, zlib.error, lzma.LZMAError, struct.error, EOFError, OSError),
    *(LookupError, ValueError, OverflowError, RuntimeError, NotImplementedError),
)
_XML_FAULTS = (ParseError, LookupError, ValueError)  # the last two of an encoding that is none, or not for XML

_Read = TypeVar("_Read")


def opened(data: bytes) -> zipfile.ZipFile:
    """A workbook's bytes as an archive. Raises Refusal."""
    try:
        return zipfile.ZipFile(io.BytesIO(data))
    except _FAULTS as error:
        raise Refusal("damaged") from error


def part(archive: zipfile.ZipFile, name: str) -> bytes:
    """A part unpacked. Raises Refusal where it lacks or is damaged."""
    try:
        return archive.read(name)
    except _FAULTS as error:
        raise Refusal("damaged") from error


def size(archive: zipfile.ZipFile, name: str) -> int:
    """How many bytes a part says it unpacks to. Raises Refusal where it lacks."""
    try:
        return archive.getinfo(name).file_size
    except KeyError as error:
        raise Refusal("damaged") from error


def root(xml: bytes) -> Element:
    """A part's outermost element. Raises Refusal."""
    try:
        return fromstring(xml)
    except _XML_FAULTS as error:
        raise Refusal("damaged") from error


def elements(xml: bytes, tag: str) -> Iterator[Element]:
    """A part's elements of one kind, each emptied once it was looked at. Raises Refusal."""
    try:
        for _, element in iterparse(io.BytesIO(xml)):
            if element.tag == tag:
                yield element
                element.clear()
    except _XML_FAULTS as error:
        raise Refusal("damaged") from error


def value(read: Callable[[str], _Read], text: str) -> _Read:
    """What an attribute says. Raises Refusal where `read` raises ValueError."""
    try:
        return read(text)
    except ValueError as error:
        raise Refusal("damaged") from error
