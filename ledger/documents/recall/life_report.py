"""The report of a recall that was opened, in the order of 21 CFR 7.46(a); its first page must do for the telephone."""

from collections.abc import Callable

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Paragraph, Spacer, Table

from ledger.documents.kit.blocks import facts, grid, heading
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import PAPERS, Sheet, build, para, plain
from ledger.documents.label.shown import label_shown
from ledger.documents.recall.recall_report import no_doubts
from ledger.documents.recall.recall_tables import (
    TYPE,
    bars_table,
    batches_of,
    batches_table,
    bulk_table,
    doubts_table,
    few_codes,
    lots_table,
    notices_table,
    phone_words,
    totals_sum,
)
from ledger.documents.recall.way_drawn import MOST, WayDrawn, way_of
from ledger.domain.recall.question import question_from
from ledger.units.dates import show_date
from ledger.units.quantity import whole
from ledger.units.wording import count, opening
from ledger.views.recall.recall_life import RecallLife, asked_for
from ledger.views.recall.recall_paper import RecallPaper, span_words
from ledger.views.recall.recall_steps import effectiveness_words, state_words, step_words
from ledger.views.recall.recall_words import (
    already_words,
    back_from_nowhere_words,
    differences_words,
    grams_words,
    to_hold_words,
)

_PICTURE = 56 * mm
_FIRST_OF_ONE = 8  # batches of one customer
_FIRST_TO_CALL, _FIRST_PRODUCTS, _FIRST_CODES = 6, 6, 60  # on page one; the tables further on have all


def draw_life(paper: RecallPaper, *, size: str = "A4") -> bytes:
    """The report as a PDF, marked on every page where it is an exercise."""
    paper = printable(paper)
    life, answer = paper.life, paper.life.answer
    mark = "EXERCISE" if life.card.exercise else None
    sheet = Sheet(size, f"Recall {life.card.name}", "Recall report", answer.business, answer.printed_from, TYPE, mark)
    wide = sheet.width
    story = [*_first_page(paper, wide), PageBreak()]
    story += heading("The way of it", TYPE.head)
    way = way_of(answer)
    story.append(WayDrawn(way, TYPE.body, wide, PAPERS[size][1] - 78 * mm))
    if way.summed:
        story.append(_say(f"More than {MOST} batches: those of one product are drawn as one, the table has each."))
    story += [
        PageBreak(),
        *_part("1. The product", _products(paper, wide)),
        *_labels(paper, wide),
        *([Spacer(1, 2 * mm), lots_table(answer, wide)] if answer.lots else []),
        *([_say(state_words(life.card))] if life.card.exercise else []),
        *_part("2. The reason, and how it was found", *_found(life)),
        *_part("3. The risk", *_risk(life)),
        *_part("4. Made, and when", _say(f"{count(answer.totals.made, 'bar')}, made {span_words(paper)}.")),
        Spacer(1, 1 * mm),
        batches_table(answer, wide) if answer.batches else _say("It went into no batch."),
        *_part("5. Still out, as far as is known", _say(_still_out(life), bold=True)),
        Spacer(1, 1 * mm),
        bars_table(answer, wide) if answer.bars else _say("No bars were made of it."),
        *([Spacer(1, 2 * mm), bulk_table(answer, wide)] if answer.bulk else []),
        *_part("6. Who has them, and who was told", _people(life, wide)),
        *([Spacer(1, 2 * mm), notices_table(answer, wide)] if answer.notices else []),
        *(_say(words) for words in (back_from_nowhere_words(answer),) if words),
        *_part("7. Communication and steps", *_steps(life, wide)),
        *_part("8. Strategy: whether it reached them", _say(effectiveness_words(life))),
        *_part("9. Who answers for it", _say(_contact(life))),
        *_part("It adds up: the bars", totals_sum(answer, wide)),
        *(_say(line) for line in differences_words(answer)),
        *(_say(f"Of batch {one.batch_code}, {one.words}.") for one in answer.back_on_sale),
    ]
    if answer.lots:
        story += _part(
            "It adds up: the lots", *(_say(f"{one.lot_code}: {grams_words(one, answer.units)}.") for one in answer.lots)
        )
    doubts = answer.cannot_exclude
    story += _part("Cannot be excluded", doubts_table(doubts, wide) if doubts else _say(no_doubts(answer)))
    story += _part("Day by day", _timeline(paper, wide))
    return build(story, sheet)


