"""Names of all the world pass unchanged from the cell to the proof and to the title in the cut file.

Where neither a bundled font nor one of the computer has a script, its names are held back with `font-lacks`: those
pass unchanged from the cell to the roster and to the problem. Debian's fonts-noto-core and fonts-noto-cjk have all.
"""

import csv
import html
import unicodedata
from datetime import datetime
from pathlib import Path

import pytest

from tests.workbooks import write_workbook
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.lettering.fonts import stand_in
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan
from xlbatch.sheets import proof

DATA = Path(__file__).parent / "data"
HOLDS_BACK = {"font-lacks", "text-directions"}
FONTS = [
    Path("/usr/share/fonts", *each.split())
    for each in ("opentype noto NotoSansCJK-Bold.ttc", "truetype noto NotoSansKhmer-Bold.ttf")
]
INVENTED = {
    "patronymic": "Björk Þorleifsdóttir",
    "two surnames": "Inés Peñalver y Sotomayor",
    "particle": "Marijke van der Wielen-Bosch",
    "family name first": "Nguyễn Thị Hạnh",
    "one name": "Sukarna",
    "initials": "J. R. Abernethy-Vale",
    "no case": "อรุณี ทองดี",
    "right to left": "נעמה בן־דרור",
    "apostrophe and hyphen": "Siobhán O’Dwyer-Quill",
    "Cyrillic with patronymic": "Олена Тарасівна Гаврилюк",
    "Greek": "Ελένη Καρρά",
    "generation": "Otis Fairweather III",
}


def cldr_names() -> list[str]:
    """The sample names of every locale of the Unicode CLDR 48.2 (npm cldr-person-names-full, Unicode License V3)."""
    with (DATA / "cldr_person_names.csv").open(encoding="utf-8", newline="") as file:
        return [line["Name"] for line in csv.DictReader(file)]


def planned(names: list[str], folder: Path) -> Plan:
    roster = [["Who", "Size"], *([name, "5XL"] for name in names)]
    small = [["Setting", "Value"], ["Least letter height", "1/8 in"]]  # so that the longest names fit
    path = write_workbook(folder / "names.xlsx", {"Roster": roster, "Job": small})
    reading = read(path)
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _stage: None, datetime(2026, 5, 4))


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> Plan:
    return planned([*INVENTED.values(), *cldr_names()], tmp_path_factory.mktemp("names"))


def test_every_name_reaches_the_roster_unchanged(world: Plan) -> None:
    """Byte for byte: the samples are in Unicode's composed form, which cleaning gives."""
    names = [*INVENTED.values(), *cldr_names()]
    assert len(names) > 900
    assert [row.who for row in world.job.roster] == [unicodedata.normalize("NFC", name) for name in names]
    assert [name for name in names if unicodedata.normalize("NFC", name) != name] == []


def test_every_name_a_font_has_reaches_the_proof_and_the_cut_file_unchanged(world: Plan) -> None:
    texts = list(proof.table(world)["Exact text"])
    assert texts == [garment.who for garment in world.garments]
    cut = "\n".join(file.text for file in cut_files(world.layout, world.job.settings) if "mirrored" in file.name)
    titles = html.unescape(cut)
    assert [text for text in texts if f" {text}, Black smooth</title>" not in titles] == []


def test_four_names_in_five_are_in_scripts_of_the_bundled_fonts() -> None:
    names = [*INVENTED.values(), *cldr_names()]
    assert len(names) == 928
    assert sum(stand_in(name, "Archivo Black") is not None for name in names) == 729


@pytest.mark.skipif(
    not all(map(Path.exists, FONTS)), reason="Debian's fonts-noto-core and -cjk are not on this computer"
)
def test_with_fonts_for_them_every_name_gets_through(world: Plan) -> None:
    assert world.held == ()
    assert len(world.garments) == 928


def test_the_others_are_held_back_by_name(world: Plan) -> None:
    held = {row.who for row in world.held}
    named = {each.found for each in world.problems if each.code in HOLDS_BACK}
    assert held == named
    assert len(held) + len({garment.who for garment in world.garments}) == len({row.who for row in world.job.roster})
    assert {garment.who for garment in world.garments} >= set(INVENTED.values())


def test_no_name_is_taken_for_a_mistake(world: Plan) -> None:
    """Nothing but fonts, directions and length is said of them, but that two differ by one letter, and of Nil."""
    said = {each.code for each in world.problems if each.level != "note"}
    lettering = {"font-computer", "stroke-thin", "gap-thin", "dot-small"}
    assert said <= HOLDS_BACK | lettering | {"font-other", "name-alike", "who-twice", "name-or-none"}
    assert [each.found for each in world.problems if each.code == "name-or-none"] == ["Nil"]
