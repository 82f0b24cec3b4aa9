"""Faults of one line in promises, shops on sale or return, and invoices."""

SHOP: dict[tuple[str, str], list[tuple[str, ...]]] = {
    ("domain/stock/promised.py", "shop/test_orders.py shop/test_counted_whatever_was_sold.py"): [
        ("return max(0, (self.ready_on - due_on).days) if", "return max(0, (self.ready_on - due_on).days - 1) if"),
        ("key=lambda i: (wanted[i].batch_id is None, wanted[i]", "key=lambda i: (False, wanted[i]"),
        ("wanted[i].due_on, wanted[i].order, i))", "wanted[i].order, i))"),
        ("key=lambda one: one.ready_on or date.min)", "key=lambda one: one.ready_on or date.max)"),
        ("left[place] -= part", "left[place] -= 0"),
    ],
    ("domain/shop/counting.py", "shop/test_consignment.py"): [
        ("known = not also and (len(standing) < 2", "known = (len(standing) < 2"),
        ("count(0) > 1)", "count(0) > 2)"),
        ("if lot != one[0]))", "if lot))"),
        ("return Counted(take(sold), take(missing))", "return Counted(take(sold + missing), ())"),
    ],
    ("rows/sell/order.py", "shop/test_orders.py"): [
        ("AND s.kind = 'sale'", "AND s.kind = 'x'"),
        ("FROM live_sale s CROSS JOIN live_sale_line n ON", "FROM sale s CROSS JOIN sale_line n ON"),
        ("key=lambda one: one.batch_id is None):", "key=lambda one: one.batch_id is not None):"),
        ("if found[0].ended_on:", "if False:"),
    ],
    ("rows/sell/terms.py", "shop/test_consignment.py shop/test_delivery.py"): [
        ("""FROM live_customer_terms WHERE "on" <= :on""", """FROM live_customer_terms WHERE "on" < :on"""),
        ("movement > empty.get(recipe, 0)", "movement > 0"),
        ("GROUP BY p.id, v.lot_id HAVING bars > 0", "GROUP BY p.id, v.lot_id HAVING bars >= 0"),
        ("WHERE v.entry_id = ? AND v.kind = 'moved' AND v.quantity > 0", "WHERE v.entry_id = ? AND v.kind = 'moved'"),
    ],
    ("rows/bars.py", "shop/test_consignment.py"): [
        ('"consignment": "at a shop",', '"consignment": "on hand",'),
        ("SELECT p.customer_id, v.lot_id, v.quantity, CASE", "SELECT p.customer_id, v.lot_id, 0, CASE"),
    ],
    ("rows/label.py", "shop/test_consignment_doors.py"): [
        ("(p.kind = 'consignment' AND v.quantity > 0)", "p.kind = 'consignment'"),
        ("coalesce(v.customer_id, p.customer_id)", "v.customer_id"),
    ],
    ("views/sell/order_doubts.py", "sale/test_order_doubts.py"): [
        ("if has.short > had.short:", "if has.short:"),
        ("if not one.ended_on]", "]"),
        ("if one[0].id != filled]", "]"),
        ("if sum(fits) > taken:", "if sum(fits) > taken + 1:"),
        ("if wide and line.batch_id is not None:", "if False:"),
        ("(wide or other.batch_id == line.batch_id)", "wide"),
    ],
    ("operations/sell/dispatch.py", "shop/test_consignment.py shop/test_agreed.py shop/test_orders.py"): [
        ("if asked != AS_PRICED or paid or all_by:", "if False:"),
        ("pay_by = on + timedelta(agreed.pay_days)", "pay_by = on"),
        ("check_order(tx, order_id, card.id, lots)", "{}"),
    ],
    ("operations/sell/consigned.py", "shop/test_consignment.py shop/test_orders.py"): [
        ('"bars": -part})', '"bars": part})'),
        ("if terms and terms.consignment else None", "if terms else None"),
        ("found[0].customer_id != customer_id:", "False:"),
    ],
    ("operations/sale/agreed.py", "shop/test_agreed.py"): [
        ("if terms and asked.each_minor is None else None", "if terms else None"),
        ("reduction_minor=asked.reduction_minor + off", "reduction_minor=off"),
        ("top = sum(one.tax_minor or 0 for one in lines) if asked.on_top else 0", "top = 0"),
        ("own = {} if asked.each_minor is not None else promised or {}", "own = promised or {}"),
    ],
    ("operations/shop/terms.py", "shop/test_consignment.py"): [
        ("if new.commission_ppm and not new.consignment:", "if False:"),
        ("if new.consignment and card.id not in shop_places(tx.rows):", "if new.consignment:"),
        ('if card.kind == "shop" else card.code', 'if card.kind else ""', "shop/test_consignment_doors.py"),
    ],
    ("operations/shop/count.py", "shop/test_consignment.py"): [
        ("if left + away > group.bars:", "if left > group.bars:"),
        ("if on < late:", "if on <= late:"),
        ("if one.lot_id in seen:", "if False:"),
        ("half_up(Fraction(net * share, WHOLE_PPM)) if", "half_up(Fraction(net * share, 2 * WHOLE_PPM)) if"),
        ("pay_by=None if days is None else on + timedelta(days)", "pay_by=None"),
    ],
    ("operations/shop/back.py", "shop/test_consignment.py"): [
        ("if number > held:", "if number > held + 1:"),
        ("if len(group.lots) > 1:", "if len(group.lots) > 2:"),
        ('place_of_kind(tx.rows, "returns")', 'place_of_kind(tx.rows, "workshop")'),
    ],
    ("operations/shop/orders.py", "shop/test_orders.py"): [
        ("if due_on < on:", "if due_on <= on:"),
        ("if -change > still:", "if -change > still + 1:"),
    ],
    ("operations/shop/invoices.py", "shop/test_invoices.py"): [
        ("return last.number + 1", "return last.number + 2"),
        ("if on < last.on:", "if on <= last.on:"),
        ("if number is not None and number < 1:", "if False:"),
        ("back = [one for one in known if one.id not in done and (not", "back = [one for one in known if (not"),
    ],
    ("views/shop/to_invoice.py", "shop/test_invoices.py"): [
        ("and one.on <= on and (not only or one.id in only)", "and one.on < on and (not only or one.id in only)"),
        ("if one.untold:", "if False:"),
    ],
    ("operations/keep/undo.py", "shop/test_invoices.py"): [
        ("if made := made_in(rows, number):", "if made := None:"),
        ("if over := over_sales_of(rows, number):", "if over := []:"),
    ],
    ("views/shop/invoice.py", "shop/test_invoices.py"): [
        ('if one.kind == "commission")', 'if one.kind == "pitch")'),
        ("found[ppm][1] - found[ppm][0], *found[ppm])", "found[ppm][1], *found[ppm])"),
        ('"seller tax number": bool(view.tax_number),', '"seller tax number": True,'),
    ],
    ("views/shop/owed.py", "shop/test_invoices.py"): [
        ("one.pay_by < today", "one.pay_by <= today"),
        ("for sale in sales if sale not in taken)", "for sale in sales)"),
        (" and fee.entry <= one.entry", ""),
    ],
    ("operations/sale/given_back.py", "shop/test_consignment.py"): [
        ('Charged("commission", -minor)', 'Charged("commission", minor)'),
    ],
    ("rows/sell/paid.py", "shop/test_consignment.py"): [
        ("kept[number] + sum(kept[one] for one in takers[number])", "kept[number]"),
    ],
    ("views/shop/delivery.py", "shop/test_delivery.py"): [
        ("if found.place_id is not None:", "if False:"),
        ('if found is None or found.kind != "sale":', "if found is None:", "shop/test_delivery.py"),
    ],
    ("reference/invoice_fields.py", "shop/test_invoices.py"): [
        ("and said in (None, registered):", "and said in (None, True):"),
        ("if one not in FIELDS:", "if False:"),
    ],
}  # fmt: skip
