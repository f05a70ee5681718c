"""Numbers of runs, strips and batches: anew while nothing of a plan is marked, and then after its last ones."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from xlbatch.film.layout import Batch, Layout
from xlbatch.kept.memory import KeptDecal, Memory


def retired(memory: Memory, now: Iterable[KeptDecal]) -> tuple[int, int]:
    """The run and the strip number up to which numbers are given for good: the plan's last ones as soon as any of what
    it had to cut is cut, weeded, spoiled or pressed."""
    state = {decal.id: decal.state for decal in now}
    marked = any(old.state == "to cut" and state.get(old.id) != "to cut" for old in memory.decals)
    return (memory.last_run, memory.last_strip) if marked else (memory.retired_run, memory.retired_strip)


def renumbered(layout: Layout, run: int, strip: int) -> Layout:
    """The layout with its runs numbered after `run`, its strips and batches after `strip`."""
    runs = tuple(
        replace(run_, no=run_.no + run, strips=tuple(replace(s, batch=s.batch + strip) for s in run_.strips))
        for run_ in layout.runs
    )
    batches = tuple(replace(batch, no=batch.no + strip) for batch in layout.batches)
    return replace(layout, runs=runs, batches=batches)


def press_batches(order: Sequence[int], laid: tuple[Batch, ...], ready: Mapping[str, KeptDecal]) -> tuple[Batch, ...]:
    """The batches to press: a garment stays in its batch while any of its decals is cut, the others are in that of
    their new strips. `order`: the garments' numbers in roster order."""
    batch_of = {no: batch.no for batch in laid for no in batch.garments}
    batch_of |= {decal.garment_no: decal.batch for decal in reversed(tuple(ready.values()))}
    members: dict[int, list[int]] = {}
    for no in order:
        if no in batch_of:
            members.setdefault(batch_of[no], []).append(no)
    return tuple(Batch(number, tuple(members[number])) for number in sorted(members)) if ready else laid
