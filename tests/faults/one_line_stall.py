"""One-line faults of prices and of a day at a stall: (old text, new text[, its own tests])."""

STALL: dict[tuple[str, str], list[tuple[str, ...]]] = {
    ("domain/sale/pricing.py", "sale/test_pricing.py"): [
        ("if one.on <= on:", "if one.on < on:"),
        ("key=lambda price: (price.on, price.id)", "key=lambda price: price.id"),
        ("Scope(one, at) for at in (outlet, ANYWHERE) for one", "Scope(one, at) for at in (ANYWHERE, outlet) for one"),
        ("dearest = sorted(prices, reverse=True)", "dearest = sorted(prices)"),
        ("if bars <= many", "if bars < many"),
        ("found = min(found, so_far + left)", "found = so_far + left"),
        ("return all(price_minor >= bars * single", "return all(price_minor > bars * single"),
        ("return all(price_minor >= bars * single for", "return any(price_minor >= bars * single for"),
    ],
    ("domain/sell/assumed.py", "sell/test_evening.py properties/test_assumed_props.py"): [
        ("groups.get(one, {one}) | groups.get(other, {other})", "{one, other}"),
        ("return {lot: every - {lot} for lot in lots}", "return {lot: every for lot in lots}"),
        ("groups.get(lot, frozenset()) - {lot} for lot", "frozenset() for lot"),
        ("wanted -= number", "wanted -= 0"),
    ],
    ("domain/sell/evening.py", "sell/test_evening.py sell/test_stall_day.py"): [
        ("if one.bars > left[stand.lot_id]:", "if one.bars > stand.bars:"),
        ("if one.bars > sum(left.values()):", "if one.bars > sum(pool.values()) + 1:"),
        ("dict(reversed(left.items()))", "left"),
        ("sum(1 for bars in ways if bars) > 1", "True"),
        ("if counted and home:", "if False:"),
        ("if missing and not counted:", "if False:"),
    ],
    ("domain/sell/packing.py", "sell/test_packing.py"): [
        ("best + -(-best // _MORE)", "best + best // _MORE"),
        ("ready - promised))", "ready))"),
    ],
    ("domain/sell/takings.py", "sell/test_stall_day.py"): [
        ("self.cash_minor - (self.float_minor or 0)", "self.cash_minor"),
        ('or {"cash", "card"} <= ways', 'or {"cash"} <= ways'),
        ("- other_minor - sum(one.net_minor", "- sum(one.net_minor"),
        ("and takings.cash_minor < (", "and takings.cash_minor < 0 * ("),
    ],
    ("operations/sell/stall_out.py", "sell/test_stall_day.py"): [
        ("any_of_them=number < sum(standing.values())", "any_of_them=True"),
        ("max(0, one.bars - named.get(one.lot_id, 0))", "one.bars"),
        ("if ticked_by and marked:", "if marked:"),
        ("min(each, here)", "each"),
    ],
    ("operations/sell/stall_money.py", "sell/test_stall_day.py"): [
        ("off = difference(taken, so_far) if complete and", "off = difference(taken, so_far) if"),
        ("off = difference(taken, standing) if complete else 0", "off = difference(taken, standing)"),
        ("        standing += rest\n", ""),
    ],
    ("operations/sell/stall_ticked.py", "sell/test_stall_day.py"): [
        ('if home or COUNTED not in (one.note or "")]', "]"),
        ("(*went, *settled)]", "went]"),
    ],
    ("operations/sale/set_price.py", "sale/test_prices_typed.py"): [
        ("if not singles:", "if False:"),
        ("dear = _dear_offers(tx, on, currency) if bars == 1 else []", "dear = []"),
    ],
    ("views/sell/evening.py", "sell/test_stall_day.py"): [
        ("loose.add(meant.material_id)", "pass"),
    ],
    ("views/sell/takings.py", "sell/test_stall_day.py"): [
        ("if not bars or taken <= 0:", "if True:"),
        ("(money.taken_minor or 0) - other", "(money.taken_minor or 0) * 0 - other"),
    ],
    ("rows/sell/ready.py", "sell/test_stall_day.py"): [
        ("AND NOT EXISTS (SELECT 1 FROM live_order_end e WHERE e.order_id = o.id)", ""),
    ],
    ("rows/sell/assumed.py", "recall/test_recall_assumed.py sell/test_stall_day.py"): [
        ("t WHERE t.movement_id = a.movement_id)", "t WHERE t.movement_id < 0)"),
    ],
    ("views/recall/recall_assumed.py", "recall/test_recall_assumed.py"): [
        ('if one.lot_id not in lots and one.way != "moved":', "if one.lot_id not in lots:"),
        ('_HERE = ("workshop", "stall", "consignment")', '_HERE = ("stall", "consignment")'),
    ],
}
