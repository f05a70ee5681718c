"""In which encoding a list is that does not say so. Invented."""

import pytest

from xlbatch.files.encodings import judge

# Beside usual names some with the first or the last of the characters that are common there, or the first that is not.
LISTS = [
    ("cp949", "김철수 이영희 박민준 최지우"),
    ("cp949", "강가희 강간희"),
    ("cp949", "김철수 이영희 박萬수 최민준"),
    ("gb18030", "王国强 李丽 张伟 刘洋"),
    ("gb18030", "安白强 李冰 白国王"),
    ("gb18030", "陈海波 李国强 邹海"),
    ("big5", "王文心 方大中 尤元"),
    ("big5", "林志豪 陳美惠 吳建"),
    ("big5", "方豔驥"),
    ("cp932", "佐藤蓮 山田太郎 高橋さくら"),
    ("cp932", "さくら あおい ひなた"),
    ("cp932", "太郎 次郎 三郎"),
]


@pytest.mark.parametrize(("encoding", "names"), LISTS)
def test_names_of_eastern_asia(encoding: str, names: str) -> None:
    lines = [f"{name},M" for name in names.split()]
    assert judge("\n".join(["Who,Size", *lines, "Ana Novak,L"]).encode(encoding)).encoding == encoding
