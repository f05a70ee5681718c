"""Names of files from what people type."""

from xlbatch.file_names import names_apart, whole_name


def test_no_two_names_are_alike_where_capitals_do_not_count() -> None:
    assert names_apart(["Alder", "alder", "ALDER", "Birch", ""], "no group") == {
        "Alder": "Alder", "alder": "alder 2", "ALDER": "ALDER 3", "Birch": "Birch", "": "no group",
    }  # fmt: skip


def test_a_device_s_name_is_no_file_s() -> None:
    assert whole_name("CON", "job") == "job CON"
    assert whole_name("Picnic", "job") == "Picnic"
    assert whole_name("", "job") == "job"
