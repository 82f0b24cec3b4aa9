-- Written by the program of commit af2bccb: delivery, hold, paper, recipe revised, two portions, cut, pass, label run, release, stall, shop, a person erased, rejected bars reworked, an undo, a batch on the rack, a plan.
PRAGMA application_id = 1353391830;
PRAGMA user_version = 4;
BEGIN TRANSACTION;
CREATE TABLE assessment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), source TEXT NOT NULL
);
INSERT INTO "assessment" VALUES(1,39,1,'assessor = "R. Lund"
reference = "QR-114"
on = 2026-01-12
process = ["cold"]
markets = ["eu"]
superfat = [3, 8]
durability_months = 24
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 60
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 30
[[ingredient]]
inci = "AQUA"
highest_percent = 25
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 11
[[fragrance]]
inci = "LAVANDULA ANGUSTIFOLIA OIL"
highest_percent = 0.5
[[notification]]
market = "eu"
reference = "N-7"
on = 2026-01-20
');
CREATE TABLE attached_content (digest TEXT PRIMARY KEY, content BLOB NOT NULL);
INSERT INTO "attached_content" VALUES('b370497f0765d2ea880a730efce3a0bd5c1298829aa76bef7fc8ee0b9c745720',X'4F6C697665206F696C2C206C6F7420343437312F322C207361706F6E696669636174696F6E2076616C7565203139302E0A');
CREATE TABLE attachment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  digest TEXT NOT NULL REFERENCES attached_content(digest), name TEXT NOT NULL, kind TEXT NOT NULL,
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  recipe_id INTEGER REFERENCES recipe(id), material_id INTEGER REFERENCES material(id)
);
INSERT INTO "attachment" VALUES(1,16,'b370497f0765d2ea880a730efce3a0bd5c1298829aa76bef7fc8ee0b9c745720','certificate.txt','paper',1,NULL,NULL,NULL);
CREATE TABLE "batch" (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE,
  process TEXT NOT NULL CHECK (process IN ('cold','hot','infusion','blend','rebatch','portion','combine','rework')),
  recipe_version_id INTEGER REFERENCES recipe_version(id),      -- none for a combined drum or a rework
  material_id INTEGER NOT NULL REFERENCES material(id),         -- what it gives
  "on" TEXT NOT NULL,                                           -- the day it is planned for, then made on
  bars_planned INTEGER,
  part_of INTEGER REFERENCES batch(id),                         -- the batch a portion was divided from
  portion TEXT
);
INSERT INTO "batch" VALUES(1,21,'26-001-4','cold',1,8,'2026-02-05',10,NULL,NULL);
INSERT INTO "batch" VALUES(2,30,'26-002-2','cold',2,10,'2026-02-16',10,NULL,NULL);
INSERT INTO "batch" VALUES(3,30,'26-003-0','portion',2,11,'2026-02-16',6,2,'light');
INSERT INTO "batch" VALUES(4,30,'26-004-9','portion',2,12,'2026-02-16',4,2,'dark');
INSERT INTO "batch" VALUES(5,48,'26-005-7','cold',3,8,'2026-03-15',10,NULL,NULL);
INSERT INTO "batch" VALUES(6,52,'26-006-5','rework',NULL,1,'2026-03-18',NULL,NULL,NULL);
INSERT INTO "batch" VALUES(7,58,'26-007-3','cold',3,8,'2026-03-23',10,NULL,NULL);
INSERT INTO "batch" VALUES(8,61,'26-008-1','cold',3,8,'2026-03-25',10,NULL,NULL);
CREATE TABLE complaint (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, lot_id INTEGER REFERENCES lot(id), bought TEXT, what TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, personal_id INTEGER REFERENCES personal(id)
, bought_on TEXT, place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id));
INSERT INTO "complaint" VALUES(1,54,'2026-03-20',8,NULL,'itched',NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE complaint_step (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  complaint_id INTEGER NOT NULL REFERENCES complaint(id), "on" TEXT NOT NULL, by TEXT NOT NULL, action TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, lot_id INTEGER REFERENCES lot(id),
  closes INTEGER NOT NULL CHECK (closes IN (0,1))
);
CREATE TABLE constituent (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), lot_id INTEGER REFERENCES lot(id),
  name TEXT NOT NULL, share_ppm INTEGER NOT NULL, source TEXT NOT NULL
);
INSERT INTO "constituent" VALUES(1,17,6,4,'linalool',330000,'statement LV-3');
INSERT INTO "constituent" VALUES(2,17,6,4,'limonene',5000,'statement LV-3');
CREATE TABLE customer (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('shop','person'))
);
INSERT INTO "customer" VALUES(1,44,'harrow','shop');
INSERT INTO "customer" VALUES(2,45,'c-1','person');
CREATE TABLE customer_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), name TEXT,   -- a shop's trade name; a person's name is in personal_text
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "customer_revision" VALUES(1,44,1,'Harrow and Fenn',2,NULL);
INSERT INTO "customer_revision" VALUES(2,45,2,NULL,3,NULL);
CREATE TABLE decision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  verdict TEXT NOT NULL CHECK (verdict IN ('accepted','rejected','on hold','passed','released','discarded')),
  "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT,
  CHECK ((lot_id IS NULL) <> (batch_id IS NULL))
);
INSERT INTO "decision" VALUES(1,13,1,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(2,13,2,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(3,13,3,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(4,13,4,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(5,13,5,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(6,14,6,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(7,15,7,NULL,'on hold','2026-02-03','Nuala','the lid was loose');
INSERT INTO "decision" VALUES(8,24,9,NULL,'accepted','2026-02-06','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(9,32,10,NULL,'accepted','2026-02-16','Nuala','divided at trace');
INSERT INTO "decision" VALUES(10,35,8,NULL,'passed','2026-03-09','Nuala',NULL);
INSERT INTO "decision" VALUES(11,40,8,NULL,'released','2026-03-10','Nuala','not covered by what was assessed (LAVANDULA ANGUSTIFOLIA OIL is 0.69 % fragrance, assessed at most 0.5 %); released all the same: the assessor wrote that half a percent more is no matter');
INSERT INTO "decision" VALUES(12,49,NULL,5,'accepted','2026-03-15','Nuala','a hard bar for the workshop');
INSERT INTO "decision" VALUES(13,50,13,NULL,'accepted','2026-03-16','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(14,51,12,NULL,'rejected','2026-03-17','Nuala','zap on the tongue');
INSERT INTO "decision" VALUES(15,52,14,NULL,'on hold','2026-03-18','Nuala','rejected bars of batch 26-005-7');
INSERT INTO "decision" VALUES(16,53,15,NULL,'accepted','2026-03-19','Nuala',NULL);
INSERT INTO "decision" VALUES(17,60,17,NULL,'accepted','2026-03-24','Nuala','offcuts kept');
CREATE TABLE delivery (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), note_number TEXT, "on" TEXT NOT NULL,
  carriage_minor INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "delivery" VALUES(1,13,1,'D-19','2026-02-03',650);
INSERT INTO "delivery" VALUES(2,14,2,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(3,15,1,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(4,53,2,NULL,'2026-03-19',0);
CREATE TABLE deviation (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL,
  subject TEXT NOT NULL,                 -- which limit, or 'seen' for what she reports herself
  found TEXT NOT NULL, done TEXT         -- what it was and by how much; what was done about it
);
INSERT INTO "deviation" VALUES(1,25,1,'2026-02-06','seen','cracked along the top','pressed flat');
INSERT INTO "deviation" VALUES(2,49,5,'2026-03-15','line 4','sodium hydroxide 150 g, 7.79 g over (OK 141.4 g to 142.2 g)',NULL);
CREATE TABLE deviation_decision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  deviation_id INTEGER NOT NULL REFERENCES deviation(id),
  verdict TEXT NOT NULL CHECK (verdict IN ('accepted','rework','reject','corrected')),  -- corrected: the reading was
  "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT NOT NULL, done TEXT
);
INSERT INTO "deviation_decision" VALUES(1,26,1,'accepted','2026-02-06','Orla Penhallow','only the looks',NULL);
CREATE TABLE entry (
  id INTEGER PRIMARY KEY,
  recorded_at TEXT NOT NULL,
  who TEXT NOT NULL,
  verb TEXT NOT NULL,
  said TEXT NOT NULL,
  reverses INTEGER UNIQUE REFERENCES entry(id),
  program TEXT NOT NULL,
  previous TEXT NOT NULL,
  digest TEXT NOT NULL
);
INSERT INTO "entry" VALUES(1,'2026-02-02T09:00:00Z','Nuala','init','Started the ledger of Wrenfold Soapworks.',NULL,'0.1.0','0000000000000000000000000000000000000000000000000000000000000000','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382');
INSERT INTO "entry" VALUES(2,'2026-02-02T09:05:00Z','Nuala','supplier add','Added supplier Ottersby Oils (ottersby-oils).',NULL,'0.1.0','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382','cf94f30e9b1133aeb9b7060887ea0600489ed59eae499ecea137d8429a298c95');
INSERT INTO "entry" VALUES(3,'2026-02-02T09:06:00Z','Nuala','supplier add','Added supplier Own well (own-well).',NULL,'0.1.0','cf94f30e9b1133aeb9b7060887ea0600489ed59eae499ecea137d8429a298c95','0c324562d6650ff9fb73bdd4cf7b00debb3a06e95863afa4a1781378056f53b6');
INSERT INTO "entry" VALUES(4,'2026-02-02T09:10:00Z','Nuala','material add','Added material olive oil (olive-oil).',NULL,'0.1.0','0c324562d6650ff9fb73bdd4cf7b00debb3a06e95863afa4a1781378056f53b6','ba397358aae313d376d11b0f8cd5e13ab74ca702a9b5efb387cc640af4f8a896');
INSERT INTO "entry" VALUES(5,'2026-02-02T09:10:00Z','Nuala','material add','Added material coconut oil (coconut-oil).',NULL,'0.1.0','ba397358aae313d376d11b0f8cd5e13ab74ca702a9b5efb387cc640af4f8a896','6c6ece4b5738ea5b7b41ebcfc722f68d2646aef740901982843389d328f160e6');
INSERT INTO "entry" VALUES(6,'2026-02-02T09:10:00Z','Nuala','material add','Added material sodium hydroxide (sodium-hydroxide).',NULL,'0.1.0','6c6ece4b5738ea5b7b41ebcfc722f68d2646aef740901982843389d328f160e6','c8029bf89ac3a91a60e4b67b2692daaac84db111ea22aa48c300278fd2448433');
INSERT INTO "entry" VALUES(7,'2026-02-02T09:10:00Z','Nuala','material add','Added material water (water).',NULL,'0.1.0','c8029bf89ac3a91a60e4b67b2692daaac84db111ea22aa48c300278fd2448433','1a85f9dbc8b5d8962ee843574083403a83aa3b58bc341b8a63e1b393feb9c5dc');
INSERT INTO "entry" VALUES(8,'2026-02-02T09:10:00Z','Nuala','material add','Added material lavender oil (lavender-oil).',NULL,'0.1.0','1a85f9dbc8b5d8962ee843574083403a83aa3b58bc341b8a63e1b393feb9c5dc','11c5062d4f7fd8b746a57703f353f17e9163f77d9b45859d82654f6ebc79e1c1');
INSERT INTO "entry" VALUES(9,'2026-02-02T09:10:00Z','Nuala','material add','Added material paper band (paper-band).',NULL,'0.1.0','11c5062d4f7fd8b746a57703f353f17e9163f77d9b45859d82654f6ebc79e1c1','0d6af78f65bb5fb92bf2fd0f04ebcfa4489e0e7b9e9ac0b36380bf7158704cdf');
INSERT INTO "entry" VALUES(10,'2026-02-02T09:20:00Z','Nuala','material limit','lavender oil: at most 5.000 % by certificate LV-3.',NULL,'0.1.0','0d6af78f65bb5fb92bf2fd0f04ebcfa4489e0e7b9e9ac0b36380bf7158704cdf','2c224fc13bc5c9c1e142c08f52d9b1818c46c7a8b261ebd34ce8ab449777ceb7');
INSERT INTO "entry" VALUES(11,'2026-02-02T09:30:00Z','Nuala','recipe add','Added recipe Morning Lavender (morning).',NULL,'0.1.0','2c224fc13bc5c9c1e142c08f52d9b1818c46c7a8b261ebd34ce8ab449777ceb7','2ea07eb7f84398582c667a68ad24c01704adff14552e2dc075de3911cd08c14e');
INSERT INTO "entry" VALUES(12,'2026-02-02T09:31:00Z','Nuala','recipe add','Added recipe Two Tone (two-tone).',NULL,'0.1.0','2ea07eb7f84398582c667a68ad24c01704adff14552e2dc075de3911cd08c14e','91c993d7fd572695a8a6c599255d1834881d293b8a67f4dff0e8a52483116161');
INSERT INTO "entry" VALUES(13,'2026-02-03T10:00:00Z','Nuala','receive','Received 5 lots from Ottersby Oils: L1-X, L2-8, L3-6, L4-4, L5-2.',NULL,'0.1.0','91c993d7fd572695a8a6c599255d1834881d293b8a67f4dff0e8a52483116161','5eb19951952caa993e5147ce07347fb335048e2875ffba9dbd0b9fbb3b9f7b25');
INSERT INTO "entry" VALUES(14,'2026-02-03T10:05:00Z','Nuala','receive','Received 1 lot from Own well: L6-0.',NULL,'0.1.0','5eb19951952caa993e5147ce07347fb335048e2875ffba9dbd0b9fbb3b9f7b25','e28c499ac820daaa84e8590919a55a374fc8fcfd1ac492c39c57a4dcac92755e');
INSERT INTO "entry" VALUES(15,'2026-02-03T10:07:00Z','Nuala','receive','Received 1 lot from Ottersby Oils: L7-9.',NULL,'0.1.0','e28c499ac820daaa84e8590919a55a374fc8fcfd1ac492c39c57a4dcac92755e','04e50014dd14575439c704a016904eb7e5659a9d5798fc76991bc986f1810863');
INSERT INTO "entry" VALUES(16,'2026-02-03T10:10:00Z','Nuala','attach','Attached certificate.txt (paper) to lot L1-X.',NULL,'0.1.0','04e50014dd14575439c704a016904eb7e5659a9d5798fc76991bc986f1810863','4b09c3911842b14946b07555c97d88dd76d3ce6bc84f18f3a00cc1e633c58225');
INSERT INTO "entry" VALUES(17,'2026-02-03T10:15:00Z','Nuala','material contains','Stated what lot L4-4 of lavender oil contains: linalool, limonene.',NULL,'0.1.0','4b09c3911842b14946b07555c97d88dd76d3ce6bc84f18f3a00cc1e633c58225','288578925b580fc7273f556a4d1ef616a0b7211b6713af540b0d82cfb62bdd7d');
INSERT INTO "entry" VALUES(18,'2026-02-03T10:20:00Z','Nuala','equipment add','Added scale bench scale (bench-scale).',NULL,'0.1.0','288578925b580fc7273f556a4d1ef616a0b7211b6713af540b0d82cfb62bdd7d','8f306e6a09e92096274ce4f219cfec46a55330b1ba4c142bcf882eff6911206c');
INSERT INTO "entry" VALUES(19,'2026-02-03T10:21:00Z','Nuala','equipment check','Tried bench scale (bench-scale) on 3 Feb 2026: passed.',NULL,'0.1.0','8f306e6a09e92096274ce4f219cfec46a55330b1ba4c142bcf882eff6911206c','17552081eb333fba01766f5a5f000391e18e7caf529e60750ebbfc87d125413e');
INSERT INTO "entry" VALUES(20,'2026-02-03T10:22:00Z','Nuala','upkeep add','Noted supplier approval of Ottersby Oils: certificates with every lot.',NULL,'0.1.0','17552081eb333fba01766f5a5f000391e18e7caf529e60750ebbfc87d125413e','13896b0bb62d7010c4af15784c6038494edd626b11042bb1169db9c23d9b0f69');
INSERT INTO "entry" VALUES(21,'2026-02-05T09:00:00Z','Nuala','batch plan','Planned batch 26-001-4, Morning Lavender version 1.',NULL,'0.1.0','13896b0bb62d7010c4af15784c6038494edd626b11042bb1169db9c23d9b0f69','76a13138d66bc5c1012baabdea91738198c018e9fb600d4de974e7946673a990');
INSERT INTO "entry" VALUES(22,'2026-02-05T11:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-001-4; noted lye temperature, poured.',NULL,'0.1.0','76a13138d66bc5c1012baabdea91738198c018e9fb600d4de974e7946673a990','c4277199300b7bd69bda64db7cbe14f41bb7a837d115015620b5151054d338a9');
INSERT INTO "entry" VALUES(23,'2026-02-05T11:05:00Z','Nuala','batch reading','Noted lye temperature of batch 26-001-4.',NULL,'0.1.0','c4277199300b7bd69bda64db7cbe14f41bb7a837d115015620b5151054d338a9','a9a18ebe860145a46d6d34f45d5bffdde7ce240264f629c48f925d77729c06da');
INSERT INTO "entry" VALUES(24,'2026-02-06T09:00:00Z','Nuala','batch cut','Cut batch 26-001-4 into 10 bars.',NULL,'0.1.0','a9a18ebe860145a46d6d34f45d5bffdde7ce240264f629c48f925d77729c06da','85a6b381c94102620ccb6365aaeeedc68925879eb9eba60727607eeddec5456f');
INSERT INTO "entry" VALUES(25,'2026-02-06T09:10:00Z','Nuala','deviation','Deviation 1 of batch 26-001-4: cracked along the top.',NULL,'0.1.0','85a6b381c94102620ccb6365aaeeedc68925879eb9eba60727607eeddec5456f','8f0bd6918996e49eaa2f0338d5ae96d17bf8062dee9f0a8b44f288889afcf769');
INSERT INTO "entry" VALUES(26,'2026-02-06T09:12:00Z','Nuala','deviation decide','Decided deviation 1 of batch 26-001-4: accepted, only the looks.',NULL,'0.1.0','8f0bd6918996e49eaa2f0338d5ae96d17bf8062dee9f0a8b44f288889afcf769','95ae550e1b634456539722b26269b3eb6395e487c72084abad367c6165ac89a6');
INSERT INTO "entry" VALUES(27,'2026-02-06T09:20:00Z','Nuala','cure weigh','Weighed A, B of batch 26-001-4.',NULL,'0.1.0','95ae550e1b634456539722b26269b3eb6395e487c72084abad367c6165ac89a6','11a8a07f0ceea8b194027617734bac21e671932d64e8ab73422d82ef50057311');
INSERT INTO "entry" VALUES(28,'2026-02-13T09:20:00Z','Nuala','cure weigh','Weighed A, B of batch 26-001-4.',NULL,'0.1.0','11a8a07f0ceea8b194027617734bac21e671932d64e8ab73422d82ef50057311','5dc145da84c329e2253d3df1731cf672c567bf665b80c646f9dd517c9a31d41c');
INSERT INTO "entry" VALUES(29,'2026-02-14T09:00:00Z','Nuala','recipe revise','Version 2 of recipe Morning Lavender (morning).',NULL,'0.1.0','5dc145da84c329e2253d3df1731cf672c567bf665b80c646f9dd517c9a31d41c','e7c4f37ce8b71fd109cc76730e906c82a8a57a9413bbb7908e1500cc33333a35');
INSERT INTO "entry" VALUES(30,'2026-02-16T09:00:00Z','Nuala','batch plan','Planned batch 26-002-2, Two Tone version 1.',NULL,'0.1.0','e7c4f37ce8b71fd109cc76730e906c82a8a57a9413bbb7908e1500cc33333a35','d8aed2845ed4e1c466d73453c0942e9402968529aacff762cf1ee8f88e5d2b27');
INSERT INTO "entry" VALUES(31,'2026-02-16T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-002-2.',NULL,'0.1.0','d8aed2845ed4e1c466d73453c0942e9402968529aacff762cf1ee8f88e5d2b27','8e39a34c9b6233bd8039d760003a0bad43583427308cd9be38714fd0b95e3c1c');
INSERT INTO "entry" VALUES(32,'2026-02-16T10:05:00Z','Nuala','batch divide','Divided batch 26-002-2 into 26-003-0, 26-004-9.',NULL,'0.1.0','8e39a34c9b6233bd8039d760003a0bad43583427308cd9be38714fd0b95e3c1c','6acfe5949cd46f23cf06667ea2357847e4440319026ea0a58931323a58dac75e');
INSERT INTO "entry" VALUES(33,'2026-02-17T09:00:00Z','Nuala','batch reading','Noted poured of batch 26-003-0.',NULL,'0.1.0','6acfe5949cd46f23cf06667ea2357847e4440319026ea0a58931323a58dac75e','8771c445b6d9b101a983f8f021f609b063363246795beb72ce61a318e8501a43');
INSERT INTO "entry" VALUES(34,'2026-02-17T09:01:00Z','Nuala','batch cut','Cut batch 26-003-0 into 6 bars.',NULL,'0.1.0','8771c445b6d9b101a983f8f021f609b063363246795beb72ce61a318e8501a43','127ab72d834eeefda2521368029154ba07a94766bd69f71212332c846405f28f');
INSERT INTO "entry" VALUES(35,'2026-03-09T09:00:00Z','Nuala','pass','Passed 9 bars of batch 26-001-4 for packing.',NULL,'0.1.0','127ab72d834eeefda2521368029154ba07a94766bd69f71212332c846405f28f','d3f5817a29342cd049feb3f5fb88f836d06afe2fa833d4f2ef96dd17be6ff460');
INSERT INTO "entry" VALUES(36,'2026-03-09T09:10:00Z','Nuala','label approve','Approved the label of batch 26-001-4 for eu.',NULL,'0.1.0','d3f5817a29342cd049feb3f5fb88f836d06afe2fa833d4f2ef96dd17be6ff460','1153dd3585cd11374f05c0f37568bd30a9797482cf13fddc8a4a72a3320bcd55');
INSERT INTO "entry" VALUES(37,'2026-03-09T09:15:00Z','Nuala','label print','Printed 8 labels for batch 26-001-4, eu.',NULL,'0.1.0','1153dd3585cd11374f05c0f37568bd30a9797482cf13fddc8a4a72a3320bcd55','d3eba9ab6b7be148f34c43159c15596f0f3e6f3f64eb56ff2000360bf8d13bca');
INSERT INTO "entry" VALUES(38,'2026-03-09T09:20:00Z','Nuala','label count','Counted run 1: 8 used, 0 spoiled, 0 returned.',NULL,'0.1.0','d3eba9ab6b7be148f34c43159c15596f0f3e6f3f64eb56ff2000360bf8d13bca','6360ceb29a4514cd86c460d3ed99700c831266709998a9570a61cce9f7e24db5');
INSERT INTO "entry" VALUES(39,'2026-03-09T09:30:00Z','Nuala','recipe assess','Booked assessment QR-114 of R. Lund, 12 Jan 2026, for Morning Lavender (morning).',NULL,'0.1.0','6360ceb29a4514cd86c460d3ed99700c831266709998a9570a61cce9f7e24db5','a836c85f2a8a5808333cba2b7e6eae865820a63828169fb15c10430627022942');
INSERT INTO "entry" VALUES(40,'2026-03-10T09:00:00Z','Nuala','release','Released batch 26-001-4, 8 bars.',NULL,'0.1.0','a836c85f2a8a5808333cba2b7e6eae865820a63828169fb15c10430627022942','ced35f3d8b3ca93efb0bd1e19e2f9d79746b5eb5dbb5aabbc1c8231d835dafa5');
INSERT INTO "entry" VALUES(41,'2026-03-10T09:30:00Z','Nuala','stall add','Added stall Quay market.',NULL,'0.1.0','ced35f3d8b3ca93efb0bd1e19e2f9d79746b5eb5dbb5aabbc1c8231d835dafa5','42603886b50ce41f5a77daa1278b955c724e4bf4756deec8fc5e7f298d85ae79');
INSERT INTO "entry" VALUES(42,'2026-03-10T09:31:00Z','Nuala','stall out','Took 4 bars to Quay market.',NULL,'0.1.0','42603886b50ce41f5a77daa1278b955c724e4bf4756deec8fc5e7f298d85ae79','ff3ff39cc1484096676c227313273b3cb2c886447be61d20d0daea1f2bcc67f3');
INSERT INTO "entry" VALUES(43,'2026-03-10T18:00:00Z','Nuala','stall back','Back from Quay market: 3 bars sold, 1 came home.',NULL,'0.1.0','ff3ff39cc1484096676c227313273b3cb2c886447be61d20d0daea1f2bcc67f3','896bbf5194e1cb8824d6bc23cfb944ba1112467ae01756dab409cc18fa1df578');
INSERT INTO "entry" VALUES(44,'2026-03-11T09:00:00Z','Nuala','customer add','Added customer harrow.',NULL,'0.1.0','896bbf5194e1cb8824d6bc23cfb944ba1112467ae01756dab409cc18fa1df578','769bf8384a8a9fb086297e2e1c31b9cb332be1739da00ab2b553b10b80310cf3');
INSERT INTO "entry" VALUES(45,'2026-03-11T09:01:00Z','Nuala','customer add','Added customer c-1.',NULL,'0.1.0','769bf8384a8a9fb086297e2e1c31b9cb332be1739da00ab2b553b10b80310cf3','305db40571b4ecc045045a75d0a2a0586000d27cb1383d9406a2273ecafe44a4');
INSERT INTO "entry" VALUES(46,'2026-03-12T09:00:00Z','Nuala','dispatch','Dispatched 2 bars to harrow.',NULL,'0.1.0','305db40571b4ecc045045a75d0a2a0586000d27cb1383d9406a2273ecafe44a4','13c0f62856d5122e963bf09ca669a05d0b57490fdfc2d4abd7c602dc4d7e8509');
INSERT INTO "entry" VALUES(47,'2026-03-12T09:01:00Z','Nuala','dispatch','Dispatched 1 bars to c-1.',NULL,'0.1.0','13c0f62856d5122e963bf09ca669a05d0b57490fdfc2d4abd7c602dc4d7e8509','0eb9b68205734361f126d9def7b371a3a721ae5cc82c02cfd73166b1370c3332');
INSERT INTO "entry" VALUES(48,'2026-03-15T09:00:00Z','Nuala','batch plan','Planned batch 26-005-7, Morning Lavender version 2.',NULL,'0.1.0','0eb9b68205734361f126d9def7b371a3a721ae5cc82c02cfd73166b1370c3332','5b8daa18b4fb2072710559cbaa5cb418c2efcc22edbccfb15dccf8b29a249bfd');
INSERT INTO "entry" VALUES(49,'2026-03-15T09:30:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-005-7; noted poured.',NULL,'0.1.0','5b8daa18b4fb2072710559cbaa5cb418c2efcc22edbccfb15dccf8b29a249bfd','461ab351fd70e1de6564f347ae0ad74c638205e06d4f40ebe19c77d229f24959');
INSERT INTO "entry" VALUES(50,'2026-03-16T09:30:00Z','Nuala','batch cut','Cut batch 26-005-7 into 10 bars.',NULL,'0.1.0','461ab351fd70e1de6564f347ae0ad74c638205e06d4f40ebe19c77d229f24959','21422521cd9058a193e736cfa3de996bb0a55704474acd355d10b463baa6a874');
INSERT INTO "entry" VALUES(51,'2026-03-17T09:30:00Z','Nuala','reject','Rejected the bars of batch 26-005-7: zap on the tongue.',NULL,'0.1.0','21422521cd9058a193e736cfa3de996bb0a55704474acd355d10b463baa6a874','3bedc45c95805e44d89d8c18515b54e8c40d8a3a79d1e029c57079b86c1ceea3');
INSERT INTO "entry" VALUES(52,'2026-03-18T09:30:00Z','Nuala','rework','Reworked 10 bars of batch 26-005-7 as lot L11-6.',NULL,'0.1.0','3bedc45c95805e44d89d8c18515b54e8c40d8a3a79d1e029c57079b86c1ceea3','50add230d290eb11f2b5493465098b242833e3325e68504ca43b75537f29d202');
INSERT INTO "entry" VALUES(53,'2026-03-19T09:00:00Z','Nuala','receive','Received 1 lot from Own well: L12-4.',NULL,'0.1.0','50add230d290eb11f2b5493465098b242833e3325e68504ca43b75537f29d202','860ae9cc2954898956016c3cba7e423f352eb22f68b9e9829b522cdd7f9b54cb');
INSERT INTO "entry" VALUES(54,'2026-03-20T09:00:00Z','Nuala','complaint add','Booked complaint 1 about batch 26-001-4.',NULL,'0.1.0','860ae9cc2954898956016c3cba7e423f352eb22f68b9e9829b522cdd7f9b54cb','37c3025f0a75b69edaf60817477d1ad239e1faae227e9f839c8dce83d7f2ea50');
INSERT INTO "entry" VALUES(55,'2026-03-21T09:00:00Z','Nuala','customer erase','Erased the personal details of customer c-1: she asked.',NULL,'0.1.0','37c3025f0a75b69edaf60817477d1ad239e1faae227e9f839c8dce83d7f2ea50','5f311556908ac8deb8371bfa50052fc1d498031c06f8b931a0f962d572727477');
INSERT INTO "entry" VALUES(56,'2026-03-22T09:00:00Z','Nuala','lot waste','Threw away 20 g of lot L2-8: spilt.',NULL,'0.1.0','5f311556908ac8deb8371bfa50052fc1d498031c06f8b931a0f962d572727477','69e52a30130f612a76f1236712174f410016240280f6360085f4477040aaf49d');
INSERT INTO "entry" VALUES(57,'2026-03-22T09:05:00Z','Nuala','undo','Took back entry 56: Threw away 20 g of lot L2-8: spilt.',56,'0.1.0','69e52a30130f612a76f1236712174f410016240280f6360085f4477040aaf49d','a4c528a1a808d62e4494657c756024807c354df68973f5e6196b8289e9b556b0');
INSERT INTO "entry" VALUES(58,'2026-03-23T09:00:00Z','Nuala','batch plan','Planned batch 26-007-3, Morning Lavender version 2.',NULL,'0.1.0','a4c528a1a808d62e4494657c756024807c354df68973f5e6196b8289e9b556b0','f884a428c77e81abf5f61a03c1a4c364b00ce8634f4b44c84670fe04b714c0dd');
INSERT INTO "entry" VALUES(59,'2026-03-23T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-007-3; noted poured.',NULL,'0.1.0','f884a428c77e81abf5f61a03c1a4c364b00ce8634f4b44c84670fe04b714c0dd','64753d8b4d97f41b385e37fbb8a7001c1a35739e9b111e35b5d7b435da31f314');
INSERT INTO "entry" VALUES(60,'2026-03-24T10:00:00Z','Nuala','batch cut','Cut batch 26-007-3 into 10 bars.',NULL,'0.1.0','64753d8b4d97f41b385e37fbb8a7001c1a35739e9b111e35b5d7b435da31f314','21fdc05a0fa9c8c63f5a1ba386c53eafdd9fc69cc170fe9a5aae40fe12cd77c2');
INSERT INTO "entry" VALUES(61,'2026-03-25T09:00:00Z','Nuala','batch plan','Planned batch 26-008-1, Morning Lavender version 2.',NULL,'0.1.0','21fdc05a0fa9c8c63f5a1ba386c53eafdd9fc69cc170fe9a5aae40fe12cd77c2','3d38e7b56e3c97c4aeadc30e423cc165e9ef8eb7bada51c0b0c2d1e7b29caaee');
CREATE TABLE equipment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('scale','thermometer','pH meter'))
);
INSERT INTO "equipment" VALUES(1,18,'bench-scale','scale');
CREATE TABLE equipment_check (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  equipment_id INTEGER NOT NULL REFERENCES equipment(id), "on" TEXT NOT NULL, by TEXT NOT NULL,
  expected INTEGER NOT NULL, found INTEGER NOT NULL, tolerance INTEGER NOT NULL,
  passed INTEGER NOT NULL CHECK (passed IN (0,1)), note TEXT
);
INSERT INTO "equipment_check" VALUES(1,19,1,'2026-02-03','Nuala',500000,500400,1000,1,NULL);
CREATE TABLE equipment_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  equipment_id INTEGER NOT NULL REFERENCES equipment(id), name TEXT NOT NULL,
  every_days INTEGER,                    -- a check is due so many days after the last
  expected INTEGER, tolerance INTEGER,   -- what it is tried against: mg, thousandths of a degree, thousandths of pH
  retired INTEGER NOT NULL CHECK (retired IN (0,1)), note TEXT
);
INSERT INTO "equipment_revision" VALUES(1,18,1,'bench scale',30,500000,1000,0,NULL);
CREATE TABLE erasure (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  personal_id INTEGER NOT NULL REFERENCES personal(id), reason TEXT NOT NULL
);
INSERT INTO "erasure" VALUES(1,55,3,'she asked');
CREATE TABLE finished_check (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, by TEXT NOT NULL,
  what TEXT NOT NULL, found TEXT NOT NULL, good INTEGER NOT NULL CHECK (good IN (0,1))
);
INSERT INTO "finished_check" VALUES(1,40,8,'2026-03-10','Nuala','pH','9.6; 1 % in water',1);
INSERT INTO "finished_check" VALUES(2,40,8,'2026-03-10','Nuala','look','good',1);
INSERT INTO "finished_check" VALUES(3,40,8,'2026-03-10','Nuala','smell','good',1);
INSERT INTO "finished_check" VALUES(4,40,8,'2026-03-10','Nuala','weight','good',1);
CREATE TABLE label_approval (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), market TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL,
  text TEXT NOT NULL, text_digest TEXT NOT NULL
);
INSERT INTO "label_approval" VALUES(1,36,8,'eu','2026-03-09','Nuala','Morning Lavender
Soap
100 g
Ingredients: OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE, LAVANDULA ANGUSTIFOLIA OIL, LINALOOL
Best used before the end of February 2028

Orla Penhallow, Quay Lane, Larkmere

26-001-4','4b28c68ac2096bcd521e12f6027251f68fc4f61c2e6326e7ea1ea793df17463c');
CREATE TABLE label_count (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  label_run_id INTEGER NOT NULL REFERENCES label_run(id), "on" TEXT NOT NULL,
  used INTEGER NOT NULL CHECK (used >= 0), spoiled INTEGER NOT NULL CHECK (spoiled >= 0),
  returned INTEGER NOT NULL CHECK (returned >= 0)
);
INSERT INTO "label_count" VALUES(1,38,1,'2026-03-09',8,0,0);
CREATE TABLE label_run (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, layout TEXT NOT NULL, market TEXT NOT NULL,
  count INTEGER NOT NULL, text TEXT NOT NULL, text_digest TEXT NOT NULL
, view TEXT, layout_source TEXT, sheet_source TEXT, start INTEGER, reprint_of INTEGER REFERENCES label_run(id));
INSERT INTO "label_run" VALUES(1,37,8,'2026-03-09','band','eu',8,'Morning Lavender
Soap
100 g
Ingredients: OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE, LAVANDULA ANGUSTIFOLIA OIL, LINALOOL
Best used before the end of February 2028

Orla Penhallow, Quay Lane, Larkmere

26-001-4','4b28c68ac2096bcd521e12f6027251f68fc4f61c2e6326e7ea1ea793df17463c','{"after_opening_months": null, "batch_code": "26-001-4", "best_before": "Best used before the end of February 2028", "code_text": "26-001-4", "draft": false, "figure_height_mm": 3, "function": "Soap", "ingredients": "OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE, LAVANDULA ANGUSTIFOLIA OIL, LINALOOL", "ingredients_heading": "Ingredients", "made_on": "2026-02-05", "market": "eu", "net_mg": 100000, "net_quantity": "100 g", "origin": null, "policy": "as added", "precautions": [], "product": "Morning Lavender", "responsible_address": "Quay Lane, Larkmere", "responsible_name": "Orla Penhallow", "status": "passed for packing"}','# A band round a bar about 66 mm wide and 24 mm thick: front, side, back, side, and 10 mm to glue under.
# How such a file is read stands at the head of label-small.toml.
what = "label"
for = "bar"
name = "belly band"
width_mm = 190.0
height_mm = 46.0
folds_mm = [66.0, 90.0, 156.0, 180.0]   # where the band turns round the bar: dashed marks beside the labels
law_min_x_height_mm = 1.2
law_max_pt = 8.0
what_pt = 13.0
product_pt = 21.0
product_min_pt = 12.0

[[panel]]
name = "front"
x_mm = 6.0
y_mm = 4.0
width_mm = 54.0
height_mm = 38.0
fields = ["product", "function"]
foot_fields = ["net_quantity"]
display_panel = true

[[panel]]
name = "first side"
x_mm = 68.0
y_mm = 4.0
width_mm = 20.0
height_mm = 38.0
fields = []
foot_fields = ["best_before", "batch_code"]

[[panel]]
name = "back"
x_mm = 92.5
y_mm = 4.0
width_mm = 61.0
height_mm = 38.0
fields = ["ingredients", "precautions"]

[[panel]]
name = "second side"
x_mm = 158.0
y_mm = 4.0
width_mm = 20.0
height_mm = 38.0
fields = []
foot_fields = ["responsible"]
','# A4 sheet of plain paper for six bands, cut apart along the marks.
what = "sheet"
paper = "A4"
columns = 1
rows = 6
left_mm = 10.0
top_mm = 10.5
pitch_x_mm = 190.0
pitch_y_mm = 46.0
width_mm = 190.0
height_mm = 46.0
cut_marks = true
',1,NULL);
CREATE TABLE lot (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL,                    -- L41-7; the bars of a batch carry the batch's own code
  material_id INTEGER NOT NULL REFERENCES material(id),
  "on" TEXT NOT NULL,                    -- received, cut or strained on
  delivery_id INTEGER REFERENCES delivery(id),
  supplier_id INTEGER REFERENCES supplier(id),
  supplier_number TEXT, supplier_number_key TEXT,   -- NULL from a supplier other than her own garden: unknown
  batch_id INTEGER REFERENCES batch(id),            -- the batch that gave it
  best_before TEXT, cost_minor INTEGER,             -- what the whole lot cost, carriage included; NULL when a batch gave it
  sap_low_mg_per_kg INTEGER, sap_high_mg_per_kg INTEGER, purity_ppm INTEGER, certificate TEXT,
  mass_mg INTEGER, purity_high_ppm INTEGER, water_ppm INTEGER,                                  -- for bars: what all of them weighed at the cut
  CHECK ((supplier_id IS NULL) <> (batch_id IS NULL))
);
INSERT INTO "lot" VALUES(1,13,'L1-X',2,'2026-02-03',1,1,'4471/2','44712',NULL,'2027-08-31',3512,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(2,13,'L2-8',3,'2026-02-03',1,1,NULL,NULL,NULL,NULL,1297,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(3,13,'L3-6',4,'2026-02-03',1,1,'N-77','n77',NULL,NULL,865,NULL,NULL,990000,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(4,13,'L4-4',6,'2026-02-03',1,1,'LV','lv',NULL,NULL,1513,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(5,13,'L5-2',7,'2026-02-03',1,1,'W','w',NULL,NULL,1513,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(6,14,'L6-0',5,'2026-02-03',2,2,'tank 3','tank3',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(7,15,'L7-9',2,'2026-02-03',3,1,'4502/1','45021',NULL,NULL,1400,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(8,24,'26-001-4',8,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,1290000,NULL,NULL);
INSERT INTO "lot" VALUES(9,24,'L8-7',1,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(10,32,'L9-5',10,'2026-02-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(11,34,'26-003-0',11,'2026-02-17',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,780000,NULL,NULL);
INSERT INTO "lot" VALUES(12,50,'26-005-7',8,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(13,50,'L10-8',1,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(14,52,'L11-6',1,'2026-03-18',NULL,NULL,NULL,NULL,6,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(15,53,'L12-4',5,'2026-03-19',4,2,'tank 4','tank4',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(16,60,'26-007-3',8,'2026-03-24',NULL,NULL,NULL,NULL,7,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(17,60,'L13-2',1,'2026-03-24',NULL,NULL,NULL,NULL,7,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE market_address (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  settings_revision_id INTEGER NOT NULL REFERENCES settings_revision(id),
  market TEXT NOT NULL, name TEXT NOT NULL, address TEXT NOT NULL
);
INSERT INTO "market_address" VALUES(1,1,1,'eu','Orla Penhallow','Quay Lane, Larkmere');
CREATE TABLE material (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('fat','alkali','liquid','additive','fragrance','botanical','colourant',
                                     'packaging','intermediate','rework','soap'))
);
INSERT INTO "material" VALUES(1,1,'offcuts','rework');
INSERT INTO "material" VALUES(2,4,'olive-oil','fat');
INSERT INTO "material" VALUES(3,5,'coconut-oil','fat');
INSERT INTO "material" VALUES(4,6,'sodium-hydroxide','alkali');
INSERT INTO "material" VALUES(5,7,'water','liquid');
INSERT INTO "material" VALUES(6,8,'lavender-oil','fragrance');
INSERT INTO "material" VALUES(7,9,'paper-band','packaging');
INSERT INTO "material" VALUES(8,11,'morning','soap');
INSERT INTO "material" VALUES(9,12,'two-tone','soap');
INSERT INTO "material" VALUES(10,12,'two-tone-dough','intermediate');
INSERT INTO "material" VALUES(11,12,'two-tone-light','soap');
INSERT INTO "material" VALUES(12,12,'two-tone-dark','soap');
CREATE TABLE material_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), name TEXT NOT NULL, inci TEXT,
  reference_key TEXT, sap_low_mg_per_kg INTEGER, sap_high_mg_per_kg INTEGER, sap_source TEXT,
  alkali_kind TEXT CHECK (alkali_kind IN ('NaOH','KOH')), purity_ppm INTEGER,
  density_mg_per_ml INTEGER, note TEXT
, inci_sodium TEXT, inci_potassium TEXT, acid_koh_mg_per_kg INTEGER, water_ppm INTEGER);
INSERT INTO "material_revision" VALUES(1,1,1,'offcuts',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(2,4,2,'olive oil','OLEA EUROPAEA FRUIT OIL','olive',184000,196000,'CXS 33-1981 Appendix, from memory, unverified',NULL,NULL,NULL,NULL,'SODIUM OLIVATE','POTASSIUM OLIVATE',NULL,NULL);
INSERT INTO "material_revision" VALUES(3,5,3,'coconut oil','COCOS NUCIFERA OIL','coconut',248000,265000,'CXS 210-1999 Table 2; Codex CXS 210-1999 Tables 1 and 2, read in an oil-by-oil copy',NULL,NULL,NULL,NULL,'SODIUM COCOATE','POTASSIUM COCOATE',NULL,NULL);
INSERT INTO "material_revision" VALUES(4,6,4,'sodium hydroxide','SODIUM HYDROXIDE',NULL,NULL,NULL,NULL,'NaOH',NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(5,7,5,'water','AQUA',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(6,8,6,'lavender oil','LAVANDULA ANGUSTIFOLIA OIL',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(7,9,7,'paper band',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(8,11,8,'Morning Lavender',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(9,12,9,'Two Tone',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(10,12,10,'Two Tone, dough',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(11,12,11,'Two Tone, light',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(12,12,12,'Two Tone, dark',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE movement (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), place_id INTEGER NOT NULL REFERENCES place(id),
  "on" TEXT NOT NULL, quantity INTEGER NOT NULL CHECK (quantity <> 0),
  kind TEXT NOT NULL CHECK (kind IN ('received','consumed','yielded','moved','sold','dispatched','given','returned','counted','wasted')),
  batch_id INTEGER REFERENCES batch(id),            -- consumed by, or yielded by
  plan_line_id INTEGER REFERENCES plan_line(id),
  customer_id INTEGER REFERENCES customer(id),      -- dispatched to, given to, returned by
  money_minor INTEGER,                              -- takings for sold and dispatched
  note TEXT
);
INSERT INTO "movement" VALUES(1,13,1,1,'2026-02-03',5000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(2,13,2,1,'2026-02-03',3000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(3,13,3,1,'2026-02-03',1000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(4,13,4,1,'2026-02-03',100000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(5,13,5,1,'2026-02-03',100,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(6,14,6,1,'2026-02-03',5000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(7,15,7,1,'2026-02-03',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(8,22,1,1,'2026-02-05',-700000,'consumed',1,1,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(9,22,2,1,'2026-02-05',-300000,'consumed',1,2,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(10,22,6,1,'2026-02-05',-287246,'consumed',1,3,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(11,22,3,1,'2026-02-05',-143623,'consumed',1,4,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(12,22,4,1,'2026-02-05',-10000,'consumed',1,5,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(13,24,8,1,'2026-02-06',10,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(14,24,9,1,'2026-02-06',60000,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(15,31,1,1,'2026-02-16',-700000,'consumed',2,7,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(16,31,2,1,'2026-02-16',-300000,'consumed',2,8,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(17,31,6,1,'2026-02-16',-287246,'consumed',2,9,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(18,31,3,1,'2026-02-16',-143623,'consumed',2,10,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(19,31,4,1,'2026-02-16',-10000,'consumed',2,11,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(20,32,10,1,'2026-02-16',1440869,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(21,32,10,1,'2026-02-16',-864521,'consumed',3,12,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(22,32,10,1,'2026-02-16',-576348,'consumed',4,14,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(23,34,11,1,'2026-02-17',6,'yielded',3,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(24,35,8,1,'2026-03-09',-1,'wasted',NULL,NULL,NULL,NULL,'cracked');
INSERT INTO "movement" VALUES(25,35,5,1,'2026-03-09',-9,'consumed',1,6,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(26,40,8,1,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(27,40,8,2,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(28,42,8,1,'2026-03-10',-4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(29,42,8,4,'2026-03-10',4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(30,43,8,4,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(31,43,8,1,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(32,43,8,4,'2026-03-10',-3,'sold',NULL,NULL,NULL,1500,NULL);
INSERT INTO "movement" VALUES(33,46,8,1,'2026-03-12',-2,'dispatched',NULL,NULL,1,NULL,NULL);
INSERT INTO "movement" VALUES(34,47,8,1,'2026-03-12',-1,'dispatched',NULL,NULL,2,NULL,NULL);
INSERT INTO "movement" VALUES(35,49,3,1,'2026-03-15',-150000,'consumed',5,19,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(36,49,1,1,'2026-03-15',-700000,'consumed',5,16,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(37,49,2,1,'2026-03-15',-300000,'consumed',5,17,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(38,49,6,1,'2026-03-15',-284224,'consumed',5,18,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(39,49,4,1,'2026-03-15',-10000,'consumed',5,20,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(40,50,12,1,'2026-03-16',10,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(41,50,13,1,'2026-03-16',40000,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(42,52,12,1,'2026-03-18',-10,'consumed',6,NULL,NULL,NULL,'lot L11-6');
INSERT INTO "movement" VALUES(43,52,14,1,'2026-03-18',1250000,'yielded',6,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(44,53,15,1,'2026-03-19',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(45,56,2,1,'2026-03-22',-20000,'wasted',NULL,NULL,NULL,NULL,'spilt');
INSERT INTO "movement" VALUES(46,57,2,1,'2026-03-22',20000,'wasted',NULL,NULL,NULL,NULL,'takes back entry 56');
INSERT INTO "movement" VALUES(47,59,1,1,'2026-03-23',-700000,'consumed',7,22,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(48,59,2,1,'2026-03-23',-300000,'consumed',7,23,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(49,59,6,1,'2026-03-23',-284224,'consumed',7,24,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(50,59,3,1,'2026-03-23',-142112,'consumed',7,25,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(51,59,4,1,'2026-03-23',-10000,'consumed',7,26,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(52,60,16,1,'2026-03-24',10,'yielded',7,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(53,60,17,1,'2026-03-24',50000,'yielded',7,NULL,NULL,NULL,NULL);
CREATE TABLE personal (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salted_digest TEXT NOT NULL
);
INSERT INTO "personal" VALUES(1,2,'426114e4a07c01707020a5074f7e5692ae852c4ace549bed3fc9220e69f79743');
INSERT INTO "personal" VALUES(2,44,'6f2085d441c492cb95dc87b107819156e9834dbcf7bc5f22bce03f2bb47b5cb0');
INSERT INTO "personal" VALUES(3,45,'3b7532780102a935878b42cddb72c7813f4226004f31b4f61e03ce71d4d68528');
CREATE TABLE personal_text (
  personal_id INTEGER PRIMARY KEY REFERENCES personal(id),
  salt TEXT NOT NULL, name TEXT, phone TEXT, email TEXT, address TEXT, health TEXT
);
INSERT INTO "personal_text" VALUES(1,'a0c2e862bc806ad8e4fc8c74aa8b9aad',NULL,'+353 20 910 0131',NULL,NULL,NULL);
INSERT INTO "personal_text" VALUES(2,'181a3d6103c340d77208981a85091aab',NULL,'+353 20 910 0188',NULL,NULL,NULL);
CREATE TABLE place (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('workshop','stall','retained','returns'))
);
INSERT INTO "place" VALUES(1,1,'workshop','workshop','workshop');
INSERT INTO "place" VALUES(2,1,'retained','retained samples','retained');
INSERT INTO "place" VALUES(3,1,'returns','returns shelf','returns');
INSERT INTO "place" VALUES(4,41,'quay-market','Quay market','stall');
CREATE TABLE plan_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), number INTEGER NOT NULL,
  role TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id),
  lot_id INTEGER REFERENCES lot(id),     -- the lot proposed: first to expire, first out
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL, stage TEXT NOT NULL
, in_demand INTEGER CHECK (in_demand IN (0,1)));
INSERT INTO "plan_line" VALUES(1,21,1,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(2,21,1,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(3,21,1,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(4,21,1,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(5,21,1,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(6,21,1,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(7,30,2,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(8,30,2,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(9,30,2,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(10,30,2,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(11,30,2,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(12,30,3,1,'dough',10,NULL,864521,821295,907747,'at trace',NULL);
INSERT INTO "plan_line" VALUES(13,30,3,2,'packaging',7,5,6,6,6,'packing',NULL);
INSERT INTO "plan_line" VALUES(14,30,4,1,'dough',10,NULL,576348,547531,605165,'at trace',NULL);
INSERT INTO "plan_line" VALUES(15,30,4,2,'packaging',7,5,4,4,4,'packing',NULL);
INSERT INTO "plan_line" VALUES(16,48,5,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(17,48,5,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(18,48,5,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(19,48,5,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(20,48,5,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(21,48,5,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(22,58,7,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(23,58,7,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(24,58,7,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(25,58,7,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(26,58,7,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(27,58,7,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(28,61,8,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(29,61,8,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(30,61,8,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(31,61,8,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(32,61,8,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(33,61,8,6,'packaging',7,5,10,10,10,'packing',NULL);
CREATE TABLE plan_target (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  plan_line_id INTEGER NOT NULL REFERENCES plan_line(id),
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL
);
CREATE TABLE "reading" (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, at TEXT,   -- at: local clock time 14:05
  what TEXT NOT NULL, value INTEGER, unit TEXT, text TEXT,
  plan_line_id INTEGER REFERENCES plan_line(id), corrects INTEGER REFERENCES reading(id), mark TEXT, method TEXT, equipment_id INTEGER REFERENCES equipment(id),    -- the line that was left out
  CHECK ((value IS NULL) = (unit IS NULL))
);
INSERT INTO "reading" VALUES(1,22,1,'2026-02-05',NULL,'lye temperature',49000,'milli-C',NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(2,22,1,'2026-02-05','10:40','poured',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(3,23,1,'2026-02-05',NULL,'lye temperature',48000,'milli-C',NULL,NULL,1,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(4,27,1,'2026-02-06',NULL,'bar weight',131200,'mg',NULL,NULL,NULL,'A',NULL,NULL);
INSERT INTO "reading" VALUES(5,27,1,'2026-02-06',NULL,'bar weight',130800,'mg',NULL,NULL,NULL,'B',NULL,NULL);
INSERT INTO "reading" VALUES(6,28,1,'2026-02-13',NULL,'bar weight',128200,'mg',NULL,NULL,NULL,'A',NULL,NULL);
INSERT INTO "reading" VALUES(7,28,1,'2026-02-13',NULL,'bar weight',127900,'mg',NULL,NULL,NULL,'B',NULL,NULL);
INSERT INTO "reading" VALUES(8,33,3,'2026-02-16','09:00','poured',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(9,49,5,'2026-03-15','09:20','poured',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(10,59,7,'2026-03-23','09:50','poured',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE recipe (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id)   -- what it gives: a soap, or an intermediate
);
INSERT INTO "recipe" VALUES(1,11,'morning',8);
INSERT INTO "recipe" VALUES(2,12,'two-tone',9);
CREATE TABLE recipe_version (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), number INTEGER NOT NULL, name TEXT NOT NULL, source TEXT NOT NULL
);
INSERT INTO "recipe_version" VALUES(1,11,1,1,'Morning Lavender','name = "Morning Lavender"
code = "morning"
process = "cold"
superfat = 5
fats_total = "1000 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "olive oil"
percent = 70
[[fat]]
material = "coconut oil"
percent = 30
[[fragrance]]
material = "lavender oil"
percent_of_fats = 1
[mould]
name = "loaf, 1 kg"
bars = 10
net_weight = "100 g"
[[packaging]]
material = "paper band"
');
INSERT INTO "recipe_version" VALUES(2,12,2,1,'Two Tone','name = "Two Tone"
code = "two-tone"
process = "cold"
superfat = 5
fats_total = "1000 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "olive oil"
percent = 70
[[fat]]
material = "coconut oil"
percent = 30
[[fragrance]]
material = "lavender oil"
percent_of_fats = 1
[mould]
name = "loaf, 1 kg"
bars = 10
net_weight = "100 g"
[[packaging]]
material = "paper band"

[[portion]]
name = "light"
percent = 60
bars = 6
[[portion]]
name = "dark"
percent = 40
bars = 4
');
INSERT INTO "recipe_version" VALUES(3,29,1,2,'Morning Lavender','name = "Morning Lavender"
code = "morning"
process = "cold"
superfat = 6
fats_total = "1000 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "olive oil"
percent = 70
[[fat]]
material = "coconut oil"
percent = 30
[[fragrance]]
material = "lavender oil"
percent_of_fats = 1
[mould]
name = "loaf, 1 kg"
bars = 10
net_weight = "100 g"
[[packaging]]
material = "paper band"
');
CREATE TABLE retained_sample (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, bars INTEGER NOT NULL CHECK (bars > 0),
  kept_at TEXT NOT NULL, keep_until TEXT NOT NULL
);
INSERT INTO "retained_sample" VALUES(1,40,8,'2026-03-10',1,'the shelf of retained samples','2029-02-05');
CREATE TABLE settings_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  business TEXT NOT NULL, country TEXT NOT NULL, currency TEXT NOT NULL,
  units TEXT NOT NULL CHECK (units IN ('metric','us')), time_zone TEXT NOT NULL,
  phone TEXT, labour_minor_per_hour INTEGER
, scale_step_mg INTEGER);
INSERT INTO "settings_revision" VALUES(1,1,'Wrenfold Soapworks','IE','EUR','metric','Europe/Dublin',NULL,1400,NULL);
CREATE TABLE skin_limit (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER REFERENCES material(id), constituent TEXT, limit_ppm INTEGER NOT NULL,
  certificate TEXT NOT NULL, amendment TEXT, category TEXT NOT NULL, dated TEXT NOT NULL,
  CHECK ((material_id IS NULL) <> (constituent IS NULL))
);
INSERT INTO "skin_limit" VALUES(1,10,6,NULL,50000,'LV-3',NULL,'9','2026-02-02');
CREATE TABLE supplier (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, own INTEGER NOT NULL CHECK (own IN (0,1))   -- own: her own garden
);
INSERT INTO "supplier" VALUES(1,2,'ottersby-oils',0);
INSERT INTO "supplier" VALUES(2,3,'own-well',1);
CREATE TABLE supplier_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), name TEXT NOT NULL,
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "supplier_revision" VALUES(1,2,1,'Ottersby Oils',1,NULL);
INSERT INTO "supplier_revision" VALUES(2,3,2,'Own well',NULL,NULL);
CREATE TABLE upkeep (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('cleaning','training','supplier approval','self-inspection')),
  "on" TEXT NOT NULL, by TEXT NOT NULL, what TEXT NOT NULL, next_on TEXT, supplier_id INTEGER REFERENCES supplier(id)
);
INSERT INTO "upkeep" VALUES(1,20,'supplier approval','2026-02-03','Nuala','certificates with every lot','2027-02-01',1);
CREATE INDEX lot_code ON lot (code);
CREATE INDEX movement_stock ON movement (lot_id, place_id, "on", quantity);
CREATE INDEX movement_batch ON movement (batch_id, lot_id);
CREATE INDEX decision_lot ON decision (lot_id, "on", id, verdict);
CREATE INDEX plan_target_line ON plan_target (plan_line_id);
CREATE INDEX constituent_material ON constituent (material_id, lot_id);
CREATE INDEX label_count_run ON label_count (label_run_id);
CREATE INDEX equipment_check_of ON equipment_check (equipment_id, "on");
CREATE INDEX reading_batch ON reading (batch_id, what, "on");
CREATE INDEX deviation_batch ON deviation (batch_id);
CREATE INDEX deviation_decision_of ON deviation_decision (deviation_id);
CREATE INDEX assessment_of_entry ON assessment (entry_id);
CREATE INDEX attachment_of_entry ON attachment (entry_id);
CREATE INDEX batch_of_entry ON batch (entry_id);
CREATE INDEX complaint_of_entry ON complaint (entry_id);
CREATE INDEX complaint_step_of_entry ON complaint_step (entry_id);
CREATE INDEX constituent_of_entry ON constituent (entry_id);
CREATE INDEX customer_of_entry ON customer (entry_id);
CREATE INDEX customer_revision_of_entry ON customer_revision (entry_id);
CREATE INDEX decision_of_entry ON decision (entry_id);
CREATE INDEX delivery_of_entry ON delivery (entry_id);
CREATE INDEX deviation_of_entry ON deviation (entry_id);
CREATE INDEX deviation_decision_of_entry ON deviation_decision (entry_id);
CREATE INDEX equipment_of_entry ON equipment (entry_id);
CREATE INDEX equipment_check_of_entry ON equipment_check (entry_id);
CREATE INDEX equipment_revision_of_entry ON equipment_revision (entry_id);
CREATE INDEX erasure_of_entry ON erasure (entry_id);
CREATE INDEX finished_check_of_entry ON finished_check (entry_id);
CREATE INDEX label_approval_of_entry ON label_approval (entry_id);
CREATE INDEX label_count_of_entry ON label_count (entry_id);
CREATE INDEX label_run_of_entry ON label_run (entry_id);
CREATE INDEX lot_of_entry ON lot (entry_id);
CREATE INDEX market_address_of_entry ON market_address (entry_id);
CREATE INDEX material_of_entry ON material (entry_id);
CREATE INDEX material_revision_of_entry ON material_revision (entry_id);
CREATE INDEX movement_of_entry ON movement (entry_id);
CREATE INDEX personal_of_entry ON personal (entry_id);
CREATE INDEX place_of_entry ON place (entry_id);
CREATE INDEX plan_line_of_entry ON plan_line (entry_id);
CREATE INDEX plan_target_of_entry ON plan_target (entry_id);
CREATE INDEX reading_of_entry ON reading (entry_id);
CREATE INDEX recipe_of_entry ON recipe (entry_id);
CREATE INDEX recipe_version_of_entry ON recipe_version (entry_id);
CREATE INDEX retained_sample_of_entry ON retained_sample (entry_id);
CREATE INDEX settings_revision_of_entry ON settings_revision (entry_id);
CREATE INDEX skin_limit_of_entry ON skin_limit (entry_id);
CREATE INDEX supplier_of_entry ON supplier (entry_id);
CREATE INDEX supplier_revision_of_entry ON supplier_revision (entry_id);
CREATE INDEX upkeep_of_entry ON upkeep (entry_id);
CREATE VIEW live_assessment AS SELECT t.* FROM assessment t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_attachment AS SELECT t.* FROM attachment t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_batch AS SELECT t.* FROM batch t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_complaint AS SELECT t.* FROM complaint t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_complaint_step AS SELECT t.* FROM complaint_step t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_constituent AS SELECT t.* FROM constituent t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_customer AS SELECT t.* FROM customer t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_customer_revision AS SELECT t.* FROM customer_revision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_decision AS SELECT t.* FROM decision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_delivery AS SELECT t.* FROM delivery t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_deviation AS SELECT t.* FROM deviation t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_deviation_decision AS SELECT t.* FROM deviation_decision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_equipment AS SELECT t.* FROM equipment t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_equipment_check AS SELECT t.* FROM equipment_check t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_equipment_revision AS SELECT t.* FROM equipment_revision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_erasure AS SELECT t.* FROM erasure t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_finished_check AS SELECT t.* FROM finished_check t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_label_approval AS SELECT t.* FROM label_approval t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_label_count AS SELECT t.* FROM label_count t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_label_run AS SELECT t.* FROM label_run t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_lot AS SELECT t.* FROM lot t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_market_address AS SELECT t.* FROM market_address t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_material AS SELECT t.* FROM material t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_material_revision AS SELECT t.* FROM material_revision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_movement AS SELECT t.* FROM movement t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_personal AS SELECT t.* FROM personal t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_place AS SELECT t.* FROM place t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_plan_line AS SELECT t.* FROM plan_line t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_plan_target AS SELECT t.* FROM plan_target t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_reading AS SELECT t.* FROM reading t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_recipe AS SELECT t.* FROM recipe t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_recipe_version AS SELECT t.* FROM recipe_version t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_retained_sample AS SELECT t.* FROM retained_sample t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_settings_revision AS SELECT t.* FROM settings_revision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_skin_limit AS SELECT t.* FROM skin_limit t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_supplier AS SELECT t.* FROM supplier t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_supplier_revision AS SELECT t.* FROM supplier_revision t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE VIEW live_upkeep AS SELECT t.* FROM upkeep t WHERE 1 AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE TRIGGER lot_code_once BEFORE INSERT ON lot BEGIN
  SELECT RAISE(ABORT, 'guard: There is a lot of that code already.') WHERE
    EXISTS (SELECT 1 FROM live_lot WHERE code = NEW.code);
END;
CREATE TRIGGER movement_within_stock BEFORE INSERT ON movement WHEN NEW.quantity < 0 BEGIN
  SELECT RAISE(ABORT, 'guard: That is more than was on hand there on that date.') WHERE
    (SELECT coalesce(sum(quantity), 0) FROM movement
      WHERE lot_id = NEW.lot_id AND place_id = NEW.place_id AND "on" <= NEW."on") + NEW.quantity < 0
    OR EXISTS (SELECT 1 FROM
      (SELECT "on" AS d, sum(sum(quantity)) OVER (ORDER BY "on") AS s FROM movement
        WHERE lot_id = NEW.lot_id AND place_id = NEW.place_id GROUP BY "on")
      WHERE d >= NEW."on" AND s + NEW.quantity < 0);
END;
CREATE TRIGGER only_accepted_lots_consumed BEFORE INSERT ON movement
WHEN NEW.kind = 'consumed' AND NEW.quantity < 0 BEGIN
  SELECT RAISE(ABORT, 'guard: That lot was not accepted on that date; only accepted lots go into a batch.') WHERE
    coalesce((SELECT verdict FROM live_decision WHERE lot_id = NEW.lot_id AND "on" <= NEW."on"
              ORDER BY id DESC LIMIT 1), 'quarantine') <> 'accepted'
    AND NOT (  -- bars that may not leave, booked back in as mass
      (SELECT process FROM batch WHERE id = NEW.batch_id) IS 'rework'
      AND (SELECT m.kind FROM material m JOIN lot l ON l.material_id = m.id WHERE l.id = NEW.lot_id) IS 'soap'
      AND coalesce((SELECT verdict FROM live_decision WHERE lot_id = NEW.lot_id AND "on" <= NEW."on"
                    ORDER BY id DESC LIMIT 1), 'curing') IN ('rejected', 'on hold'));
END;
CREATE TRIGGER only_released_bars_leave BEFORE INSERT ON movement
WHEN NEW.quantity < 0 AND NEW.kind IN ('sold', 'dispatched', 'given') BEGIN
  SELECT RAISE(ABORT, 'guard: Those bars were not released on that date; only released bars leave.') WHERE
    (SELECT m.kind FROM material m JOIN lot l ON l.material_id = m.id WHERE l.id = NEW.lot_id) = 'soap'
    AND (NEW.kind IN ('dispatched', 'given')
         OR (NEW.kind = 'sold' AND (SELECT kind FROM place WHERE id = NEW.place_id) <> 'stall'))
    AND coalesce((SELECT verdict FROM live_decision WHERE lot_id = NEW.lot_id AND "on" <= NEW."on"
                  ORDER BY id DESC LIMIT 1), 'curing') <> 'released';
END;
CREATE TRIGGER only_released_bars_go_to_a_stall BEFORE INSERT ON movement
WHEN NEW.quantity > 0 AND NEW.kind = 'moved' BEGIN
  SELECT RAISE(ABORT, 'guard: Those bars were not released on that date; only released bars leave.') WHERE
    (SELECT kind FROM place WHERE id = NEW.place_id) = 'stall'
    AND NOT EXISTS (SELECT 1 FROM movement m WHERE m.lot_id = NEW.lot_id AND m.place_id = NEW.place_id
                    AND m.quantity = -NEW.quantity AND m."on" = NEW."on")  -- an undone 'stall back'
    AND coalesce((SELECT verdict FROM live_decision WHERE lot_id = NEW.lot_id AND "on" <= NEW."on"
                  ORDER BY id DESC LIMIT 1), 'curing') <> 'released';
END;
CREATE TRIGGER details_erased_only_on_decision BEFORE DELETE ON personal_text BEGIN
  SELECT RAISE(ABORT, 'guard: Personal details are erased only by a decision that is kept.') WHERE
    NOT EXISTS (SELECT 1 FROM erasure WHERE personal_id = OLD.personal_id);
END;
CREATE TRIGGER details_never_changed BEFORE UPDATE ON personal_text BEGIN
  SELECT RAISE(ABORT, 'guard: What was written is never changed.');
END;
CREATE TRIGGER content_never_changed BEFORE UPDATE ON attached_content BEGIN
  SELECT RAISE(ABORT, 'guard: What was written is never changed.');
END;
CREATE TRIGGER content_never_deleted BEFORE DELETE ON attached_content BEGIN
  SELECT RAISE(ABORT, 'guard: What was written is never deleted.');
END;
CREATE TRIGGER entry_never_changed BEFORE UPDATE ON entry BEGIN
  SELECT RAISE(ABORT, 'guard: What was written is never changed.');
END;
CREATE TRIGGER entry_never_deleted BEFORE DELETE ON entry BEGIN
  SELECT RAISE(ABORT, 'guard: What was written is never deleted.');
END;
CREATE TRIGGER entry_follows_the_one_before BEFORE INSERT ON entry BEGIN
  SELECT RAISE(ABORT, 'guard: An entry follows the one before it.') WHERE
    NEW.id <> (SELECT coalesce(max(id), 0) + 1 FROM entry)
    OR NEW.previous <> coalesce((SELECT digest FROM entry WHERE id = NEW.id - 1), NEW.previous);
END;
CREATE TRIGGER assessment_never_changed BEFORE UPDATE ON assessment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER assessment_never_deleted BEFORE DELETE ON assessment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER assessment_entry_still_open BEFORE INSERT ON assessment WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER attachment_never_changed BEFORE UPDATE ON attachment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER attachment_never_deleted BEFORE DELETE ON attachment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER attachment_entry_still_open BEFORE INSERT ON attachment WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER batch_never_changed BEFORE UPDATE ON batch BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER batch_never_deleted BEFORE DELETE ON batch BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER batch_entry_still_open BEFORE INSERT ON batch WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER complaint_never_changed BEFORE UPDATE ON complaint BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER complaint_never_deleted BEFORE DELETE ON complaint BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER complaint_entry_still_open BEFORE INSERT ON complaint WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER complaint_step_never_changed BEFORE UPDATE ON complaint_step BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER complaint_step_never_deleted BEFORE DELETE ON complaint_step BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER complaint_step_entry_still_open BEFORE INSERT ON complaint_step WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER constituent_never_changed BEFORE UPDATE ON constituent BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER constituent_never_deleted BEFORE DELETE ON constituent BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER constituent_entry_still_open BEFORE INSERT ON constituent WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER customer_never_changed BEFORE UPDATE ON customer BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER customer_never_deleted BEFORE DELETE ON customer BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER customer_entry_still_open BEFORE INSERT ON customer WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER customer_revision_never_changed BEFORE UPDATE ON customer_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER customer_revision_never_deleted BEFORE DELETE ON customer_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER customer_revision_entry_still_open BEFORE INSERT ON customer_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER decision_never_changed BEFORE UPDATE ON decision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER decision_never_deleted BEFORE DELETE ON decision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER decision_entry_still_open BEFORE INSERT ON decision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER delivery_never_changed BEFORE UPDATE ON delivery BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER delivery_never_deleted BEFORE DELETE ON delivery BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER delivery_entry_still_open BEFORE INSERT ON delivery WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER deviation_never_changed BEFORE UPDATE ON deviation BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER deviation_never_deleted BEFORE DELETE ON deviation BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER deviation_entry_still_open BEFORE INSERT ON deviation WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER deviation_decision_never_changed BEFORE UPDATE ON deviation_decision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER deviation_decision_never_deleted BEFORE DELETE ON deviation_decision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER deviation_decision_entry_still_open BEFORE INSERT ON deviation_decision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER equipment_never_changed BEFORE UPDATE ON equipment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER equipment_never_deleted BEFORE DELETE ON equipment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER equipment_entry_still_open BEFORE INSERT ON equipment WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER equipment_check_never_changed BEFORE UPDATE ON equipment_check BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER equipment_check_never_deleted BEFORE DELETE ON equipment_check BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER equipment_check_entry_still_open BEFORE INSERT ON equipment_check WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER equipment_revision_never_changed BEFORE UPDATE ON equipment_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER equipment_revision_never_deleted BEFORE DELETE ON equipment_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER equipment_revision_entry_still_open BEFORE INSERT ON equipment_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER erasure_never_changed BEFORE UPDATE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER erasure_never_deleted BEFORE DELETE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER erasure_entry_still_open BEFORE INSERT ON erasure WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER finished_check_never_changed BEFORE UPDATE ON finished_check BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER finished_check_never_deleted BEFORE DELETE ON finished_check BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER finished_check_entry_still_open BEFORE INSERT ON finished_check WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER label_approval_never_changed BEFORE UPDATE ON label_approval BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER label_approval_never_deleted BEFORE DELETE ON label_approval BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER label_approval_entry_still_open BEFORE INSERT ON label_approval WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER label_count_never_changed BEFORE UPDATE ON label_count BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER label_count_never_deleted BEFORE DELETE ON label_count BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER label_count_entry_still_open BEFORE INSERT ON label_count WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER label_run_never_changed BEFORE UPDATE ON label_run BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER label_run_never_deleted BEFORE DELETE ON label_run BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER label_run_entry_still_open BEFORE INSERT ON label_run WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER lot_never_changed BEFORE UPDATE ON lot BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER lot_never_deleted BEFORE DELETE ON lot BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER lot_entry_still_open BEFORE INSERT ON lot WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER market_address_never_changed BEFORE UPDATE ON market_address BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER market_address_never_deleted BEFORE DELETE ON market_address BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER market_address_entry_still_open BEFORE INSERT ON market_address WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER material_never_changed BEFORE UPDATE ON material BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER material_never_deleted BEFORE DELETE ON material BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER material_entry_still_open BEFORE INSERT ON material WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER material_revision_never_changed BEFORE UPDATE ON material_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER material_revision_never_deleted BEFORE DELETE ON material_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER material_revision_entry_still_open BEFORE INSERT ON material_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER movement_never_changed BEFORE UPDATE ON movement BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER movement_never_deleted BEFORE DELETE ON movement BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER movement_entry_still_open BEFORE INSERT ON movement WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER personal_never_changed BEFORE UPDATE ON personal BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER personal_never_deleted BEFORE DELETE ON personal BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER personal_entry_still_open BEFORE INSERT ON personal WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER place_never_changed BEFORE UPDATE ON place BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER place_never_deleted BEFORE DELETE ON place BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER place_entry_still_open BEFORE INSERT ON place WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER plan_line_never_changed BEFORE UPDATE ON plan_line BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER plan_line_never_deleted BEFORE DELETE ON plan_line BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER plan_line_entry_still_open BEFORE INSERT ON plan_line WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER plan_target_never_changed BEFORE UPDATE ON plan_target BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER plan_target_never_deleted BEFORE DELETE ON plan_target BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER plan_target_entry_still_open BEFORE INSERT ON plan_target WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER reading_never_changed BEFORE UPDATE ON reading BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER reading_never_deleted BEFORE DELETE ON reading BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER reading_entry_still_open BEFORE INSERT ON reading WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER recipe_never_changed BEFORE UPDATE ON recipe BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER recipe_never_deleted BEFORE DELETE ON recipe BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER recipe_entry_still_open BEFORE INSERT ON recipe WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER recipe_version_never_changed BEFORE UPDATE ON recipe_version BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER recipe_version_never_deleted BEFORE DELETE ON recipe_version BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER recipe_version_entry_still_open BEFORE INSERT ON recipe_version WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER retained_sample_never_changed BEFORE UPDATE ON retained_sample BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER retained_sample_never_deleted BEFORE DELETE ON retained_sample BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER retained_sample_entry_still_open BEFORE INSERT ON retained_sample WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER settings_revision_never_changed BEFORE UPDATE ON settings_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER settings_revision_never_deleted BEFORE DELETE ON settings_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER settings_revision_entry_still_open BEFORE INSERT ON settings_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER skin_limit_never_changed BEFORE UPDATE ON skin_limit BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER skin_limit_never_deleted BEFORE DELETE ON skin_limit BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER skin_limit_entry_still_open BEFORE INSERT ON skin_limit WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER supplier_never_changed BEFORE UPDATE ON supplier BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER supplier_never_deleted BEFORE DELETE ON supplier BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER supplier_entry_still_open BEFORE INSERT ON supplier WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER supplier_revision_never_changed BEFORE UPDATE ON supplier_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER supplier_revision_never_deleted BEFORE DELETE ON supplier_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER supplier_revision_entry_still_open BEFORE INSERT ON supplier_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER upkeep_never_changed BEFORE UPDATE ON upkeep BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER upkeep_never_deleted BEFORE DELETE ON upkeep BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER upkeep_entry_still_open BEFORE INSERT ON upkeep WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
COMMIT;
