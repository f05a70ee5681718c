"""Workbooks spoiled in the parts they are packed of."""

import io
import random
import re
import zipfile
from xml.sax.saxutils import escape


def with_formulas(dice: random.Random, data: bytes) -> bytes:
    """Cells made formulas that have their results saved, of every type, and a few that have none."""
    with zipfile.ZipFile(io.BytesIO(data)) as old:
        parts = {name: old.read(name) for name in old.namelist()}
    strings = re.findall(r"<si>.*?</si>", parts.get("xl/sharedStrings.xml", b"").decode(), re.DOTALL)
    texts = ["".join(re.findall(r"<t[^>]*>(.*?)</t>", each, re.DOTALL)) for each in strings]

    def formula(found: re.Match[str]) -> str:
        if dice.random() > 0.2:
            return found[0]
        ref, kind, value = found["ref"], found["kind"], found["value"]
        way = dice.randrange(5)
        if way == 0:
            return f'<c r="{ref}" t="e"><f>A1/0</f><v>#DIV/0!</v></c>'
        if way == 1:
            return f'<c r="{ref}"><f>A1</f></c>'
        if kind == "s":
            return f'<c r="{ref}" t="str"><f>"x"&amp;""</f><v>{texts[int(value)]}</v></c>'
        return f'<c r="{ref}" t="{kind or "n"}"><f>{escape("IF(1>0,7,8)")}</f><v>{value}</v></c>'

    cell = re.compile(r'<c r="(?P<ref>[A-Z]+\d+)"[^>]*?(?: t="(?P<kind>\w+)")?><v>(?P<value>[^<]*)</v></c>')
    for name in parts:
        if name.startswith("xl/worksheets/sheet"):
            parts[name] = cell.sub(formula, parts[name].decode()).encode()
    return _zipped(parts)


def _zipped(parts: dict[str, bytes]) -> bytes:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new:
        for name, part in parts.items():
            new.writestr(name, part)
    return file.getvalue()


def spoil_parts(dice: random.Random, data: bytes) -> bytes:
    """Bytes flipped inside the parts, or a package cut short, with parts swapped or missing."""
    with zipfile.ZipFile(io.BytesIO(data)) as old:
        parts = {name: old.read(name) for name in old.namelist()}
    names = sorted(parts)
    way = dice.randrange(6)
    if way == 0:
        return data[: dice.randrange(1, len(data))]
    if way == 1:  # a bit of the compressed stream
        at = dice.randrange(len(data))
        return data[:at] + bytes([data[at] ^ 1 << dice.randrange(8)]) + data[at + 1 :]
    if way == 2:
        del parts[dice.choice(names)]
    elif way == 3:
        one, other = dice.sample(names, 2)
        parts[one], parts[other] = parts[other], parts[one]
    else:
        name = dice.choice([each for each in names if each.endswith(".xml")])
        part = bytearray(parts[name])
        for _ in range(dice.randint(1, 5)):
            part[dice.randrange(len(part))] ^= 1 << dice.randrange(8)
        parts[name] = bytes(part)
    return _zipped(parts)
