"""What the entries of allergens ask beside a line on the label: maxima in the finished product, purities, questions."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from ledger.domain.label.market import AllergenList
from ledger.domain.material.allergens import Found, Holds
from ledger.reference.allergens import EntryLimit, allergen_named, counted_as, entry_limits


def not_allowed(one: Found, rule: AllergenList) -> bool:
    """Whether it is over the maximum of its entry, by a figure that was read, where that is known to hold."""
    return bool(one.over and rule.limits and entry_limits()[one.name].read)


def limit_words(
    found: Iterable[Found], parts: Sequence[Holds], peroxide: Mapping[str, int], rule: AllergenList
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is more than is allowed, and what is left to a person, in words.

    A figure from memory, and one of a market that is not known to have it, refuses nothing: it is asked.
    """
    lots = {part.lot_code: part for part in parts}
    above: list[str] = []
    asked: list[str] = []
    open_lots: dict[str, list[EntryLimit]] = defaultdict(list)
    for one in found:
        limit = entry_limits().get(one.name)
        if limit is None or not one.share_ppm:
            continue
        where = f"from lot {' and '.join(one.lots)}"
        if limit.kind == "maximum":
            _maximum(one, limit, where, rule, above, asked)
        elif limit.kind == "oral":
            asked.append(f"What {one.name}, {where}, is in it for: {limit.words} ({_source(limit)}).")
        elif limit.kind == "preserving":
            own = [lots[lot] for lot in one.lots if _is(lots[lot], one.name) and not lots[lot].fragrance]
            asked += [f"{_named(part)}, is put in as itself: {limit.words} ({_source(limit)})." for part in own]
        elif limit.kind == "free of":
            asked += _free_of([lots[lot] for lot in one.lots], limit)
        else:
            for lot in one.lots:
                if lot not in peroxide:
                    open_lots[lot].append(limit)
                elif limit.figure is not None and peroxide[lot] >= limit.figure * 1000:
                    text = f"{_named(lots[lot])}, has a peroxide value of {peroxide[lot] / 1000:g} mmol/L, and "
                    text += f"it is to be below {_figure(limit.figure)} for {one.name}"
                    _over(text, limit, rule, above, asked)
    asked += [_peroxide_asked(lots[lot], limits) for lot, limits in open_lots.items()]
    return tuple(above), tuple(asked)


def _maximum(one: Found, limit: EntryLimit, where: str, rule: AllergenList, above: list[str], asked: list[str]) -> None:
    most = f"at most {_figure(limit.figure)} %{f', {limit.words}' if limit.words else ''}"
    if one.over:
        share = f"{float(one.share_ppm / 10_000):.6g} %"
        _over(f"{one.name}, {where}, is {share} of the bar at its driest: {most}", limit, rule, above, asked)
    elif limit.words:
        asked.append(f"{one.name}, {where}: {most} ({_source(limit)}).")


def _over(text: str, limit: EntryLimit, rule: AllergenList, above: list[str], asked: list[str]) -> None:
    """What is over a figure: not allowed where that is known to hold here, else a question."""
    if rule.limits and limit.read:
        above.append(f"{text} ({rule.limits}, {_source(limit)})")
    elif rule.limits:
        asked.append(f"{text}, by a figure that nobody looked up ({_source(limit)}): a person decides.")
    else:
        asked.append(f"{text} in the EU ({_source(limit)}); the rule of this market is not known here.")


def _peroxide_asked(part: Holds, limits: Sequence[EntryLimit]) -> str:
    below = " and ".join(f"below {_figure(one.figure)} mmol/L for {one.name} ({_source(one)})" for one in limits)
    return (
        f"The peroxide value of {_named(part)}, is not stated; it is to be {below}. From its certificate: "
        f'soapledger material peroxide "{part.material}" VALUE --lot {part.lot_code} --source WORDS'
    )


def _free_of(parts: Sequence[Holds], limit: EntryLimit) -> list[str]:
    """Of which lots no statement says whether they hold what they may not."""
    names = limit.words.split(" and ")
    open_ = [
        part for part in parts if not {*map(counted_as, names)} <= {counted_as(one) for one in part.contains_ppm or {}}
    ]
    return [
        f"Whether {_named(part)}, is free of {limit.words}, which are prohibited, is not stated ({_source(limit)}). "
        f"Ask the supplier, and state both with the rest, as in {names[0].lower()}=0."
        for part in open_
    ]


def _is(part: Holds, name: str) -> bool:
    own = allergen_named(part.inci)
    return own is not None and own.name == name


def _named(part: Holds) -> str:
    return f"{part.material}, lot {part.lot_code}"


def _figure(figure: Fraction | None) -> str:
    return f"{float(figure or 0):g}"


def _source(limit: EntryLimit) -> str:
    return f"{limit.entry}; {limit.source}; {limit.status}"
