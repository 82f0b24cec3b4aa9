-- What a general database viewer shows of the ledger, as it stands now: codes, grams, days, money; no row numbers.
-- Each begins with the same words, by which the program knows it for its own; one of hers of that name stays.

CREATE VIEW stock_now AS -- laid by soapledger: what is here of each lot, bars apart
SELECT mr.name AS material, l.code AS lot, sr.name AS supplier, l.supplier_number AS their_number, l.best_before,
       p.name AS place, CASE WHEN m.kind <> 'packaging' THEN sum(v.quantity) / 1000.0 END AS grams,
       CASE WHEN m.kind = 'packaging' THEN sum(v.quantity) END AS pieces,
       coalesce((SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id ORDER BY d.id DESC LIMIT 1),
                'quarantine') AS status
FROM movement v JOIN live_lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
JOIN material m ON m.id = l.material_id AND m.kind <> 'soap'
JOIN live_material_revision mr ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
LEFT JOIN live_supplier_revision sr
  ON sr.id = (SELECT max(id) FROM live_supplier_revision WHERE supplier_id = l.supplier_id)
GROUP BY l.id, p.id HAVING sum(v.quantity) <> 0 ORDER BY mr.name COLLATE NOCASE, l.best_before IS NULL, l.best_before, l.id;

CREATE VIEW bars_now AS -- laid by soapledger: where the bars of each batch are that are in our hands
SELECT l.code AS batch, mr.name AS product, l."on" AS cut_on, p.name AS place, sum(v.quantity) AS bars,
       coalesce((SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id ORDER BY d.id DESC LIMIT 1),
                'curing') AS status
FROM movement v JOIN live_lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
JOIN material m ON m.id = l.material_id AND m.kind = 'soap'
JOIN live_material_revision mr ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
GROUP BY l.id, p.id HAVING sum(v.quantity) <> 0 ORDER BY l."on", l.id, p.id;

CREATE VIEW batches_made AS -- laid by soapledger: what was made, and what came of it
SELECT b.code AS batch, mr.name AS product, r.code AS recipe, rv.number AS recipe_version, b.process,
       (SELECT min(v."on") FROM live_movement v WHERE v.batch_id = b.id AND v.kind = 'consumed') AS made_on,
       l."on" AS cut_on,
       CASE WHEN m.kind = 'soap' THEN (SELECT sum(v.quantity) FROM live_movement v WHERE v.lot_id = l.id
         AND v.kind = 'yielded') END AS bars,
       CASE WHEN m.kind <> 'soap' THEN (SELECT sum(v.quantity) FROM live_movement v WHERE v.lot_id = l.id
         AND v.kind = 'yielded') / 1000.0 END AS grams,
       CASE WHEN m.kind = 'soap' THEN (SELECT sum(v.quantity) FROM movement v WHERE v.lot_id = l.id) END AS bars_here,
       (SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id OR d.batch_id = b.id ORDER BY d.id DESC LIMIT 1)
         AS decided_last
FROM live_batch b JOIN material m ON m.id = b.material_id
JOIN live_material_revision mr ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
LEFT JOIN recipe_version rv ON rv.id = b.recipe_version_id LEFT JOIN recipe r ON r.id = rv.recipe_id
LEFT JOIN live_lot l ON l.batch_id = b.id AND +l.material_id = b.material_id
WHERE EXISTS (SELECT 1 FROM live_movement v WHERE v.batch_id = b.id AND v.kind = 'consumed') ORDER BY made_on, b.id;

CREATE VIEW sales AS -- laid by soapledger: bars that left, and those that came back (below zero)
SELECT v."on" AS day, l.code AS batch, mr.name AS product, v.kind AS way,
       CASE WHEN v.customer_id IS NULL THEN p.name ELSE coalesce(cr.name, t.name, c.code) END AS who_or_where,
       -v.quantity AS bars, coalesce(v.money_minor, (SELECT sum(n.gross_minor - n.reduction_minor) FROM live_sale_line n
         WHERE n.movement_id = v.id)) * 1.0 / own.coins AS money, own.currency, v.note
FROM live_movement v JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id
JOIN material m ON m.id = l.material_id AND m.kind = 'soap'
JOIN live_material_revision mr ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
LEFT JOIN customer c ON c.id = v.customer_id
LEFT JOIN live_customer_revision cr
  ON cr.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = v.customer_id)
LEFT JOIN personal_text t ON t.personal_id = cr.personal_id
LEFT JOIN (SELECT currency, {coins} AS coins FROM live_settings_revision ORDER BY id DESC LIMIT 1) own
WHERE v.kind IN ('sold', 'dispatched', 'given', 'returned') ORDER BY v."on", v.id;

CREATE VIEW deliveries AS -- laid by soapledger: what came from a supplier, lot by lot
SELECT l."on" AS came_on, sr.name AS supplier, d.note_number AS delivery_note, l.code AS lot,
       l.supplier_number AS their_number, mr.name AS material,
       CASE WHEN m.kind <> 'packaging' THEN (SELECT sum(v.quantity) FROM live_movement v WHERE v.lot_id = l.id
         AND v.kind = 'received') / 1000.0 END AS grams,
       CASE WHEN m.kind = 'packaging' THEN (SELECT sum(v.quantity) FROM live_movement v WHERE v.lot_id = l.id
         AND v.kind = 'received') END AS pieces,
       l.cost_minor * 1.0 / own.coins AS cost, own.currency, l.best_before
FROM live_lot l JOIN material m ON m.id = l.material_id
JOIN live_material_revision mr ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
JOIN live_supplier_revision sr ON sr.id = (SELECT max(id) FROM live_supplier_revision WHERE supplier_id = l.supplier_id)
LEFT JOIN delivery d ON d.id = l.delivery_id
LEFT JOIN (SELECT currency, {coins} AS coins FROM live_settings_revision ORDER BY id DESC LIMIT 1) own
ORDER BY l."on", l.id;