def _say(text: str, *, bold: bool = False) -> Paragraph:
    return para(text, TYPE.body, bold=bold)


def _part(head: str, *below: Flowable) -> list[Flowable]:
    return [*heading(head, TYPE.head), *below]


def _contact(life: RecallLife) -> str:
    """The firm with its address and telephone, as far as the ledger has them."""
    names = [f"{one.name}, {one.address}".replace("\n", ", ") for one in life.firm]
    return "; ".join([life.answer.business, *names]) + f"; telephone {life.phone or 'not kept here'}."


def _exercise(life: RecallLife) -> str:
    card = life.card
    what = asked_for(question_from(card.question))
    return f"EXERCISE {card.name} of {what}, {show_date(card.on)}, by {card.by}"


def _held(life: RecallLife) -> str:
    """Whether what is here is stopped; of an exercise nothing, since it holds nothing."""
    if life.card.exercise:
        return "An exercise holds nothing."
    if not life.answer.stoppable:
        return already_words(life.answer)
    return f"Not on hold of what is here: {to_hold_words(life.answer)}."


def _still_out(life: RecallLife) -> str:
    totals = life.answer.totals
    out = totals.sold + totals.dispatched + totals.given
    destroyed = sum(one.bars or 0 for one in life.card.steps if one.kind == "destroyed")
    rest = f" Of these, {count(destroyed, 'bar')} destroyed where they were, as was said." if destroyed else ""
    return (
        f"{count(out, 'bar')} with customers and unknown buyers, {totals.at_stall} at a stall"
        f"{f', {totals.at_shop} at a shop' if totals.at_shop else ''}. "
        f"Here {totals.on_hand + totals.retained + totals.returned}, thrown away {totals.wasted}.{rest}"
    )


def _first_page(paper: RecallPaper, wide: float) -> list[Flowable]:
    life, answer = paper.life, paper.life.answer
    card = life.card
    story: list[Flowable] = [
        para(f"Recall {card.name}", TYPE.large, bold=True, leading=1.15),
        para(_contact(life), TYPE.body),
        Spacer(1, 2 * mm),
        para(state_words(card) if not card.exercise else _exercise(life), TYPE.head),
        Spacer(1, 3 * mm),
        _beside(
            paper,
            wide,
            lambda room: facts(
                [
                    ("reason", card.reason),
                    ("hazard", card.hazard or "not stated yet"),
                    ("class", _class(life)),
                    ("made", span_words(paper)),
                    ("asked at", f"entry {card.asked_at}; answered again for this paper"),
                ],
                TYPE.body,
                label_width=22 * mm,
                total=room,
            ),
        ),
        *_part("The product, and the codes on its bars", _products(paper, wide, _FIRST_PRODUCTS)),
        *_part("Where every bar is", totals_sum(answer, wide), Spacer(1, 2 * mm), _say(_still_out(life), bold=True)),
        _say(_held(life), bold=True),
    ]
    call = [one for one in life.people if not one.told_on] or list(life.people)
    head = "Whom to call" if life.not_told else "Whom to call: all were told"
    rows = [
        (one.one.name, phone_words(one.one), str(one.one.bars or "–"), batches_of(one.one, _FIRST_OF_ONE), "")
        for one in call[:_FIRST_TO_CALL]
    ]
    shares = (0.3, 0.2, 0.08, 0.14, 0.28)
    story += _part(
        head,
        grid(("name", "phone", "bars", "batches", "called at, answer"), rows, [wide * s for s in shares], TYPE.body,
             right=(2,), bold=(0, 1), row_height=9 * mm)
        if rows
        else _say("Nobody known by name has bars of it."),
    )  # fmt: skip
    if len(call) > _FIRST_TO_CALL:
        story.append(_say(f"{len(call) - _FIRST_TO_CALL} more stand under 6.", bold=True))
    if answer.notices:
        places = ", ".join(f"{one.place} ({one.bars})" for one in answer.notices)
        story.append(_say(f"Put up a notice, sold there to buyers nobody knows by name: {places}."))
    if answer.cannot_exclude:
        story.append(_say(f"{count(len(answer.cannot_exclude), 'thing')} cannot be excluded; see further on."))
    return story


