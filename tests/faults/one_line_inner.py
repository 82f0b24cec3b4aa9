"""One-line faults of domain, reference, markets, storage, operations and cli: (old text, new text[, its own tests])."""

# By file below ledger/ and the test files, below tests/, that ought to find its faults.
INNER: dict[tuple[str, str], list[tuple[str, ...]]] = {
    ("units/quantity.py", "units/test_quantity.py"): [
        ('0 < int(found["over"]) < int(found["under"])', '0 <= int(found["over"]) <= int(found["under"])'),
        ("ounces >= 16", "ounces > 16"),
        (
            "abs(meant - expected_mg) * 10 <= expected_mg",
            "abs(meant - expected_mg) * 10 < expected_mg",
            "stock/test_lot.py",
        ),
    ],
    ("units/dates.py", "units/test_dates.py"): [
        ("month % 12 + 1, 1) - timedelta(days=1)", "month % 12 + 1, 1)"),
    ],
    ("cli/bench/batch_cut.py", "bench/test_cut_doubts.py"): [
        ("if ago > CUT_WITHIN_DAYS:", "if ago >= CUT_WITHIN_DAYS:"),
    ],
    ("domain/material/allergens.py", "label/test_at_the_limit.py"): [
        ("share > threshold_ppm", "share >= threshold_ppm", "material/test_allergen_sums.py"),
        ("share > one.maximum_ppm", "share >= one.maximum_ppm", "material/test_allergen_sums.py"),
        ("elif held and (own is None or held.name != own.name):", "elif held:"),
    ],
    ("domain/release/assessed.py", "release/test_assessed.py"): [
        ("_verdict(on <= assessment.until)", "_verdict(on < assessment.until)"),
        ("if on < assessment.on:", "if on <= assessment.on:"),
        ("_verdict(months <= most)", "_verdict(months < most)"),
        ("named, _verdict(noted.on <= on))", "named, _verdict(noted.on < on))", "label/test_at_the_limit.py"),
        ("limits[0] <= found <= limits[1]", "limits[0] <= found < limits[1]"),
        ("low * whole <= masses[name] * WHOLE_PPM <= high", "low * whole < masses[name] * WHOLE_PPM <= high"),
    ],
    ("domain/release/supply.py", "release/test_not_named.py"): [
        ("if supply.unnamed:", "if False:"),
    ],
    ("views/label/bare.py", "release/test_bare.py"): [
        ("== outlet and one.on <= on)", "== outlet and one.on < on)"),
        ("if one and one.bare)", "if one)"),
        ("max(0, without - max(0, gone))", "without"),
        ("gone -= sum(", "gone += 0 * sum("),
    ],
    ("operations/record/word.py", "release/test_not_named.py"): [
        ("if given.on < report.on:", "if given.on <= date(1, 1, 1):"),
        ("if folded(given.by.strip()) != folded(report.assessor):", "if False:"),
    ],
    ("domain/bench/correction.py", "label/test_at_the_limit.py"): [
        ("if found.likely_low_ppm > 0 or", "if found.likely_low_ppm >= 0 or"),
        ("superfat.nominal_ppm < 20_000", "superfat.nominal_ppm <= 20_000"),
        ("superfat.nominal_ppm <= 80_000", "superfat.nominal_ppm < 80_000"),
        ("if dry and water < alkali:", "if dry and water <= alkali:"),
        ("<= step\n", "< step\n"),
        ("if mass > free_mg.get(material, 0):", "if mass >= free_mg.get(material, 0):"),
    ],
    ("domain/lye/weighed.py", "lye/test_weighed.py"): [
        ("superfat = None if waiting else", "superfat = None if not waiting else"),
        ("and all(one.held_back for one in waiting)", "and not waiting"),
        ("and (one.material_id, one.stage) in in_demand]", "]"),
        ("one.mass_mg - _water(one)", "one.mass_mg"),
    ],
    ("domain/lye/pot.py", "lye/test_wax_esters.py"): [
        ('if process == "cold" and', "if"),
        ("min(self.acid_value_mg_per_kg, low)", "low"),
    ],
    ("domain/recipe/hazards.py", "recipe/test_hazards.py"): [
        ("share >= row.below_ppm", "share > row.below_ppm"),
        ("share <= row.over_ppm", "share < row.over_ppm"),
        ("and row.stage in (None, one.stage)", ""),
    ],
    ("domain/lye/pot.py", "oracles/test_ten_recipes.py bench/test_held_back.py"): [
        ("return self.superfat() if before is None else before", "return self.superfat()"),
    ],
    ("operations/bench/weigh.py", "bench/test_another_material.py bench/test_not_read.py"): [
        ("if lot.material_id != line.material_id and not instead:", "if False:"),
        ("any(take.note == AS_PLANNED for take in takes)", "False"),
        ("is_in = instead or (correct and", "is_in = False and (correct and"),
    ],
    ("domain/bench/worksheet.py", "bench/test_sheet_lines.py"): [
        ("or line.add_alkali is False", "or not line.add_alkali"),
        ('if line.role != "packaging" and not line.portion]', "if not line.portion]"),
        ("max((planned or 0) - sum(written), 0)", "abs((planned or 0) - sum(written))"),
    ],
    ("domain/bench/alkali.py", "lye/test_weighed.py"): [
        ("and not one.held_back for one in still", "for one in still"),
        ("purest = max(", "purest = min("),
        ("counted.get((one.material_id, one.stage), True)", "True"),
    ],
    ("domain/cost/flows.py", "cost/test_costing.py"): [
        ("(2 * cost * used + whole)", "(2 * cost * used)"),
        ("found = max(quantity - off, 0)", "found = max(quantity, 0)"),
        ("total_minor - wrapping_minor, [one", "total_minor, [one"),
    ],
    ("domain/cost/working.py", "cost/test_working.py"): [
        ("one.on >= held.on", "one.on > held.on"),
        ("one.on <= day and", "one.on < day and"),
        ("if begun and process", "if process"),
    ],
    ("domain/cost/gained.py", "cost/test_gained.py"): [
        ("2 if one.money_minor < 0 else 1", "1"),
        ("- self.tax_minor - self.fees_minor", "- self.fees_minor"),
    ],
    ("domain/cost/flows.py", "cost/test_nothing_is_lost.py"): [
        ('if one.way == "wasted" and unloaded:', 'if one.way == "wasted":'),
        ("if bars.good > 0 else 0", "if True else 0", "cost/test_rejected_bars.py"),
        ("if sum(one.quantity for one in taken) < 0:", "if True:"),
    ],
    ("domain/cure/curing.py", "cure/test_cure.py units/test_dates.py"): [
        ("(ready - today).days", "(today - ready).days", "cure/test_cure_edges.py"),
    ],
    ("domain/cure/weighings.py", "cure/test_weighings.py"): [
        ("* WHOLE_PPM > limit_ppm", "* WHOLE_PPM >= limit_ppm"),
        ("(days[-1] - one).days >= _FEWEST_DAYS", "(days[-1] - one).days > _FEWEST_DAYS"),
        (">= _STEPS_TO_SEE * step_mg", "> _STEPS_TO_SEE * step_mg"),
        ("(len(days[each]), -each.toordinal())", "(len(days[each]), each.toordinal())"),
    ],
    ("domain/cure/envelope.py", "cure/test_weighings.py"): [
        ("len(points) < FEWEST_WEIGHINGS", "len(points) <= FEWEST_WEIGHINGS"),
        (".days < FEWEST_DAYS", ".days <= FEWEST_DAYS"),
        ("if mean <= dry_mg", "if mean < dry_mg - 1000"),
        ("max(best.bounded / (len(points) - 3), 1.0)", "1.0"),
    ],
    ("units/dates.py", "label/test_at_the_limit.py"): [
        ("if day > today:", "if day >= today:"),
        ("(today.weekday() - index) % 7", "(today.weekday() - index) % 7 or 7"),
        ("1990 <= year <= 2100", "1990 < year <= 2100"),
    ],
    ("domain/label/declarable.py", "label/test_declarable.py"): [
        ("range(reached, least - 1, -_GRAM_MG)", "range(reached, least, -_GRAM_MG)"),
        ("if most is not None and reached > most:", "if most is not None and reached >= most:"),
        ("if at_end < above:", "if at_end <= above:"),
    ],
    ("domain/label/declaration.py", "label/test_declaration.py"): [
        ("(over < 0 or (over", "(over <= 0 or (over"),
        (' or (over == 0 and rule == "not more than 1 %")', ""),
    ],
    ("domain/label/durability.py", "label/test_at_the_limit.py"): [
        ("or months <= dated_months:", "or months < dated_months:"),
        ("and months > assessed_months:", "and months >= assessed_months:"),
        ("if after_opening_months > months:", "if after_opening_months >= months:"),
        ("if opening_matters is False:", "if not opening_matters:", "label/test_durability.py"),
        ("(best_before + timedelta(days=1))", "best_before", "label/test_durability.py"),
    ],
    ("domain/tools/equipment.py", "tools/test_equipment_rules.py"): [
        ("<= tolerance\n", "< tolerance\n"),
    ],
    ("domain/recipe/formulate.py", "recipe/test_formulate.py"): [
        ('target + (scale.step_mg if role == "alkali" else room)', "target + room"),
        ("LEAST_FATS_MG <= total <=", "LEAST_FATS_MG < total <="),
    ],
    ("domain/label/handbook_133.py", "label/test_at_the_limit.py"): [
        ("if nominal_mg <= up_to)", "if nominal_mg < up_to)"),
    ],
    ("rows/laws.py", "keep/test_invariants.py"): [
        ('AND d."on" <= v."on"', 'AND d."on" < v."on"'),
        ("AND d.entry_id <= v.entry_id", "AND d.entry_id < v.entry_id"),
        ('v."on" < l."on"', 'v."on" <= l."on"'),
        ("WHERE s.held < 0", "WHERE s.held <= 0"),
    ],
    ("domain/tools/limits.py", "label/test_at_the_limit.py"): [
        ("if low <= minutes <= high:", "if low < minutes <= high:"),
        ("read.loss_ppm > limits.loss_ppm:", "read.loss_ppm >= limits.loss_ppm:"),
        ("abs(lye - fats) <= limits.apart(units)", "abs(lye - fats) < limits.apart(units)"),
        ("if not low <= one <= high]", "if not low <= one < high]"),
        ("if value < PH_TO_QUESTION and", "if value <= PH_TO_QUESTION and"),
        ("most is not None and value > most", "most is not None and value >= most"),
        ("least is not None and value < least", "least is not None and value <= least", "tools/test_lower_limits.py"),
        ("if again and done else 0", "if False else 0", "tools/test_lower_limits.py"),
        ("elif not line.low <= line.used <= line.high:", "elif not line.low < line.used <= line.high:"),
    ],
    ("units/colour.py", "units/test_colour.py"): [
        ("share <= 0.03928 else", "share <= 0.5 else"),
        ("0.2126 * red + 0.7152 * green", "0.7152 * red + 0.2126 * green"),
    ],
    ("domain/label/market.py", "markets/test_markets.py"): [
        ("(size or 0) <= one.up_to)", "(size or 0) < one.up_to)"),
        ("== particular and rule.holds(on)", "== particular"),
        ("or first_supplied <= one.until", "or first_supplied < one.until"),
        ("self.since <= on)", "self.since < on)"),
        ("or on <= self.until)", "or on < self.until)"),
    ],
    ("domain/bench/mass_balance.py", "bench/test_mass_balance.py"): [
        (" - self.offcuts_mg - self.waste_mg", " - self.offcuts_mg"),
        ("- (self.cooked_off_mg or 0)", "+ (self.cooked_off_mg or 0)"),
    ],
    ("units/money.py", "units/test_money.py"): [
        ("return (2 * value.numerator + value.denominator)", "return (2 * value.numerator + value.denominator - 1)"),
    ],
    ("domain/label/net_quantity.py", "label/test_net_quantity.py"): [
        ("ounces >= _OUNCES_PER_POUND\n", "ounces > _OUNCES_PER_POUND\n"),
        ("if grams >= 1000:", "if grams > 1000:"),
        ("_OUNCE_MG if net.ounces is None else net.ounces", "_OUNCE_MG"),
    ],
    ("domain/label/packers.py", "label/test_packers.py"): [
        ("sum(weight < limit for", "sum(weight <= limit for"),
        ('"few", share <= few.ppm', '"few", share < few.ppm'),
        ("holds = mean >= nominal_mg", "holds = mean > nominal_mg"),
        ("sum(weight < limit_mg for", "sum(weight <= limit_mg for"),
    ],
    ("domain/label/panel.py", "label/test_panel.py"): [
        ("if area <= 0:", "if area < 0:"),
    ],
    ("domain/tools/bar_checks.py", "release/test_release_checks.py"): [
        ("if found.ppm > FREE_ALKALI_PPM", "if found.ppm >= FREE_ALKALI_PPM"),
        ("net_mg is not None and mass < net_mg", "net_mg is not None and mass <= net_mg"),
        ("if acid > most", "if acid >= most"),
    ],
    ("domain/material/skin_limits.py", "material/test_skin_limits.py"): [
        ("self.share_ppm > self.limit.limit_ppm", "self.share_ppm >= self.limit.limit_ppm"),
    ],
    ("domain/tools/upkeep.py", "tools/test_upkeep_typed.py"): [
        ("add_months(on, 12)", "add_months(on, 13)"),
    ],
    ("reference/plausible.py", "lye/test_typed_figures.py material/test_material.py"): [
        ("if least <= low_ppm and", "if least < low_ppm and", "reference/test_plausible.py"),
        ("<= _WIDEST_PPM:", "< _WIDEST_PPM:", "reference/test_plausible.py"),
        ("_LEAST_SAP <= low_mg_per_kg <=", "_LEAST_SAP < low_mg_per_kg <=", "reference/test_plausible.py"),
    ],
    ("reference/fats.csv", "oracles/test_fatty_acids.py"): [
        ("coconut,copra,coconut,248000,265000", "coconut,copra,coconut,245000,265000", "reference/test_plausible.py"),
    ],
    ("markets/eu.py", "markets/test_markets.py"): [
        ("LAST_DAY_OF_THE_FIRST_LIST = date(2026, 7, 31)", "LAST_DAY_OF_THE_FIRST_LIST = date(2026, 7, 30)"),
        ("since=date(2026, 8, 1)", "since=date(2026, 8, 2)"),
        ("SOLD_ON_UNTIL = date(2028, 7, 31)", "SOLD_ON_UNTIL = date(2028, 7, 30)"),
        ("FigureHeight(200_000, 3)", "FigureHeight(200_000, 2)"),
        ("FigureHeight(50_000, 2)", "FigureHeight(60_000, 2)"),
        ('floats="below 1 %"', 'floats="not more than 1 %"'),
        ("FEW_DE = Few(20_000, ", "FEW_DE = Few(25_000, "),
        ('packing_of={"DE":', 'packing_of={"FR":'),
        ("dated_months=30,", "dated_months=31,"),
    ],
    ("markets/gb.py", "markets/test_markets.py"): [
        ("            until=None,", "            until=FIRST_LIST.until,"),
        ('        System(partial(minimum_system, source="SI 2006/659 (Great Britain)", status="read")),\n', ""),
    ],
    ("markets/ca.py", "markets/test_markets.py"): [
        ("since=date(2026, 4, 12)", "since=date(2026, 4, 13)"),
    ],
    ("markets/us_soap.py", "markets/test_markets.py"): [
        ("declares_ingredients=False", "declares_ingredients=True"),
        ("FigureHeight(5 * SQUARE_INCH_CM2, ", "FigureHeight(4 * SQUARE_INCH_CM2, ", "label/test_panel.py"),
        ("INCH_MM / 8", "INCH_MM / 9", "label/test_panel.py"),
        ('"letters", bold=True', '"figures", bold=True', "label/test_heights.py"),
        ("lowest=0.3", "lowest=0.5", "label/test_heights.py"),
    ],
    ("storage/guards.sql", "storage/test_guards.py"): [
        ('"on" <= NEW."on") + NEW.quantity < 0', '"on" < NEW."on") + NEW.quantity < 0'),
        ('WHERE d >= NEW."on" AND s', 'WHERE d > NEW."on" AND s AND 0'),
        ("<> 'accepted'\n", "NOT IN ('accepted', 'quarantine')\n"),
        ("IN ('rejected', 'on hold'));", "IN ('rejected', 'on hold', 'curing'));"),
        ("(NEW.kind IN ('dispatched', 'given')", "(NEW.kind IN ('dispatched')"),
        ('place_id = NEW.place_id AND "on" <= NEW', '"on" <= NEW'),
        ("NEW.id <> (SELECT", "NEW.id < (SELECT"),
        (
            'lot_id = NEW.lot_id AND "on" <= NEW."on"\n              ORDER BY id DESC LIMIT 1), \'quarantine\')',
            'lot_id = NEW.lot_id AND "on" < NEW."on"\n              ORDER BY id DESC LIMIT 1), \'quarantine\')',
        ),
        ("ORDER BY id DESC LIMIT 1), 'quarantine')", "ORDER BY id LIMIT 1), 'quarantine')"),
        ("AND m.quantity = -NEW.quantity", "AND m.quantity <> NEW.quantity"),
    ],
    ("storage/personal.py", "complaint/test_complaints.py"): [
        ("instead: str) -> None:\n", "instead: str) -> None:\n    return\n"),
    ],
    ("storage/verify.py", "people/test_erase_everywhere.py"): [
        ('attested.get(number, row["digest"])', 'row["digest"]'),
        ('content != b"" if erased else', "False if erased else"),
    ],
    ("storage/migrations/__init__.py", "people/test_erase_everywhere.py"): [
        ("'erased'), 0) = 0 OR ", "'erased'), 0) < 0 OR "),
        ("AND b.of_row = OLD.id ", ""),
        ('"AND NOT EXISTS (SELECT 1 FROM entry WHERE id = b.entry_id)))"', '")"'),
    ],
    ("storage/compared.py", "people/test_erase.py"): [
        ("theirs.get(since) == ours[since] and ", ""),
    ],
    ("units/mentions.py", "units/test_mentions.py"): [
        ("_FEWEST_DIGITS = 6", "_FEWEST_DIGITS = 5"),
        ("_FEWEST_DIGITS = 6", "_FEWEST_DIGITS = 7"),
        ("turned = [words[-1:] + words[:-1]]", "turned = [words]"),
        ('unicodedata.normalize("NFKC", text[at:end])', "text[at:end]"),
        ("for cut in (1, 2, 3)", "for cut in (1, 2)"),
    ],
    ("views/people/erasable.py", "people/test_erase.py"): [
        ("if person or sought.name_too:", "if person:"),
        ("and not _differs(one, whom.own, named)", ""),
        ('if (one.column != "name" or sought.name_too)', "if True"),
        ('named = noun != "complaint" and (not firm or sought.name_too)', 'named = noun != "complaint"'),
    ],
    ("operations/stock/allocate.py", "bench/test_plan.py"): [
        ("if free >= target)", "if free > target)"),
        ("if free >= alkali_need", "if free > alkali_need"),
        ("if lot.on > on:", "if lot.on >= on:"),
        ("lot.best_before < on:", "lot.best_before <= on:"),
    ],
    ("domain/label/band.py", "label/test_band.py"): [
        ("if key not in wanted]", "if key in free]"),
        ("if key not in free]", "if key in wanted]"),
        ("if dated and declared.durability is None:", "if declared.durability is None:"),
        ("if weights and not any(", "if weights and any("),
    ],
    ("units/prices.py", "units/test_prices.py"): [
        ("if whole >= 10_000 else", "if whole > 10_000 else"),
        ('{*_EURO_WITH_POINT, "NL", "AT"}', '{"NL", "AT"}'),
    ],
    ("domain/label/run.py", "label/test_run.py"): [
        ("if used < 0:", "if used <= 0:"),
        ("if on < printed_on:", "if on <= printed_on:"),
        ('_LABELLED = ("passed", "released")', '_LABELLED = ("passed", "released", "on hold")'),
    ],
    ("domain/release/supply.py", "release/test_may_release.py"): [
        ("if labels.on_bars < leaving:", "if labels.on_bars <= leaving:"),
        ("or number <= left or", "or number < left or"),
        ("if door.bare or", "if False or", "release/test_bare.py"),
        ("if last is None or on > last:", "if last is None or on >= last:", "release/test_first_supply.py"),
        ("if before.on > one.until:", "if before.on >= one.until:", "release/test_first_supply.py"),
        ("if number > before.booked:", "if number >= before.booked:", "release/test_first_supply.py"),
    ],
    ("domain/label/run.py", "label/test_count.py"): [
        ("if destroyed > returned:", "if destroyed >= returned:"),
        ("spoiled - returned > wanting)", "spoiled - returned >= wanting)"),
    ],
    ("domain/release/bars.py", "release/test_may_pass.py"): [
        ("if on < bars.cut_on:", "if on <= bars.cut_on:"),
        ("bars.decisions[-1][1] > on:", "bars.decisions[-1][1] >= on:"),
        ("if on < ready_on:", "if on <= ready_on:"),
        ("and superfat_ppm <= 0:", "and superfat_ppm < 0:"),
        ("if asked.wasted > bars.here:", "if asked.wasted >= bars.here:"),
        ("found.on > found_by:", "found.on >= found_by:"),
    ],
    ("domain/release/releasing.py", "release/test_may_release.py"): [
        ("if asked.retain > bars.here:", "if asked.retain >= bars.here:"),
        ("bars.here - asked.retain)", "bars.here)"),
    ],
    ("operations/stock/lots.py", "stock/test_lots.py"): [
        ("last.on > on:", "last.on >= on:"),
        ("if on < lot.on:", "if on <= lot.on:"),
        ("if quantity > held:", "if quantity >= held:"),
    ],
    ("operations/bench/portions.py", "bench/test_portions.py"): [
        ("if on < batch.on:", "if on <= batch.on:"),
        (") > put_in:", ") >= put_in:"),
    ],
    ("operations/stock/receive.py", "stock/test_receive_written.py"): [
        ("elif not 0 < ppm <= WHOLE_PPM:", "elif not 0 < ppm < WHOLE_PPM:"),
        ("low * 100 < usual_low * 95", "low * 100 <= usual_low * 95"),
        ("> usual_high * 105:", ">= usual_high * 105:"),
        ("line.best_before < note.on:", "line.best_before <= note.on:"),
    ],
    ("operations/release/rework.py", "release/test_rework.py"): [
        ("if on < lot.on:", "if on <= lot.on:"),
        ("or taken > here:", "or taken >= here:"),
        ("if mass_mg > weighed:", "if mass_mg >= weighed:"),
    ],
    ("operations/tools/upkeep.py", "tools/test_upkeep_written.py"): [
        ("note.next_on <= note.on:", "note.next_on < note.on:"),
    ],
    ("operations/stock/combine.py", "stock/test_combine.py"): [
        ("best_before=min((lot", "best_before=max((lot"),
        ("if lot.best_before and lot.best_before < on:", "if lot.best_before and lot.best_before <= on:"),
        ("if on < lot.on:", "if on <= lot.on:"),
        ("return min(card.water_ppm if", "return max(card.water_ppm if"),
    ],
    ("operations/complaint/complaints.py", "complaint/test_complaints.py"): [
        ("report.bought_on > report.on:", "report.bought_on >= report.on:"),
        ("if step.on < card.on:", "if step.on <= card.on:"),
        ("if reported < lot.on:", "if reported <= lot.on:"),
        ("step.on < card.steps[-1].on:", "step.on <= card.steps[-1].on:"),
    ],
    ("operations/bench/cut.py", "bench/test_cut.py"): [
        ("if out > put_in:", "if out >= put_in:"),
        ("if on < made:", "if on <= made:"),
        ("if len(weights_mg) > bars:", "if len(weights_mg) >= bars:"),
    ],
    ("operations/sell/shelf.py", "sell/test_resell.py"): [
        ("held = min(on_hand_at", "held = max(on_hand_at"),
    ],
    ("operations/sell/leaving.py", "sell/test_sell_edges.py"): [
        ("held = min(on_hand_at", "held = max(on_hand_at"),
        ("if number > held:", "if number >= held:"),
    ],
    ("operations/sell/stall_back.py", "sell/test_sell_edges.py"): [
        ("if on < out_on[one.lot_id]:", "if on <= out_on[one.lot_id]:"),
        ("Moved(one.lot_id, -one.sold,", "Moved(one.lot_id, one.sold,"),
    ],
    ("operations/sell/take_back.py", "sell/test_sell_edges.py"): [
        ("if number > out:", "if number >= out:"),
    ],
    ("errors.py", "house/test_main.py"): [
        ("exit_code = 1", "exit_code = 2"),
        ("exit_code = 2", "exit_code = 1"),
    ],
    ("cli/cure/words.py", "cure/test_rack.py"): [
        ("if one.days_left <= 0]", "if one.days_left < 0]"),
        ("if one.weigh_on <= on and", "if one.weigh_on < on and"),
        ("if one.days_left <= -14:", "if one.days_left < -14:"),
    ],
    ("cli/release/samples.py", "cure/test_rack.py"): [
        ("over = [one for one in found if one.keep_until < today]", "over = [one for one in found]"),
    ],
    ("cli/label/label_due.py", "sell/test_never_run.py"): [
        ("timedelta(days=365)", "timedelta(days=3)"),
    ],
    ("domain/sale/tax.py", "sale/test_tax.py"): [
        ("half_up(abs(amount_minor) * share)", "int(abs(amount_minor) * share)"),
        ("WHOLE_PPM + rate_ppm)", "WHOLE_PPM)"),
        ("if rate.on > on or", "if rate.on >= on or"),
        ("order = (rank, rate.recipe_id is not None, rate.on, rate.id)", "order = (rank, False, rate.on, rate.id)"),
        ("found[1].rate_ppm is not None else None", "found[1].rate_ppm else None"),
    ],
    ("rows/sell/back.py", "sale/test_money_back.py"): [
        ("n.bars + coalesce(sum(t.bars), 0)", "n.bars"),
        ("+ coalesce(sum(t.gross_minor - t.reduction_minor), 0)", ""),
        ("""AND s."on" <= :on',""", """AND s."on" <= '9' || :on',"""),
        ("SELECT coalesce(sum(v.quantity), 0) FROM live_movement v", "SELECT 0 FROM live_movement v"),
    ],
    ("rows/sell/paid.py", "sale/test_money_back.py"): [
        ("paid_minor=paid[number] + sum(paid[one] for one in takers[number])", "paid_minor=paid[number]"),
        ("AND y.entry_id <> ?1)", "AND y.entry_id = 0)"),
    ],
    ("operations/sell/take_back.py", "sale/test_money_back.py"): [
        ("before = line.bars - line.left_bars", "before = 0"),
        ("-(line.left_tax_minor if whole else min(", "-(0 if False else min("),
        ("if refund.amount_minor > sum(prices):", "if refund.amount_minor > sum(prices) + 1:"),
        ("if one.id == named.customer_id), None)", "if one.id == 0), None)"),
    ],
    ("operations/sale/credit.py", "sale/test_money_back.py"): [
        ("if asked > left:", "if asked > left + 1:"),
        ('if sale.kind != "sale":', "if False:"),
    ],
    ("rows/sell/laws.py", "keep/test_invariants.py"): [
        ("if back > bars:", "if back > bars + 1:"),
        ("if tax_back > tax:", "if tax_back > tax + 1:"),
        ("taken > (had or 0):", "taken > (had or 0) + 1:"),
    ],
    ("views/sale/doubts.py", "sale/test_sale_doubts.py"): [
        (
            "not times_off(amount, expected, expected, TIMES_OFF)",
            "not times_off(amount, expected, expected, TIMES_OFF + 1)",
        ),
        ("if dict(sold) == dict(bars):", "if sold:"),
        ("if single is not None:", "if False:"),
    ],
    ("rows/bars.py", "sale/test_shelf.py"): [
        ("v.quantity < 0 AND NOT EXISTS (", "v.quantity < 0 AND 1 OR EXISTS ("),
    ],
}
