"""One message a group, to be sent before anything is cut: it asks to confirm names and sizes."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from pathlib import PurePath

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.cutfiles.run_svg import CutFile
from xlbatch.file_names import plain_name
from xlbatch.job.job import Settings
from xlbatch.resources import templates

_LAST_PLAIN = 0x7E  # the last letter of plain English keyboards (ASCII)


def messages(garments: Iterable[Garment], decals: Iterable[Decal], settings: Settings) -> tuple[CutFile, ...]:
    """The message to each group, in the order of the list; garments without a group share one."""
    on_it: dict[int, list[Decal]] = defaultdict(list)
    for decal in decals:
        if not decal.border:
            on_it[decal.garment_no].append(decal)
    groups: dict[str, list[Garment]] = defaultdict(list)
    for garment in garments:
        groups[garment.group].append(garment)
    environment = Environment(  # plain text: nothing to escape
        loader=FileSystemLoader(templates()), undefined=StrictUndefined, keep_trailing_newline=True, autoescape=False
    )
    message = environment.get_template("message.txt.j2")
    return tuple(
        CutFile(
            name,
            message.render(
                job=settings.job_name,
                group=group,
                needed_by=settings.needed_by,
                garments=[_told(garment, on_it[garment.no]) for garment in groups[group]],
            ),
        )
        for group, name in _names(groups).items()
    )


def _told(garment: Garment, decals: Sequence[Decal]) -> Mapping[str, object]:
    texts = [decal.text for decal in decals if decal.text]
    unusual = dict.fromkeys(letter for text in texts for letter in text if ord(letter) > _LAST_PLAIN)
    return {
        "no": garment.no,
        "who": garment.who,
        "what": f"{garment.blank.garment}, size {garment.blank.size}, {garment.color}",
        "texts": texts,
        "drawings": list(dict.fromkeys(PurePath(decal.spec.artwork).stem for decal in decals if decal.spec.artwork)),
        "letters": ", ".join(f"{letter} = U+{ord(letter):04X}" for letter in unusual),
    }


def _names(groups: Iterable[str]) -> Mapping[str, str]:
    """A file name for each group that every system takes, no two alike where capitals do not count."""
    found: dict[str, str] = {}
    taken: set[str] = set()
    for group in groups:
        plain = plain_name(group) or "without a group"
        name, number = f"message - {plain}", 2
        while name.casefold() in taken:
            name, number = f"message - {plain} {number}", number + 1
        taken.add(name.casefold())
        found[group] = f"{name}.txt"
    return found
