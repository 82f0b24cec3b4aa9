"""What each command is measured with: its words, and what has to be done before (which is not measured).

`{name}` stands for a value of the ledger at hand (see facts.py). A command that is missing here is listed by the
benchmark as not measured.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Measured:
    """One run of a command: list, view, paper, write or check; `before` are whole commands that prepare the copy."""

    kind: str
    words: str
    before: tuple[str, ...] = ()


def _table(**kinds: tuple[str, ...]) -> dict[str, tuple[Measured, ...]]:
    """Runs without preparation, by kind; the words of the command itself end at a bar."""
    found: dict[str, tuple[Measured, ...]] = {}
    for kind, words in kinds.items():
        for one in words:
            command, _, more = (part.strip() for part in one.partition("|"))
            found[command] = (*found.get(command, ()), Measured(kind, f"{command} {more}".strip()))
    return found


_LOGGED = "batch log {planned} --as-planned {to_read} --reading poured=14:05 --on {day} --anyway measured --yes"
_SMALL = 'batch plan {recipe} --fats "500 g" --on {day}'
_PASSED = "pass {curing} --unwrapped --anyway measured --on {day}"
_APPROVED = "label approve {curing} --market eu --on {day}"
_PRINTED = "label print {curing} --market eu -o {out.pdf} --on {day}"
_LOOKED = "--check pH=9.6 --check look=good --check smell=good --check 'weight=130 g'"
_RECEIVED = (
    'receive {supplier} --accept --on {day} --yes --line "{material}; 5 kg; lot A1; 32" '
    '--line "{material}; 4 kg; lot A2; 26"'
)
_ORDERED = "order add {customer} {recipe_of_released}=2 --due {day} --on {day}"
_SOLD = "dispatch {customer} {released}=2 --price 4.50 --on {day} --yes"
_INVOICED = "invoice make {customer} --sales {sale} --on {day} --yes"
_LEFT = (
    "customer terms {customer} --sale-or-return --commission 30% --on {day}",
    "dispatch {customer} {released}=2 --on {day}",
)
_CAME_BACK = "return {released}=1 --from {customer} --reason measured --on {day}"
_REHEARSED = "recall rehearse {drawn_lot}"
_REPORTED = 'batch note {curing} "cracked along the top" --deviation --on {day}'


def _write(words: str, *before: str) -> tuple[Measured, ...]:
    return (Measured("write", words, before),)


COMMANDS: dict[str, tuple[Measured, ...]] = {
    **_table(
        list=(
            "supplier list",
            "customer list",
            "material list",
            "equipment list",
            "recipe list",
            "stock",
            "stock | --all",
            "stock | --json --all",
            "batch list",
            "batch list | --json",
            "cure list",
            "samples",
            "label runs",
            "label due",
            "stall list",
            "sale list",
            "sale list | --all --json",
            "price list",
            "stall pack | {stall}",
            "order list",
            "order list | --all",
            "invoice list",
            "invoice list | --all",
            "consignment list",
            "recall list",
            "label bare",
            "shelf list",
            "tax list",
            "cost",
            "rates list",
            "complaint list",
            "attachments",
            "upkeep list",
            "history",
        ),
        view=(
            "supplier show | {supplier}",
            "customer show | {customer}",
            "material show | {material}",
            "equipment show | {equipment}",
            "recipe show | {recipe}",
            "recipe scale | {recipe} --bars 20 --net-weight 100g",
            "recipe scale | {recipe} --stock {material}",
            "recipe assessment | {recipe}",
            "recipe assessment | {recipe_of_released} --batch {released}",
            "lot show | {lot}",
            "batch show | {released}",
            "batch show | {released} --as-of {entry}",
            "batch correct | {planned} {line}=900g",
            "cure show | {weighed}",
            "label check | {released} --market eu",
            "label runs | {released}",
            "cost | {released}",
            "worth",
            "trace | {released}",
            "trace | {lot} --forward",
            "sale show | 1",
            "recall lot | {drawn_lot}",
            "recall lot | {first_lot}",
            "recall bar | {released}",
            "recall of | --recipe {recipe_of_released}",
            "complaint show | {complaint}",
            "attachments | {lot}",
            "seal",
        ),
        paper=(
            "recipe print | {recipe} -o {out.pdf}",
            "batch show | {released} -o {out.pdf}",
            "cure calendar | -o {out.ics}",
            "label print | {released} --market eu -o {out.pdf} --draft",
            "label try-sheet | a4-24 -o {out.pdf}",
            "label ticket | {released} -o {out.pdf} --price 6.50",
            "label rack | {curing} -o {out.pdf}",
            "lot label | {drawn_lot} -o {out.pdf}",
            "recall lot | {drawn_lot} -o {out.pdf}",
            "attachment save | {sha} -o {out.bin}",
            "backup | {out.db}",
        ),
        write=(
            "init | --phone 0209100142",
            'supplier add | "Measured Mill"',
            "supplier edit | {supplier} --note measured",
            "supplier erase | {supplier} --reason measured --yes",
            'customer add | "Measured Larder" --shop',
            "customer edit | {customer} --note measured",
            "customer erase | {customer} --reason measured --yes",
            'material add | "measured oil" --like olive',
            "material edit | {material} --note measured --yes",
            "material contains | {fragrance} linalool=33 --source measured --yes",
            "material limit | {fragrance} 9 --certificate M-1 --category 9",
            'equipment add | scale "measured scale" --every 30 --against "500 g" --tolerance "1 g"',
            "recipe assess | {recipe} {assessment_file}",
            "recipe add | {recipe_file}",
            "recipe revise | {recipe} {revised_file}",
            "lot reject | {lot} --reason measured --on {day}",
            "lot hold | {lot} --reason measured --on {day}",
            "lot count | {lot} 900g --on {day}",
            "lot waste | {lot} 1g --reason measured --on {day}",
            'batch plan | {recipe} --fats "500 g" --on {day}',
            "batch log | {planned} --as-planned {to_read} --on {day} --anyway measured --yes",
            "batch strain | {infusion} 900g --on {day}",
            'batch note | {curing} "soda ash" --on {day}',
            "batch work | {curing} 45 --stage wrapping --on {day}",
            "rates set | hour 16.50 --from {day}",
            "batch discard | {planned} --reason measured --on {day}",
            "cure weigh | {weighed} A=101.2g B=99.8g --on {day} --yes",
            "pass | {curing} --unwrapped --anyway measured --on {day}",
            "reject | {curing} --reason measured --on {day}",
            'stall add | "Measured market"',
            "stall out | {stall} {released}=2 --on {day}",
            "sale pay | 1 1.00 --cash --on {day} --yes",
            "sale fee | pitch 15 --at {stall} --on {day}",
            "sale credit | 1 1.00 --reason measured --on {day}",
            "tax set | 20% --name VAT --from {day}",
            "price set | {recipe} 6.50 --from {day} --yes",
            "customer terms | {customer} --sale-or-return --commission 30% --on {day}",
            "order add | {customer} {recipe_of_released}=2 --due {day} --on {day}",
            "recall rehearse | {drawn_lot}",
            "recall open | {drawn_lot} --reason measured --on {day}",
            'gift | {released}=1 --to "a neighbour" --on {day}',
            'complaint add | "itched" --batch {released} --on {day}',
            'complaint note | {complaint} "rang again" --on {day}',
            "attach | {recipe_file} --to {lot}",
            'upkeep add | cleaning "shelves" --on {day}',
            "undo | --yes",
        ),
    ),
    "equipment edit": _write(
        "equipment edit measured-scale --note measured",
        'equipment add scale "measured scale" --every 30 --against "500 g" --tolerance "1 g"',
    ),
    "equipment check": _write(
        'equipment check measured-scale "500.2 g"',
        'equipment add scale "measured scale" --every 30 --against "500 g" --tolerance "1 g"',
    ),
    "receive": _write(_RECEIVED),
    "lot accept": _write("lot accept {last_lot} --on {day}", _RECEIVED.replace("--accept ", "")),
    "lot combine": _write("lot combine {last_lot} {lot_before} --on {day} --yes", _RECEIVED),
    "batch cut": _write(
        'batch cut {last_batch} 6 --weight "600 g" --on {day}',
        _SMALL := 'batch plan {recipe} --fats "500 g" --on {day}',
        _LOGGED,
    ),
    "batch divide": _write(
        "batch divide {dough} --on {day}",
        "batch plan {divided} --on {day}",
        "batch log {dough} --as-planned {dough_to_read} --yes --on {day}",
    ),
    "batch fill": _write(
        "batch fill {last_batch} 900g --on {day}",
        "batch plan {blend} --on {day}",
        "batch log {last_batch} --as-planned {last_to_read} --yes --on {day}",
    ),
    "batch decide": _write("batch decide {deviating} 1 accept --reason measured --on {day}", _REPORTED),
    "release": _write(f"release {{curing}} {_LOOKED} --anyway measured --bare measured --on {{day}}", _PASSED),
    "rework": _write("rework {curing} 300g --bars 4 --on {day}", "reject {curing} --reason measured --on {day}"),
    "label approve": _write(_APPROVED, _PASSED),
    "label reprint": _write("label reprint {run} -o {out.pdf} --count 3 --on {day}", _PASSED, _APPROVED, _PRINTED),
    "label count": _write("label count {uncounted} --spoiled 0 --returned 0 --on {day}", _PASSED, _APPROVED, _PRINTED),
    "stall back": _write(
        "stall back measured-market {released}=1 --takings 6.50 --on {day}",
        'stall add "Measured market"',
        "stall out measured-market {released}=2 --on {day}",
    ),
    "dispatch": (
        *_write(_SOLD),
        *_write("dispatch {customer} --order {order} --price 4.50 --on {day} --yes", _ORDERED),
    ),
    "delivery-note": _write("delivery-note {sale}", _SOLD),
    "price end": _write("price end {recipe} --from {day}", "price set {recipe} 6.50 --from {day} --yes"),
    "return": _write(_CAME_BACK, _SOLD),
    "resell": _write("resell {released}=1 --reason measured --on {day}", _SOLD, _CAME_BACK),
    "shelf keep": _write("shelf keep {released}=1 --reason measured --on {day}", _SOLD, _CAME_BACK),
    "shelf waste": _write("shelf waste {released}=1 --reason measured --on {day}", _SOLD, _CAME_BACK),
    "order show": _write("order show {order}", _ORDERED),
    "order change": _write("order change {order} {recipe_of_released}=+1", _ORDERED),
    "order end": _write("order end {order} --reason measured --on {day}", _ORDERED),
    "invoice make": _write(_INVOICED, _SOLD),
    "invoice show": _write("invoice show {invoice}", _SOLD, _INVOICED),
    "invoice credit": _write("invoice credit {invoice} --on {day}", _SOLD, _INVOICED, _CAME_BACK),
    "consignment count": _write("consignment count {customer} {released}=1 --price 4.50 --on {day} --yes", *_LEFT),
    "consignment back": _write("consignment back {customer} {released}=1 --on {day}", *_LEFT),
    "recall show": _write("recall show R{recall}", _REHEARSED),
    "recall note": _write('recall note R{recall} "was told" --on {day}', _REHEARSED),
    "recall notice": _write("recall notice R{recall} customer", _REHEARSED),
    "complaint close": _write(
        'complaint close {complaint} "sent another" --on {day}', 'complaint note {complaint} "rang again" --on {day}'
    ),
    "complaint erase": _write(
        "complaint erase {complaint} --reason measured --yes",
        'complaint add "itched" --batch {released} --name "Ida Marsh" --on {day}',
    ),
    "check": (Measured("check", "check"),),
}
