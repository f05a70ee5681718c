"""What each column of a list is, by its heading and what stands below it. Invented; common practice, no source."""

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.roster_columns import decide

# headings / rows => what each column is; - nothing, = said twice, ? judged by its contents, ~ of consequence but unused
LISTS = """
Who|Size/Ana|M/Bo|L => Who Size
Person|Shirt/Ana|M/Bo|no shirt => Who Size?
Person|Shirt/Ana|M/Bo|Hoodie => Who Garment
Person|Shirt/Ana|Hoodie/Bo|Polo => Who Garment
Person|Shirt/Ana|yes/Bo|no => Who Wanted
Person|Shirt?/Ana|M/Bo|no => Who Size?
Person|T-shirt (age)/Ana|7-8/Bo|5-6 => Who Size
Person|T-shirt (age)/Ana|7-8/Bo|blue/Cy|red => Who Size
Name|Size|Hoodie instead of tee?/Ana|M|yes/Bo|L|no => Who Size -~answer
Name|Size|Hoodie?/Ana|M|yes/Bo|L|no => Who Size -~answer
No.|Name|Size/1|Ana|M/2|Bo|L => Counter Who Size
Name|No.|Size/Ana|1|M/Bo|2|L => Who Number Size
#|Name|Size/7|Ana|M/12|Bo|L => Number Who Size
Name|Size|Women's cut?/Ana|M|women/Bo|L|men => Who Size Cut
Name|Size|Cut/Ana|M|women/Bo|L|men => Who Size Cut
Name|Size|x/Ana|M|women/Bo|L|men => Who Size Cut
Name|Size|x/Ana|M|women/Bo|L|blue => Who Size Color?
Name|Size|Print name?/Ana|M|yes/Bo|L|no => Who Size Name_wanted
Name|Size|Name on shirt?/Ana|M|yes/Bo|L|no => Who Size Name_wanted
Name|Size|Name on shirt?/Ana|M|ANA/Bo|L|BO => Who Size Print_name
Name|Size|Wants a shirt/Ana|M|yes/Bo|L|no => Who Size Wanted
Name|Size|Wants a shirt/Ana|M|yes => Who Size -
Name|Size|Not coming/Ana|M|x/Bo|L| => Who Size Not_wanted
Name|Size|Not coming/Ana|M|/Bo|L| => Who Size -
Last name|Size/Klein|M/Lang|L => Who? Size
Name|Size/Klein|M/Lang|L => Who Size
Name|Size/Klein|M/Ana|L => Who Size
First name|Name|Size/Ana|Blom|M/Bo|Berg|L => First_name Last_name? Size
First name|Group|Size/Ana|Blom|M/Bo|Berg|L => First_name Group Size
First name|Last name|Name|Size/Ana|Blom|Annie|M/Bo|Berg|Bobo|L => First_name Last_name Who Size
First name|Last name|Parent|Size/Ana|Blom|Pia Blom|M/Bo|Berg|Jo Berg|L => First_name Last_name Someone_else Size
Player|Name|Size/Ana Blom|ANA|M/Bo Berg|BO|L => Who Print_name? Size
Player|Name|Size/Ana Blom|Ana Blom|M/Bo Berg|BO|L => Who Who=~text Size
Player|Name|Size/Ana Blom|ANA|M/Bo Berg|Bo Berg|L/Cy Kim|CY|S => Who Print_name? Size
||/Ana Blom|M|red/Bo Berg|L|blue => Who? Size? Color?
|||/Ana Blom|M|7|a@b.org/Bo Berg|L|12|c@d.org => Who? Size? -~number -
Name|Size|Color|Note|Foo/Ana|M|navy|late|Zed/Bo|L|red||Yak => Who Size Color Note -~text
Name|Size|Foo/Ana|M|yes/Bo|L|no => Who Size -~answer
Name|Size|Foo/Ana|M|7/Bo|L|12 => Who Size -~number
Name|Size|Foo/Ana|M|L/Bo|L|M => Who Size -~size
Name|Size|Wanted|Foo/Ana|M|yes|yes/Bo|L|no|no => Who Size Wanted -
Name|Size|Print name|Foo/Ana|M|ANA|Zed/Bo|L|BO|Yak => Who Size Print_name -
Name|Size|Number|Foo/Ana|M|7|8/Bo|L|12|13 => Who Size Number -~number
Name|Size||/Ana|M|7/Bo|L|12 => Who Size - -
Name|Size|Number|Jersey no./Ana|M|7|8/Bo|L|12|13 => Who Size Number Number=~number
Wear tee?|Name|Size|Hoodie wanted?/yes|Ana|M|no/no|Bo|L|yes => Wanted Who Size Wanted
Name|Size|Wanted?|Tee wanted?/Ana|M|yes|no/Bo|L|no|yes => Who Size Aside Wanted
Name|Size|Coming?|Wants one?/Ana|M|yes|no/Bo|L|no|yes => Who Size Wanted Wanted
Name|Gr./Ana|M/Bo|L => Who Size?
Name|Gr./Ana|M => Who Aside
Name|Gr./Ana|M/Bo|late => Who Aside
Ticket holder|Size/Ana Blom|M/Bo Berg|L => Who Size
Ticket holder|Size/Ana Blom|M/Ana Blom|L => Who Size
Confirmed|Size/Ana Blom|M/Bo Berg|L => Who? Size
Family|Size/Ana Blom|M/Bo Berg|L => Who? Size
Team list|Size/Ana Blom|M/Bo Berg|L => Who? Size
Parent|Size/Ana Blom|M/Bo Berg|L => Who? Size
Zork|Size/Ana Blom|M/Bo Berg|L => Who? Size
Zork|Size/Ana Blom|M/Ana Blom|L => Who? Size
Print name|Size/ANA|M/BO|L => Who Size
Print name|Size|Ordered by/ANA|M|Pia Blom/BO|L|Jo Berg => Print_name Size Who?
Print name|Size|Zork/ANA|M|Pia Blom/BO|L|Jo Berg => Print_name Size Who?
Name|Size|Other text/Ana|M|GO/Bo|L|TEAM => Who Size Print_name
Name|Size|Print name?|Zork/Ana|M|yes|Annie/Bo|L|no| => Who Size Name_wanted -
Name|Size|Print name?|Zork/Ana|M|yes|Annie/Bo|L|no|Bobo => Who Size Name_wanted Print_name?
Zork|Name|Size|Print name?/Annie|Ana|M|yes/Bobo|Bo|L|no => -~text Who Size Name_wanted
Player|Name|Size/Ana B|A|M/Bo B|B|L/Cy K|Cy K|S/Di L|D|S/Ed M|Ed M|S => Who Print_name? Size
Player|Name|Size/Ana B|A|M/Bo B|Bo B|L/Cy K|Cy K|S/Di L|D|S/Ed M|Ed M|S => Who Who=~text Size
Player|Name|Size/Ana B|A|M => Who Who= Size
Player|Name|Size/Ana B|A|M/Bo B||L => Who Who= Size
First name|Name|Size/Ana|Ana Blom|M/Bo|Bo Berg|L => First_name Who Size
First name|Name|Size/Ana|Blom|M/Bo|Berg|L/Cy|Kim|S/Di|Lu Marsh|S/Ed|Mo Pike|S => First_name Who Size
First name|Name|Size/Ana|Blom|M/Bo|Berg|L/Cy|Kim|S/Di|Marsh|S/Ed|Mo Pike|S => First_name Last_name? Size
First name|Last name|Nick|Size/Ana|Blom|Annie|M/Bo|Berg|Bobo|L => First_name Last_name Print_name Size
First name|Last name|Player|Size/Ana|Blom|Ann|M/Bo|Berg|Bob|L => First_name Last_name Who Size
First name|Last name|Contact|Size/Ana|Blom|Pia Blom|M/Bo|Berg|Jo Berg|L => First_name Last_name Someone_else Size
Name|Team|Size/Ana|Red|M/Bo|Blue|L => Who Group Size
Class|Size/Ana Blom|M/Bo Berg|L => Group Size
Household|Size/Ana|M/Bo|L => Group Size
Household|Size/Ana Blom|M/Ana Blom|L => Group Size
Household|Size/Ana Blom|M/Bo Berg|L/red|S => Who? Size
Household|Size/Ana Blom|M/Bo Berg|L/7|S => Who? Size
Name for the shirt (family)|Size/Blom|M/Berg|L => Who Size
Status|Size/Ana Blom|M/Bo Berg|L => Who? Size
Paid|Size/Ana Blom|M/Bo Berg|L => Who? Size
Number|Size/Ana Blom|M/Bo Berg|L => Who? Size
Number|Size/Ana Blom|M/Ana Blom|L => Number Size
Phone|Parent|Size/Ana Blom|Pia|M/Bo Berg|Jo|L => Aside Who? Size
Name|Size|Foo/Ana|M|yes/Bo|L|no/Cy|S| => Who Size -~answer
Name|Size|Status|Foo/Ana|M|done|yes/Bo|L||no => Who Size Status -
Name|Size|T-shirt|Foo/Ana|M|yes|M/Bo|L|no|L => Who Size Wanted -~size
Zork|/Ana|M/Bo|L => Who? Size?
Name|Size|Garment/Ana|M|tee/Bo|L|hoodie => Who Size Garment
Name|Size|Zork/Ana|M|tee/Bo|L|hoodie => Who Size Garment?
Name|Size|Qty/Ana|M|1/Bo|L|2 => Who Size How_many
Name|Size|Zork/Ana|M|1/Bo|L|1 => Who Size -~number
Name|Size|Number printed?/Ana|M|yes/Bo|L|no => Who Size Number_wanted
Name|Size|von/Ana|M|van/Bo|L|de => Who Size -
Last name|Particle|First name|Size/Blom|van|Ana|M/Berg|de|Bo|L => Last_name Particle First_name Size
Name|Size|Sleeve text/Ana|M|GO/Bo|L|TEAM => Who Size Sleeve_text~text
Name|Size|Sleeve text|Other text/Ana|M|GO|X Y/Bo|L|TEAM|Y Z => Who Size Sleeve_text~text Print_name
Name|Size|Text 1|Text 2/Ana|M|GO|Up High/Bo|L|TEAM|Down Low => Who Size Print_name Other_text~text
Name|Shirt|Size/Ana|M|M/Bo|L|L => Who -~size Size
Name|Size|Age/Ana|M|8/Bo|L|9 => Who Size Aside
Name|Age size/Ana|8/Bo|10 => Who Aside
Name|Size|Shoe size/Ana|M|38/Bo|L|41 => Who Size Aside
Name|Size|Print color/Ana|M|white/Bo|L|gold => Who Size Print_color
Name|Size|Color|Print color/Ana|M|white|red/Bo|L|gold|red => Who Size Color Print_color
Name|T-shirt or hoodie?|Size/Ana|yes|M/Bo|no|L => Who -~answer Size
Name|Shirt (S-XL)/Ana|M/Bo|L => Who Size?
Name|No shirt/Ana|x/Bo| => Who Not_wanted
Name|Size|x/Ana|M|women/Bo|L|men/Cy|S|men/Di|S|late => Who Size -
Name|Size|x/Ana|M|women/Bo|L|men/Cy|S|men/Di|S| => Who Size Cut
Name|Size|Foo/Ana|M|red/Bo|L|12:30 => Who Size Color?
Name|Size/7|M/12|L => Who Size
Name|Size/Klein|M/a@b.org|L => Who Size
Last name|Size/M|M/a@b.org|L => Who? Size
Name|Size|Number|Shirt no. and size/Ana|M|7|1/Bo|L|9|2 => Who Size Number -
Name|Size|Number|Points/Ana|M|7|1/Bo|L|9|2 => Who Size Number -
|||/Ana Blom|M|L|7/Bo Berg|L|M|7 => Who? Size? -~size -~number
"""


