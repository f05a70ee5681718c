"""What a sign-up sheet asks and offers, taken from a job."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import NamedTuple

from xlbatch.job.job import Blank, Class, DecalSpec, Job

CLASSES: tuple[Class, ...] = ("adult", "ladies", "youth", "toddler", "infant")
CHILDREN: tuple[Class, ...] = ("youth", "toddler", "infant")
NAMED = ("print name",)  # decals that print a person's name
_NAME_FIELDS = ("{Who}", "{First name}", "{Print name}")


class Usual(NamedTuple):
    """What a shirt of this job usually is."""

    design: str
    garment: str
    color: str


@dataclass(frozen=True)
class Asked:
    """The event, its days in the person's own words, and what may be chosen."""

    event: str
    needed_by: str
    garments: tuple[str, ...]
    blanks: tuple[Blank, ...]  # one for each garment and size on offer
    colors: tuple[str, ...]
    price: Decimal | None
    prints_name: bool
    prints_number: bool
    usual: Usual  # what most people get

    def sizes(self) -> Mapping[Class, tuple[Blank, ...]]:
        """The blanks of each class that has any, the first garment's where several have a size."""
        by_class: dict[Class, dict[str, Blank]] = {}
        for blank in self.blanks:
            by_class.setdefault(blank.for_, {}).setdefault(blank.size, blank)
        return {for_: tuple(by_class[for_].values()) for for_ in CLASSES if for_ in by_class}

    @property
    def for_children(self) -> bool:
        """Whether a child's name may come to stand on a shirt."""
        return self.prints_name and any(blank.for_ in CHILDREN for blank in self.blanks)


def asked(job: Job) -> Asked:
    """What to ask for a job: its own garments and colors where the person listed any, else the usual ones."""
    own = tuple(blank for blank in job.blanks if not blank.source.built_in)
    settings, rows = job.settings, job.roster
    usual = Usual(
        _most((row.design for row in rows), settings.usual_design),
        _most((row.garment for row in rows), settings.usual_garment),
        _most((row.color for row in rows), settings.usual_color),
    )
    blanks = own or tuple(blank for blank in job.blanks if blank.garment.casefold() == usual.garment.casefold())
    offered = _different(color for blank in own for color in blank.colors) or (usual.color,)
    specs = [spec for spec in job.designs if spec.design.casefold() == usual.design.casefold()]
    return Asked(
        event=job.settings.job_name or job.path.stem,
        needed_by=job.settings.needed_by,
        garments=_different(blank.garment for blank in blanks),
        blanks=blanks,
        colors=offered,
        price=job.settings.fixed_price,
        prints_name=any(map(_prints_name, specs or job.designs)),
        prints_number=any(spec.what == "number" for spec in specs or job.designs),
        usual=usual,
    )


def _prints_name(spec: DecalSpec) -> bool:
    return spec.what in NAMED or any(field in spec.text for field in _NAME_FIELDS)


def _most(names: Iterable[str], usual: str) -> str:
    """The name that most rows have; the usual one where none says."""
    counted = Counter(name for name in names if name)
    return counted.most_common(1)[0][0] if counted else usual


def _different(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
