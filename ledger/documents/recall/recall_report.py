"""The recall report: the first page alone must do for the telephone."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Paragraph, Spacer

from ledger.documents.kit.blocks import heading
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import Sheet, build, para
from ledger.documents.recall.recall_tables import (
    TYPE,
    asked_table,
    bars_table,
    batches_table,
    bulk_table,
    call_table,
    doubts_table,
    few_codes,
    lots_table,
    notices_table,
    totals_sum,
)
from ledger.units.wording import count
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_words import as_known_words, back_from_nowhere_words, differences_words, grams_words

_ON_PAGE_ONE = 5  # of what cannot be excluded; more of it begins the second page
_LOTS, _ASKED, _CODES = 10, 10, 60  # on page one, which must do for the telephone


def draw_recall(view: RecallAnswer, *, paper: str = "A4") -> bytes:
    """The report as a PDF, marked where it is an exercise."""
    view = printable(view)
    mark = "EXERCISE" if view.exercise else None
    more = f" and {len(view.asked) - 1} more" if len(view.asked) > 1 else ""
    code = f"Recall {view.asked[0]}{more}"
    sheet = Sheet(paper, code, "Recall report", view.business, view.printed_from, TYPE, mark)
    wide = sheet.width
    story = [*_first_page(view, wide), PageBreak()]
    if len(view.lots) > _LOTS:
        story += [*heading("Lots it is about", TYPE.head), lots_table(view, wide)]
    if rest := view.cannot_exclude[_ON_PAGE_ONE:]:
        story += heading("Cannot be excluded either", TYPE.head)
        story.append(doubts_table(rest, wide))
    story += heading("Batches reached", TYPE.head)
    story.append(batches_table(view, wide) if view.batches else _say("It went into no batch."))
    story += heading("Bars, place by place", TYPE.head)
    story.append(bars_table(view, wide) if view.bars else _say("No bars were made of it."))
    story += [_say(line) for line in differences_words(view)]
    story += [_say(f"Of batch {one.batch_code}, {one.words}.") for one in view.back_on_sale]
    if view.bulk:
        story += heading("Loose material made from it that is here", TYPE.head)
        story.append(bulk_table(view, wide))
    return build(story, sheet)


def no_doubts(view: RecallAnswer) -> str:
    """What was looked through and found to hold nothing more: said of just what there was to look through."""
    materials = " or ".join(dict.fromkeys(one.material for one in view.lots))
    looked = [f"no other lot of {materials} is without a number"] if view.lots else []
    if view.bars:
        looked += [
            "no bar of it was missed at a count",
            "no complaint booked since the first of these bars was cut is without a batch",
        ]
    return f"Nothing beside these: {', '.join(looked)}."


def _say(text: str, *, bold: bool = False) -> Paragraph:
    return para(text, TYPE.body, bold=bold)


def _first_page(view: RecallAnswer, wide: float) -> list[Flowable]:
    """What is said and asked on the telephone: the lot, the codes on the bars, the totals, whom to call."""
    codes = few_codes([one.batch_code for one in view.batches if one.yields_bars], _CODES)
    held = "All of it that is here was put on hold." if view.held else "Nothing was put on hold by this answer."
    if view.stopped and not view.stoppable and (not view.held or "rejected" in view.stopped):
        held = f"All of it that is here is {' or '.join(view.stopped)}."
    doubts = len(view.cannot_exclude)
    few = view.cannot_exclude[:_ON_PAGE_ONE]
    story: list[Flowable] = [
        para(", ".join(view.asked), TYPE.large, bold=True, leading=1.15),
        Spacer(1, 1 * mm),
        para(_sentence(view), TYPE.head),
        *([_say(as_known_words(view), bold=True)] if view.as_known else []),
        Spacer(1, 3 * mm),
        *_asked(view, wide),
    ]
    if codes:
        story += heading("Batch codes on the bars", TYPE.head)
        story.append(para(codes, TYPE.head, bold=True))
    story += heading("Where every bar is", TYPE.head)
    story += [totals_sum(view, wide), Spacer(1, 2 * mm), _say(held, bold=True)]
    story += heading("Cannot be excluded", TYPE.head)
    story.append(doubts_table(few, wide) if few else _say(no_doubts(view)))
    if view.may_be:
        bars = count(sum(one.bars for one in view.may_be), "bar")
        story.append(
            _say(f"Of {bars} it cannot be excluded that they are of it, since their batch was assumed.", bold=True)
        )
    if doubts > len(few):
        story.append(_say(f"{doubts - len(few)} more cannot be excluded; they stand first overleaf.", bold=True))
    story += heading("Whom to call", TYPE.head)
    story.append(call_table(view, wide) if view.call else _say("Nobody known by name has bars of it."))
    story += [_say(f"Of lot {one.lot_code}: {grams_words(one, view.units)}.") for one in view.lots]
    if view.notices:
        story += heading("For a notice: sold to buyers nobody knows by name", TYPE.head)
        story.append(notices_table(view, wide))
        story += [_say(words) for words in (back_from_nowhere_words(view),) if words]
    if view.totals.sold:
        sold = f"{view.totals.sold} bars were sold to buyers who are not customers on the books."
        if any(one.complaint for one in view.call):
            sold += " The bar of whoever complained is counted where it went, and not again."
        story += [Spacer(1, 2 * mm), _say(sold)]
    return story


def _asked(view: RecallAnswer, wide: float) -> list[Flowable]:
    """What it is about; where that is long, its ends, and the table stands overleaf."""
    found: list[Flowable] = []
    if len(view.lots) > _LOTS:
        ends = f"{view.lots[0].lot_code} to {view.lots[-1].lot_code}"
        found.append(_say(f"{len(view.lots)} lots, {ends}; each stands overleaf."))
    elif view.lots:
        found.append(lots_table(view, wide))
    if 0 < len(view.bars_of) + len(view.labels_of) <= _ASKED:
        found += [*([Spacer(1, 2 * mm)] if found else []), asked_table(view, wide)]
    return found


def _sentence(view: RecallAnswer) -> str:
    totals, bars = view.totals, [one for one in view.batches if one.yields_bars]
    batches = f"{len(bars)} {'batch' if len(bars) == 1 else 'batches'} of soap"
    named = {one.batch_code: one.product for one in view.batches}
    asked = [*(named[code] for code in view.bars_of), *(f"labels of {named[code]}" for code in view.labels_of)]
    what = " and ".join(dict.fromkeys([*(one.material for one in view.lots), *asked]))
    return (
        f"{what}: {batches}, {count(totals.made, 'bar')} made. "
        f"{totals.on_hand + totals.retained + totals.returned} are here, {totals.at_stall} at a stall, "
        f"{f'{totals.at_shop} at a shop, ' if totals.at_shop else ''}"
        f"{totals.sold + totals.dispatched + totals.given} are with customers."
    )
