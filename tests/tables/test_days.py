"""Days as people write them, against a table made by hand with a calendar (the weekdays are those of ISO 8601)."""

from datetime import date

import pytest

from xlbatch.tables.days import Day, day_text, read_day, read_work_days

TODAY = date(2026, 10, 20)  # a Tuesday

UNDERSTOOD = (
    ("Saturday 7 November", "2026-11-07"),
    ("Sat 7 Nov", "2026-11-07"),
    ("Saturday, November 7th", "2026-11-07"),
    ("November 7", "2026-11-07"),
    ("7 November 2026", "2026-11-07"),
    ("7. November", "2026-11-07"),
    ("the 7th of November", "2026-11-07"),
    ("Nov 7, 3 pm", "2026-11-07"),
    ("Saturday 7 November, 10:30", "2026-11-07"),
    ("2026-11-07", "2026-11-07"),
    ("11/7/2026", "2026-11-07"),
    ("11/7", "2026-11-07"),
    ("11/7/26", "2026-11-07"),
    ("25/12/2026", "2026-12-25"),
    ("13/12/2026", "2026-12-13"),
    ("12/13/2026", "2026-12-13"),
    ("7.11.2026", "2026-11-07"),
    ("7-Nov-2026", "2026-11-07"),
    ("Sunday 10 January", "2027-01-10"),  # across the year's end
    ("10 January", "2027-01-10"),
    ("Thursday 31 December", "2026-12-31"),
    ("Friday 1 January", "2027-01-01"),
    ("15 October", "2026-10-15"),  # five days ago, not in a year
    ("Thursday 15 October", "2026-10-15"),
    ("Friday 15 October 2027", "2027-10-15"),
    ("29 February 2028", "2028-02-29"),
    ("Saturday", "2026-10-24"),  # the next one
    ("on Tuesday", "2026-10-27"),
    ("Sept 5", "2026-09-05"),
    ("Mar 3", "2027-03-03"),
    ("Saturday 17 April", "2027-04-17"),
    ("May 16", "2026-05-16"),  # 157 days ago; the next is 208 away
)
NOT_UNDERSTOOD = (
    ("Friday 7 November", "weekday"),  # a Saturday; the next Friday the 7th of November is in 2031
    ("Monday 1 January", "weekday"),
    ("Monday 7 November 2026", "weekday"),
    ("31 November", "none"),
    ("29 February", "none"),
    ("soon", "none"),
    ("the party", "none"),
    ("Saturday week", "none"),
    ("", ""),
    ("  ", ""),
)


@pytest.mark.parametrize(("text", "iso"), UNDERSTOOD)
def test_a_day_in_words_is_the_nearest_whose_weekday_agrees(text: str, iso: str) -> None:
    day = read_day(text, TODAY, month_first=True)
    assert isinstance(day, Day)
    assert day.day.isoformat() == iso
    again = read_day(day.text, date(2031, 5, 4), month_first=True)  # with its year it means the same for good
    assert again == day
    assert read_day(day_text(day.day), TODAY, month_first=False) == Day(day.day, day_text(day.day))


@pytest.mark.parametrize(("text", "why"), NOT_UNDERSTOOD)
def test_what_is_no_day_is_asked(text: str, why: str) -> None:
    assert read_day(text, TODAY, month_first=True) == why


def test_the_day_comes_first_where_people_write_it_so() -> None:
    for month_first, iso in ((True, "2026-11-07"), (False, "2026-07-11")):
        day = read_day("11/7/2026", TODAY, month_first=month_first)
        assert isinstance(day, Day)
        assert day.day.isoformat() == iso


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("every day", {0, 1, 2, 3, 4, 5, 6}), ("Monday to Friday", {0, 1, 2, 3, 4}), ("Mon-Fri", {0, 1, 2, 3, 4}),
        ("Saturday and Sunday", {5, 6}), ("Sat, Sun", {5, 6}), ("Fridays", {4}), ("Fri to Mon", {4, 5, 6, 0}),
        ("weekends", {5, 6}),
    ],
)  # fmt: skip
def test_work_days(text: str, days: set[int]) -> None:
    assert set(read_work_days(text) or ()) == days


@pytest.mark.parametrize("text", ["", "evenings", "Monday to", "Mon Tue"])
def test_work_days_that_are_unclear(text: str) -> None:
    assert read_work_days(text) is None
