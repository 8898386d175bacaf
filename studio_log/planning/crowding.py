"""What is recorded as under way together and does not fit: told, and not planned away."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from studio_log.language.words import tr
from studio_log.planning.plain_words import amount_words
from studio_log.planning.problem import Lot, Vessel
from studio_log.planning.vessel_words import store_words


def crowded(
    lots: Sequence[Lot], vessels: Sequence[Vessel], stores: Mapping[str, int]
) -> tuple[str, ...]:
    """Give a sentence for each kind of thing that running steps take more of than there is."""
    taken: dict[str, list[tuple[str, int]]] = defaultdict(list)
    for lot in lots:
        for step in lot.steps:
            fact = lot.facts.get(step.name)
            if fact is not None and fact.end is None:
                for kind, much in step.uses.items():
                    taken[kind].append((lot.name, much))
    said = []
    for kind, some in taken.items():
        own = [one for one in vessels if one.kind == kind]
        room = stores.get(kind, sum(one.size for one in own))
        asked = sum(much for _, much in some)
        alone = bool(own) and all(one.one_lot for one in own) and len(some) > len(own)
        if asked > room or alone:
            names = ", ".join(name for name, _ in some)
            there = amount_words(room)
            if alone:
                there = tr("vessels for {n} at a time", n=len(own))
            text = tr(
                "{lots} are recorded as running in {much} of {kind} together; the studio has "
                "{there}. Correct the record or add what is missing.",
                lots=names,
                much=amount_words(asked),
                kind=store_words(kind),
                there=there,
            )
            said.append(text)
    return tuple(said)