def _beside(paper: RecallPaper, wide: float, told: Callable[[float], Flowable]) -> Flowable:
    """What is told, with the face of the label of what most bars are of beside it, where one was kept."""
    most = {one.name: one.bars for one in sorted(paper.products, key=lambda one: one.bars)}
    for one in sorted(paper.labels, key=lambda one: -most[one.product]):
        if shown := label_shown(one.label, one.layout_source, wide=_PICTURE, high=32 * mm):
            table = Table([[told(wide - _PICTURE - 4 * mm), shown]], colWidths=[wide - _PICTURE, _PICTURE])
            table.setStyle(plain(("RIGHTPADDING", (0, 0), (0, 0), 4 * mm)))
            return table
    return told(wide)


def _labels(paper: RecallPaper, wide: float) -> list[Flowable]:
    """The faces of all labels that were kept, three beside each other."""
    shown = [label_shown(one.label, one.layout_source, wide=wide / 3 - 4 * mm, high=40 * mm) for one in paper.labels]
    drawn = [one for one in shown if one]
    rows = [[*drawn[place : place + 3], "", ""][:3] for place in range(0, len(drawn), 3)]
    if not rows:
        return []
    table = Table(rows, colWidths=[wide / 3] * 3)
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 3 * mm)))
    return [Spacer(1, 2 * mm), table]


def _class(life: RecallLife) -> str:
    found = life.card.last("class")
    return f"{found.words}, set by {found.whom} on {show_date(found.on)}" if found else "none set by an authority"


def _products(paper: RecallPaper, wide: float, most: int | None = None) -> Flowable:
    every = sum(len(one.codes) for one in paper.products)
    shown = every if most is None or every <= _FIRST_CODES else _FIRST_CODES // most
    rows = [
        (one.name, one.net or "not stated", few_codes(one.codes, shown), str(one.bars), whole(show_date(one.first_on)))
        for one in paper.products[:most]
    ]
    if not rows:
        return _say("No bars were made of it.")
    if more := len(paper.products) - len(rows):
        rows.append((f"and {more} more, under 1", "", "", str(sum(one.bars for one in paper.products[most:])), ""))
    heads = ("product", "net weight", "batch codes on the bars", "bars", "made from")
    return grid(heads, rows, [wide * s for s in (0.26, 0.13, 0.37, 0.08, 0.16)], TYPE.body, right=(3,), bold=(0, 2))


def _found(life: RecallLife) -> list[Flowable]:
    card = life.card
    return [
        _say(f"{opening(card.reason)}. Opened on {show_date(card.on)} by {card.by}."),
        _say(f"Found by: {card.found_by or 'not stated'}."),
    ]


def _risk(life: RecallLife) -> list[Flowable]:
    return [
        _say(f"Hazard: {life.card.hazard or 'not stated yet'}."),
        _say(f"Class: {_class(life)}."),
    ]


def _people(life: RecallLife, wide: float) -> Flowable:
    rows = [
        (
            one.one.name,
            "\n".join(word for word in (one.one.phone, one.one.email, one.one.address) if word) or phone_words(one.one),
            str(one.one.bars or "–"),
            "\n".join(one.one.batches),
            " ".join([whole(show_date(one.told_on)), one.how or ""]) if one.told_on else "no",
            " ".join([whole(show_date(one.answered_on)), one.answer or ""]) if one.answered_on else "no",
            f"{one.back or '–'} / {one.destroyed or '–'}",
        )
        for one in life.people
    ]
    if not rows:
        return _say("Nobody known by name has bars of it.")
    heads = ("name", "phone, email, address", "bars", "batches", "told", "answered", "back / destroyed")
    shares = (0.17, 0.22, 0.07, 0.11, 0.14, 0.17, 0.12)
    return grid(heads, rows, [wide * s for s in shares], TYPE.body, right=(2,), bold=(0,))


def _steps(life: RecallLife, wide: float) -> list[Flowable]:
    card = life.card
    if not card.steps:
        return [_say("Nothing was noted yet.")]
    rows = [(whole(show_date(one.on)), step_words(one), one.by, str(one.entry)) for one in card.steps]
    shares = (0.14, 0.58, 0.18, 0.1)
    return [grid(("on", "what", "noted by", "entry"), rows, [wide * s for s in shares], TYPE.body, right=(3,))]


def _timeline(paper: RecallPaper, wide: float) -> Table:
    rows = [(whole(show_date(one.on)), one.what) for one in paper.timeline]
    return grid(("on", "what"), rows, [wide * 0.16, wide * 0.84], TYPE.body)