def meanings(text: str, skipped: frozenset[int] = frozenset()) -> str:
    head, *rows = [[Raw(int(cell) if cell.isdigit() else cell) for cell in row.split("|")] for row in text.split("/")]
    cells = [{column: cell for column, cell in enumerate(row, 1) if cell.value != ""} for row in rows]
    found = decide({column: str(cell.value) for column, cell in enumerate(head, 1)}, cells, skipped)
    words = []
    for column in range(1, len(head) + 1):
        match, unused = found.matches.get(column), found.unused.get(column)
        name = match.meaning.replace(" ", "_") + "=" * match.twice if match else "-"
        words.append(name + "?" * (column in found.guessed) + (f"~{unused}" if unused else ""))
    return " ".join(words)


@pytest.mark.parametrize("line", LISTS.strip().splitlines())
def test_what_each_column_is(line: str) -> None:
    text, expected = line.split(" => ")
    assert meanings(text) == expected


@pytest.mark.parametrize(
    ("counts", "whose"),
    [("1|3/Bo||1", "Group?"), ("1|3/Bo||", "Who?"), ("x|9/Bo|1|1", "Group?"), ("12345|/Bo|1|", "Who?")],
)
def test_names_beside_counts_for_more_than_two_each_are_groups(counts: str, whose: str) -> None:
    """Nobody takes more than two; 12345 is no count."""
    assert meanings(f"|S|M/Ana|{counts}", frozenset((2, 3))) == f"{whose} - -"
    assert meanings(f"Name|S|M/Ana|{counts}", frozenset((2, 3))) == "Who - -"


def test_by_headings_alone_nothing_is_guessed() -> None:
    found = decide({1: "Zork", 2: "Size", 3: "Player", 4: "Name"}, ())
    assert (found.guessed, dict(found.unused)) == ((), {})
    assert [found.matches[column].twice for column in (2, 3, 4)] == [False, False, True]


def test_a_list_has_no_more_than_sixty_columns_and_its_first_rows_tell_them() -> None:
    titles = dict.fromkeys(range(1, 62), "Foo")
    assert decide(titles | {60: "Size"}, ()).meaning == {60: "Size"}
    assert decide(titles | {61: "Size"}, ()).meaning == {}
    people = [{1: Raw("Ana"), 2: Raw("M")}] * 51
    for row, seen in ((49, True), (50, False)):
        late = [{**cells, 3: Raw("blue")} if no >= row else cells for no, cells in enumerate(people)]
        assert (3 in decide({1: "Name", 2: "Size"}, late).meaning) is seen
