"""Decals that lie cut and fit their garment no more: offered to another that could use them, and handed over."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from xlbatch.art.decal import Decal
from xlbatch.job.marks import AnswerMark
from xlbatch.kept.answered import NOT_NEEDED, OK
from xlbatch.kept.lasting import fits
from xlbatch.kept.memory import KeptChange, KeptDecal, KeptOffer, Memory
from xlbatch.kept.states import Standing
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase


def offers(unused: Iterable[KeptDecal], to_cut: Iterable[Decal]) -> tuple[KeptOffer, ...]:
    """For each such decal one still to cut in whose place it could go, each but once."""
    wanted = list(to_cut)
    offers_ = []
    for old in unused:
        if new := next((decal for decal in wanted if fits(old, decal)), None):
            wanted.remove(new)
            offers_.append(KeptOffer(old.id, new.garment_no, new.piece))
    return tuple(offers_)


def not_needed(stood: Standing, unused: Iterable[KeptDecal], offered: Iterable[KeptOffer]) -> Iterator[Problem]:
    """A question for each garment of which such decals lie there, and who could use them."""
    rows = {row.no: row for row in stood.job.roster}
    use = {offer.decal: phrase("fits another", number=offer.garment_no, piece=offer.piece) for offer in offered}
    of_garment: dict[int, list[KeptDecal]] = {}
    for decal in unused:
        of_garment.setdefault(decal.garment_no, []).append(decal)
    for number, decals in of_garment.items():
        if row := rows.get(number):
            yield problem(
                NOT_NEEDED,
                row.source.at("Who"),
                ", ".join(decal.id for decal in decals),
                suggestion="; ".join(f"{decal.id} {use[decal.id]}" for decal in decals if decal.id in use),
                rows=(row.source.row,) if row.source.row else (),
                what=", ".join(dict.fromkeys(decal.text or decal.piece for decal in decals)),
                number=number,
            )


def handed_over(memory: Memory, answers: Iterable[AnswerMark]) -> tuple[Memory, tuple[KeptChange, ...]]:
    """The memory with the decals whose offer was answered with ok given to whom they were offered, a line for each."""
    cells = {
        decal: mark.source.at("Answer").cell
        for mark in answers
        if mark.code == NOT_NEEDED and mark.answer.strip().casefold() == OK
        for decal in mark.found.split(", ")
    }
    taken = {offer.decal: offer for offer in memory.offers if offer.decal in cells}
    decals = tuple(
        replace(decal, garment_no=taken[decal.id].garment_no, piece=taken[decal.id].piece)
        if decal.id in taken
        else decal
        for decal in memory.decals
    )
    lines = (
        KeptChange(
            memory.plan + 1,
            "Problems",
            cells[decal.id],
            decal.id,
            "for",
            f"No. {decal.garment_no}, {decal.piece}",
            f"No. {taken[decal.id].garment_no}, {taken[decal.id].piece}",
            "",
        )
        for decal in memory.decals
        if decal.id in taken
    )
    return replace(memory, decals=decals), tuple(lines)
