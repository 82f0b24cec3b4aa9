-- Written by the program of commit 639f78e: delivery, hold, paper, recipe revised, cut, pass, release, stall, shop, a person erased, rejected bars wasted, an undo, a batch on the rack, a plan.
PRAGMA application_id = 1353391830;
PRAGMA user_version = 1;
BEGIN TRANSACTION;
CREATE TABLE attached_content (digest TEXT PRIMARY KEY, content BLOB NOT NULL);
INSERT INTO "attached_content" VALUES('b370497f0765d2ea880a730efce3a0bd5c1298829aa76bef7fc8ee0b9c745720',X'4F6C697665206F696C2C206C6F7420343437312F322C207361706F6E696669636174696F6E2076616C7565203139302E0A');
CREATE TABLE attachment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  digest TEXT NOT NULL REFERENCES attached_content(digest), name TEXT NOT NULL, kind TEXT NOT NULL,
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  recipe_id INTEGER REFERENCES recipe(id), material_id INTEGER REFERENCES material(id)
);
INSERT INTO "attachment" VALUES(1,14,'b370497f0765d2ea880a730efce3a0bd5c1298829aa76bef7fc8ee0b9c745720','certificate.txt','paper',1,NULL,NULL,NULL);
CREATE TABLE batch (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE,
  process TEXT NOT NULL CHECK (process IN ('cold','hot','infusion','rebatch','combine')),
  recipe_version_id INTEGER REFERENCES recipe_version(id),      -- none for a combined drum
  material_id INTEGER NOT NULL REFERENCES material(id),         -- what it gives
  "on" TEXT NOT NULL,                                           -- the day it is planned for, then made on
  bars_planned INTEGER
);
INSERT INTO "batch" VALUES(1,15,'26-001-4','cold',1,8,'2026-02-05',10);
INSERT INTO "batch" VALUES(2,30,'26-002-2','cold',2,8,'2026-03-15',10);
INSERT INTO "batch" VALUES(3,40,'26-003-0','cold',2,8,'2026-03-23',10);
INSERT INTO "batch" VALUES(4,43,'26-004-9','cold',2,8,'2026-03-25',10);
CREATE TABLE complaint (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, lot_id INTEGER REFERENCES lot(id), bought TEXT, what TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, personal_id INTEGER REFERENCES personal(id)
);
INSERT INTO "complaint" VALUES(1,36,'2026-03-20',8,NULL,'itched',NULL,NULL,NULL);
CREATE TABLE customer (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('shop','person'))
);
INSERT INTO "customer" VALUES(1,26,'harrow','shop');
INSERT INTO "customer" VALUES(2,27,'c-1','person');
CREATE TABLE customer_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), name TEXT,   -- a shop's trade name; a person's name is in personal_text
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "customer_revision" VALUES(1,26,1,'Harrow and Fenn',2,NULL);
INSERT INTO "customer_revision" VALUES(2,27,2,NULL,3,NULL);
CREATE TABLE decision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  verdict TEXT NOT NULL CHECK (verdict IN ('accepted','rejected','on hold','passed','released','discarded')),
  "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT,
  CHECK ((lot_id IS NULL) <> (batch_id IS NULL))
);
INSERT INTO "decision" VALUES(1,11,1,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(2,11,2,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(3,11,3,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(4,11,4,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(5,11,5,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(6,12,6,NULL,'accepted','2026-02-03','Nuala',NULL);
INSERT INTO "decision" VALUES(7,13,7,NULL,'on hold','2026-02-03','Nuala','the lid was loose');
INSERT INTO "decision" VALUES(8,18,9,NULL,'accepted','2026-02-06','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(9,21,8,NULL,'passed','2026-03-09','Nuala',NULL);
INSERT INTO "decision" VALUES(10,22,8,NULL,'released','2026-03-10','Nuala',NULL);
INSERT INTO "decision" VALUES(11,31,NULL,2,'accepted','2026-03-15','Nuala','a hard bar for the workshop');
INSERT INTO "decision" VALUES(12,32,11,NULL,'accepted','2026-03-16','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(13,33,10,NULL,'rejected','2026-03-17','Nuala','zap on the tongue');
INSERT INTO "decision" VALUES(14,35,12,NULL,'accepted','2026-03-19','Nuala',NULL);
INSERT INTO "decision" VALUES(15,42,14,NULL,'accepted','2026-03-24','Nuala','offcuts kept');
CREATE TABLE delivery (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), note_number TEXT, "on" TEXT NOT NULL,
  carriage_minor INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "delivery" VALUES(1,11,1,'D-19','2026-02-03',650);
INSERT INTO "delivery" VALUES(2,12,2,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(3,13,1,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(4,35,2,NULL,'2026-03-19',0);
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
INSERT INTO "entry" VALUES(2,'2026-02-02T09:05:00Z','Nuala','supplier add','Added supplier Ottersby Oils (ottersby-oils).',NULL,'0.1.0','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382','5f2ac4e185a01211ce0aa13047d81c4896e1735ac7f080aca50f1e555b9a0c95');
INSERT INTO "entry" VALUES(3,'2026-02-02T09:06:00Z','Nuala','supplier add','Added supplier Own well (own-well).',NULL,'0.1.0','5f2ac4e185a01211ce0aa13047d81c4896e1735ac7f080aca50f1e555b9a0c95','a55449999fa893cd3cc6112090dc19d80736853300b60e93e1397b08a5b833e1');
INSERT INTO "entry" VALUES(4,'2026-02-02T09:10:00Z','Nuala','material add','Added material olive oil (olive-oil).',NULL,'0.1.0','a55449999fa893cd3cc6112090dc19d80736853300b60e93e1397b08a5b833e1','8d70593bcaf1ba46bdc77af18627ced8bd8a62588983ac294446618619b7fdea');
INSERT INTO "entry" VALUES(5,'2026-02-02T09:10:00Z','Nuala','material add','Added material coconut oil (coconut-oil).',NULL,'0.1.0','8d70593bcaf1ba46bdc77af18627ced8bd8a62588983ac294446618619b7fdea','bfd4e881babd2021ff45185eb2064c576509a40ed91f884f7b4248d2ea6fa786');
INSERT INTO "entry" VALUES(6,'2026-02-02T09:10:00Z','Nuala','material add','Added material sodium hydroxide (sodium-hydroxide).',NULL,'0.1.0','bfd4e881babd2021ff45185eb2064c576509a40ed91f884f7b4248d2ea6fa786','33cd7d07f2d60339a3ed64c802bf8b12e87dd7fc6d3c1c20dc81e6d9f0978d75');
INSERT INTO "entry" VALUES(7,'2026-02-02T09:10:00Z','Nuala','material add','Added material water (water).',NULL,'0.1.0','33cd7d07f2d60339a3ed64c802bf8b12e87dd7fc6d3c1c20dc81e6d9f0978d75','14367f042f26fa7af6ec2a13dd7f983684c54118008001ffc4abb3f935427185');
INSERT INTO "entry" VALUES(8,'2026-02-02T09:10:00Z','Nuala','material add','Added material lavender oil (lavender-oil).',NULL,'0.1.0','14367f042f26fa7af6ec2a13dd7f983684c54118008001ffc4abb3f935427185','10319ab2586ae4008a17db26209f5c9029df822883a01a13b825c391d55a5c9e');
INSERT INTO "entry" VALUES(9,'2026-02-02T09:10:00Z','Nuala','material add','Added material paper band (paper-band).',NULL,'0.1.0','10319ab2586ae4008a17db26209f5c9029df822883a01a13b825c391d55a5c9e','d80d55e70072940cdacf3a5e0524959be1446bffab67b6784b63a51627b8c1e6');
INSERT INTO "entry" VALUES(10,'2026-02-02T09:30:00Z','Nuala','recipe add','Added recipe Morning Lavender (morning).',NULL,'0.1.0','d80d55e70072940cdacf3a5e0524959be1446bffab67b6784b63a51627b8c1e6','0381bab336b7192e404f66153e7b77d5095fdf6eeaeae6bc0c95218c37ac7fa7');
INSERT INTO "entry" VALUES(11,'2026-02-03T10:00:00Z','Nuala','receive','Received 5 lots from Ottersby Oils: L1-X, L2-8, L3-6, L4-4, L5-2.',NULL,'0.1.0','0381bab336b7192e404f66153e7b77d5095fdf6eeaeae6bc0c95218c37ac7fa7','74caac04247a0f17142a8728b2cfac423485ecc7ae1eb297292f1a83a019c985');
INSERT INTO "entry" VALUES(12,'2026-02-03T10:05:00Z','Nuala','receive','Received 1 lot from Own well: L6-0.',NULL,'0.1.0','74caac04247a0f17142a8728b2cfac423485ecc7ae1eb297292f1a83a019c985','4764a87ee9de625e5eea92e33bc34aee28a6d94ec3be743727969551d9857d14');
INSERT INTO "entry" VALUES(13,'2026-02-03T10:07:00Z','Nuala','receive','Received 1 lot from Ottersby Oils: L7-9.',NULL,'0.1.0','4764a87ee9de625e5eea92e33bc34aee28a6d94ec3be743727969551d9857d14','c6b5f122eac525b6ab30f0130b14ff34ba419fd98c9ba2a9c8e78c77972364bc');
INSERT INTO "entry" VALUES(14,'2026-02-03T10:10:00Z','Nuala','attach','Attached certificate.txt (paper) to lot L1-X.',NULL,'0.1.0','c6b5f122eac525b6ab30f0130b14ff34ba419fd98c9ba2a9c8e78c77972364bc','52e579c8762eec46f7bf5e355a3386ccae35573607bde6e97a3f0361595dcf79');
INSERT INTO "entry" VALUES(15,'2026-02-05T09:00:00Z','Nuala','batch plan','Planned batch 26-001-4, Morning Lavender version 1.',NULL,'0.1.0','52e579c8762eec46f7bf5e355a3386ccae35573607bde6e97a3f0361595dcf79','fe59d9127570d4c430993f5ccc14b03090b5ed90d1d20c130daa646d55042bc7');
INSERT INTO "entry" VALUES(16,'2026-02-05T11:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-001-4; noted lye temperature, poured.',NULL,'0.1.0','fe59d9127570d4c430993f5ccc14b03090b5ed90d1d20c130daa646d55042bc7','e52c8d8fb608cbfecff49ea90976ba7b97ece6d9da354a0caf814f08b86d7b4f');
INSERT INTO "entry" VALUES(17,'2026-02-05T11:05:00Z','Nuala','batch reading','Noted lye temperature of batch 26-001-4.',NULL,'0.1.0','e52c8d8fb608cbfecff49ea90976ba7b97ece6d9da354a0caf814f08b86d7b4f','f2992e064e286103cb76bf9ffc62cc75bd50f6e660cd1bb4e7eb1e9badebab64');
INSERT INTO "entry" VALUES(18,'2026-02-06T09:00:00Z','Nuala','batch cut','Cut batch 26-001-4 into 10 bars.',NULL,'0.1.0','f2992e064e286103cb76bf9ffc62cc75bd50f6e660cd1bb4e7eb1e9badebab64','009d2e726d94857c5fd4e25f92eaa3c636350ad28c25229d586904df14ddca01');
INSERT INTO "entry" VALUES(19,'2026-02-06T09:10:00Z','Nuala','batch reading','Noted observation of batch 26-001-4.',NULL,'0.1.0','009d2e726d94857c5fd4e25f92eaa3c636350ad28c25229d586904df14ddca01','ea04f477dd9d2c430c64c23f45b4da29017a056555517f11d4afc9ab239abc51');
INSERT INTO "entry" VALUES(20,'2026-02-14T09:00:00Z','Nuala','recipe edit','Version 2 of recipe Morning Lavender (morning).',NULL,'0.1.0','ea04f477dd9d2c430c64c23f45b4da29017a056555517f11d4afc9ab239abc51','fc134aa5e5c878d6ff0c43100f8406cb1f2b1faa2db31815e9cd8c7b75d0becb');
INSERT INTO "entry" VALUES(21,'2026-03-09T09:00:00Z','Nuala','pass','Passed 9 bars of batch 26-001-4 for packing.',NULL,'0.1.0','fc134aa5e5c878d6ff0c43100f8406cb1f2b1faa2db31815e9cd8c7b75d0becb','bd220f176e710b6c8fae8c7e20754220611a22a6186aec634ec9eee96afc2f00');
INSERT INTO "entry" VALUES(22,'2026-03-10T09:00:00Z','Nuala','release','Released batch 26-001-4, 8 bars.',NULL,'0.1.0','bd220f176e710b6c8fae8c7e20754220611a22a6186aec634ec9eee96afc2f00','1c0f5d671c357f6796e50ad772971b643f1cc571b90626e3db4abdd14f1c76a4');
INSERT INTO "entry" VALUES(23,'2026-03-10T09:30:00Z','Nuala','stall add','Added stall Quay market.',NULL,'0.1.0','1c0f5d671c357f6796e50ad772971b643f1cc571b90626e3db4abdd14f1c76a4','27caa4ce78255532f58ac424cb883c769a98aca435a8f1440ee3698b6ae87938');
INSERT INTO "entry" VALUES(24,'2026-03-10T09:31:00Z','Nuala','stall out','Took 4 bars to Quay market.',NULL,'0.1.0','27caa4ce78255532f58ac424cb883c769a98aca435a8f1440ee3698b6ae87938','a20a757d120eb346ec49c194c391364f3b8defadb15c8a2941115da048da23bd');
INSERT INTO "entry" VALUES(25,'2026-03-10T18:00:00Z','Nuala','stall back','Back from Quay market: 3 bars sold, 1 came home.',NULL,'0.1.0','a20a757d120eb346ec49c194c391364f3b8defadb15c8a2941115da048da23bd','b1273b597db562fc35a7ad3ccae3d2e52aa63dfc0f399cf747d7f460493f4e48');
INSERT INTO "entry" VALUES(26,'2026-03-11T09:00:00Z','Nuala','customer add','Added customer harrow.',NULL,'0.1.0','b1273b597db562fc35a7ad3ccae3d2e52aa63dfc0f399cf747d7f460493f4e48','6cbaef0b8cb67e3f0dc6acc24dbb422f2f945c7a0b73db18b5daf90bdb8c5364');
INSERT INTO "entry" VALUES(27,'2026-03-11T09:01:00Z','Nuala','customer add','Added customer c-1.',NULL,'0.1.0','6cbaef0b8cb67e3f0dc6acc24dbb422f2f945c7a0b73db18b5daf90bdb8c5364','04969b71c454b283ba97c88eb4fc0ecec57d82d805b8e6bbd7f7ebeecd2c9cd3');
INSERT INTO "entry" VALUES(28,'2026-03-12T09:00:00Z','Nuala','dispatch','Dispatched 2 bars to harrow.',NULL,'0.1.0','04969b71c454b283ba97c88eb4fc0ecec57d82d805b8e6bbd7f7ebeecd2c9cd3','b32856df9af567d8dba14bb0d83afcafa97f4060222344e6551426c4e9978017');
INSERT INTO "entry" VALUES(29,'2026-03-12T09:01:00Z','Nuala','dispatch','Dispatched 1 bars to c-1.',NULL,'0.1.0','b32856df9af567d8dba14bb0d83afcafa97f4060222344e6551426c4e9978017','ebda5cbb18b4429489d5959f18b71fb0b7a2b3b64846f37a812c7851bfa3627d');
INSERT INTO "entry" VALUES(30,'2026-03-15T09:00:00Z','Nuala','batch plan','Planned batch 26-002-2, Morning Lavender version 2.',NULL,'0.1.0','ebda5cbb18b4429489d5959f18b71fb0b7a2b3b64846f37a812c7851bfa3627d','1232e510b0bd454e8a59bb99dad5507e4631374ca35265fdde53ef0fed74b995');
INSERT INTO "entry" VALUES(31,'2026-03-15T09:30:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-002-2; noted poured.',NULL,'0.1.0','1232e510b0bd454e8a59bb99dad5507e4631374ca35265fdde53ef0fed74b995','c74244234b03836379c7b8e0c936f543750af49b343b57de49d98b6b78942122');
INSERT INTO "entry" VALUES(32,'2026-03-16T09:30:00Z','Nuala','batch cut','Cut batch 26-002-2 into 10 bars.',NULL,'0.1.0','c74244234b03836379c7b8e0c936f543750af49b343b57de49d98b6b78942122','f83f62428c4322b55b3149822ca3dfe3bc97f98eb7e9f87ede101fc1d0e222a1');
INSERT INTO "entry" VALUES(33,'2026-03-17T09:30:00Z','Nuala','reject','Rejected the bars of batch 26-002-2: zap on the tongue.',NULL,'0.1.0','f83f62428c4322b55b3149822ca3dfe3bc97f98eb7e9f87ede101fc1d0e222a1','7a64f591cd8a360b5674c26c1ca898a72c105f0c81510ddd00980111250f8fc0');
INSERT INTO "entry" VALUES(34,'2026-03-18T09:30:00Z','Nuala','lot waste','Threw away 10 of lot 26-002-2: thrown away.',NULL,'0.1.0','7a64f591cd8a360b5674c26c1ca898a72c105f0c81510ddd00980111250f8fc0','b1f81060222fcd918327b7b1c95f6635680e6d89e20d2729463f59c2ef9dbc5f');
INSERT INTO "entry" VALUES(35,'2026-03-19T09:00:00Z','Nuala','receive','Received 1 lot from Own well: L10-8.',NULL,'0.1.0','b1f81060222fcd918327b7b1c95f6635680e6d89e20d2729463f59c2ef9dbc5f','29ef9f91ae6467d2c37389f0b4d8323e6d00c70230e19a356417b46e03a534bb');
INSERT INTO "entry" VALUES(36,'2026-03-20T09:00:00Z','Nuala','complaint add','Booked complaint 1 about batch 26-001-4.',NULL,'0.1.0','29ef9f91ae6467d2c37389f0b4d8323e6d00c70230e19a356417b46e03a534bb','255e1e0ce8b1749f324fc198c071c1fbdde7addf5eaca176d38185d0325fb33e');
INSERT INTO "entry" VALUES(37,'2026-03-21T09:00:00Z','Nuala','customer erase','Erased the personal details of customer c-1: she asked.',NULL,'0.1.0','255e1e0ce8b1749f324fc198c071c1fbdde7addf5eaca176d38185d0325fb33e','711368fae9c5a9fe57d523de3085f4472b93c521e2339d36fbbd6bbb6a94bd68');
INSERT INTO "entry" VALUES(38,'2026-03-22T09:00:00Z','Nuala','lot waste','Threw away 20 g of lot L2-8: spilt.',NULL,'0.1.0','711368fae9c5a9fe57d523de3085f4472b93c521e2339d36fbbd6bbb6a94bd68','c05005c3d842c0abb9ef63575d171bb516c3b13fb206d73ae2f930a3cdbdceed');
INSERT INTO "entry" VALUES(39,'2026-03-22T09:05:00Z','Nuala','undo','Took back entry 38: Threw away 20 g of lot L2-8: spilt.',38,'0.1.0','c05005c3d842c0abb9ef63575d171bb516c3b13fb206d73ae2f930a3cdbdceed','c3b85aff6c21e5827d116f9da5390f8f34b3c688cad9d9391cfd3ca6c87890cb');
INSERT INTO "entry" VALUES(40,'2026-03-23T09:00:00Z','Nuala','batch plan','Planned batch 26-003-0, Morning Lavender version 2.',NULL,'0.1.0','c3b85aff6c21e5827d116f9da5390f8f34b3c688cad9d9391cfd3ca6c87890cb','13c0d0722f18cb9fad0e1f925968d21be9ca7f9dde151bd735af0b3fd54dc181');
INSERT INTO "entry" VALUES(41,'2026-03-23T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-003-0; noted poured.',NULL,'0.1.0','13c0d0722f18cb9fad0e1f925968d21be9ca7f9dde151bd735af0b3fd54dc181','8af7674512fe49710ed53369b6905b57fc4234685c4a773b4c5755ad159f9782');
INSERT INTO "entry" VALUES(42,'2026-03-24T10:00:00Z','Nuala','batch cut','Cut batch 26-003-0 into 10 bars.',NULL,'0.1.0','8af7674512fe49710ed53369b6905b57fc4234685c4a773b4c5755ad159f9782','047c23d23ceb63762e74f12aaf4f349ab653d96746a6f57c124adb7fa6a241e1');
INSERT INTO "entry" VALUES(43,'2026-03-25T09:00:00Z','Nuala','batch plan','Planned batch 26-004-9, Morning Lavender version 2.',NULL,'0.1.0','047c23d23ceb63762e74f12aaf4f349ab653d96746a6f57c124adb7fa6a241e1','65c7cb1394f030e3b01b3477d7ab15d2298a153d7c3a06267a467a868ac8b96f');
CREATE TABLE erasure (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  personal_id INTEGER NOT NULL REFERENCES personal(id), reason TEXT NOT NULL
);
INSERT INTO "erasure" VALUES(1,37,3,'she asked');
CREATE TABLE label_run (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, layout TEXT NOT NULL, market TEXT NOT NULL,
  count INTEGER NOT NULL, text TEXT NOT NULL, text_digest TEXT NOT NULL
);
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
  mass_mg INTEGER,                                  -- for bars: what all of them weighed at the cut
  CHECK ((supplier_id IS NULL) <> (batch_id IS NULL))
);
INSERT INTO "lot" VALUES(1,11,'L1-X',2,'2026-02-03',1,1,'4471/2','44712',NULL,'2027-08-31',3512,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(2,11,'L2-8',3,'2026-02-03',1,1,NULL,NULL,NULL,NULL,1297,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(3,11,'L3-6',4,'2026-02-03',1,1,'N-77','n77',NULL,NULL,865,NULL,NULL,990000,NULL,NULL);
INSERT INTO "lot" VALUES(4,11,'L4-4',6,'2026-02-03',1,1,'LV','lv',NULL,NULL,1513,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(5,11,'L5-2',7,'2026-02-03',1,1,'W','w',NULL,NULL,1513,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(6,12,'L6-0',5,'2026-02-03',2,2,'tank 3','tank3',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(7,13,'L7-9',2,'2026-02-03',3,1,'4502/1','45021',NULL,NULL,1400,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(8,18,'26-001-4',8,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,1290000);
INSERT INTO "lot" VALUES(9,18,'L8-7',1,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(10,32,'26-002-2',8,'2026-03-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,1300000);
INSERT INTO "lot" VALUES(11,32,'L9-5',1,'2026-03-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(12,35,'L10-8',5,'2026-03-19',4,2,'tank 4','tank4',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(13,42,'26-003-0',8,'2026-03-24',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,1300000);
INSERT INTO "lot" VALUES(14,42,'L11-6',1,'2026-03-24',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "material" VALUES(8,10,'morning','soap');
CREATE TABLE material_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), name TEXT NOT NULL, inci TEXT,
  reference_key TEXT, sap_low_mg_per_kg INTEGER, sap_high_mg_per_kg INTEGER, sap_source TEXT,
  alkali_kind TEXT CHECK (alkali_kind IN ('NaOH','KOH')), purity_ppm INTEGER,
  density_mg_per_ml INTEGER, note TEXT
);
INSERT INTO "material_revision" VALUES(1,1,1,'offcuts',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(2,4,2,'olive oil','OLEA EUROPAEA FRUIT OIL','olive',184000,196000,'CXS 33-1981 Appendix; from memory (memory)',NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(3,5,3,'coconut oil','COCOS NUCIFERA OIL','coconut',248000,265000,'CXS 210-1999 Table 2; Codex CXS 210-1999 Tables 1 and 2, read in an oil-by-oil copy (read)',NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(4,6,4,'sodium hydroxide','SODIUM HYDROXIDE',NULL,NULL,NULL,NULL,'NaOH',NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(5,7,5,'water','AQUA',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(6,8,6,'lavender oil','LAVANDULA ANGUSTIFOLIA OIL',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(7,9,7,'paper band',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "material_revision" VALUES(8,10,8,'Morning Lavender',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "movement" VALUES(1,11,1,1,'2026-02-03',5000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(2,11,2,1,'2026-02-03',3000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(3,11,3,1,'2026-02-03',1000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(4,11,4,1,'2026-02-03',100000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(5,11,5,1,'2026-02-03',100,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(6,12,6,1,'2026-02-03',5000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(7,13,7,1,'2026-02-03',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(8,16,1,1,'2026-02-05',-700000,'consumed',1,1,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(9,16,2,1,'2026-02-05',-300000,'consumed',1,2,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(10,16,6,1,'2026-02-05',-287246,'consumed',1,3,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(11,16,3,1,'2026-02-05',-143623,'consumed',1,4,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(12,16,4,1,'2026-02-05',-10000,'consumed',1,5,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(13,18,8,1,'2026-02-06',10,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(14,18,9,1,'2026-02-06',60000,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(15,21,8,1,'2026-03-09',-1,'wasted',NULL,NULL,NULL,NULL,'cracked');
INSERT INTO "movement" VALUES(16,21,5,1,'2026-03-09',-9,'consumed',1,6,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(17,22,8,1,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(18,22,8,2,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(19,24,8,1,'2026-03-10',-4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(20,24,8,4,'2026-03-10',4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(21,25,8,4,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(22,25,8,1,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(23,25,8,4,'2026-03-10',-3,'sold',NULL,NULL,NULL,1500,NULL);
INSERT INTO "movement" VALUES(24,28,8,1,'2026-03-12',-2,'dispatched',NULL,NULL,1,NULL,NULL);
INSERT INTO "movement" VALUES(25,29,8,1,'2026-03-12',-1,'dispatched',NULL,NULL,2,NULL,NULL);
INSERT INTO "movement" VALUES(26,31,3,1,'2026-03-15',-153000,'consumed',2,10,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(27,31,1,1,'2026-03-15',-700000,'consumed',2,7,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(28,31,2,1,'2026-03-15',-300000,'consumed',2,8,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(29,31,6,1,'2026-03-15',-284224,'consumed',2,9,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(30,31,4,1,'2026-03-15',-10000,'consumed',2,11,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(31,32,10,1,'2026-03-16',10,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(32,32,11,1,'2026-03-16',40000,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(33,34,10,1,'2026-03-18',-10,'wasted',NULL,NULL,NULL,NULL,'thrown away');
INSERT INTO "movement" VALUES(34,35,12,1,'2026-03-19',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(35,38,2,1,'2026-03-22',-20000,'wasted',NULL,NULL,NULL,NULL,'spilt');
INSERT INTO "movement" VALUES(36,39,2,1,'2026-03-22',20000,'wasted',NULL,NULL,NULL,NULL,'takes back entry 38');
INSERT INTO "movement" VALUES(37,41,1,1,'2026-03-23',-700000,'consumed',3,13,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(38,41,2,1,'2026-03-23',-300000,'consumed',3,14,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(39,41,6,1,'2026-03-23',-284224,'consumed',3,15,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(40,41,3,1,'2026-03-23',-142112,'consumed',3,16,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(41,41,4,1,'2026-03-23',-10000,'consumed',3,17,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(42,42,13,1,'2026-03-24',10,'yielded',3,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(43,42,14,1,'2026-03-24',50000,'yielded',3,NULL,NULL,NULL,NULL);
CREATE TABLE personal (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salted_digest TEXT NOT NULL
);
INSERT INTO "personal" VALUES(1,2,'88e914240c0da0f1b4f097b1d366dd9f2c05e2f53315a4e9b7a93f952d8def36');
INSERT INTO "personal" VALUES(2,26,'ffce4f27ab70681e2785ad26e11c1b5880a2c6145ed3f514993c6cf8b245cf39');
INSERT INTO "personal" VALUES(3,27,'f69d1c529ae7174f37d0e80eb96d14e3299d58a4b0f19c5a1ee28a48069c04b4');
CREATE TABLE personal_text (
  personal_id INTEGER PRIMARY KEY REFERENCES personal(id),
  salt TEXT NOT NULL, name TEXT, phone TEXT, email TEXT, address TEXT, health TEXT
);
INSERT INTO "personal_text" VALUES(1,'3c2967c335fd8b2767f164514fc0ece9',NULL,'+353 20 910 0131',NULL,NULL,NULL);
INSERT INTO "personal_text" VALUES(2,'076fe475e3ba5ba1ae35c49deb011cb7',NULL,'+353 20 910 0188',NULL,NULL,NULL);
CREATE TABLE place (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('workshop','stall','retained','returns'))
);
INSERT INTO "place" VALUES(1,1,'workshop','workshop','workshop');
INSERT INTO "place" VALUES(2,1,'retained','retained samples','retained');
INSERT INTO "place" VALUES(3,1,'returns','returns shelf','returns');
INSERT INTO "place" VALUES(4,23,'quay-market','Quay market','stall');
CREATE TABLE plan_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), number INTEGER NOT NULL,
  role TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id),
  lot_id INTEGER REFERENCES lot(id),     -- the lot proposed: first to expire, first out
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL, stage TEXT NOT NULL
);
INSERT INTO "plan_line" VALUES(1,15,1,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(2,15,1,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(3,15,1,3,'liquid',5,6,287246,284374,290118,'with the lye');
INSERT INTO "plan_line" VALUES(4,15,1,4,'alkali',4,3,143623,142905,143723,'with the lye');
INSERT INTO "plan_line" VALUES(5,15,1,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(6,15,1,6,'packaging',7,5,10,10,10,'packing');
INSERT INTO "plan_line" VALUES(7,30,2,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(8,30,2,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(9,30,2,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(10,30,2,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(11,30,2,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(12,30,2,6,'packaging',7,5,10,10,10,'packing');
INSERT INTO "plan_line" VALUES(13,40,3,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(14,40,3,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(15,40,3,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(16,40,3,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(17,40,3,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(18,40,3,6,'packaging',7,5,10,10,10,'packing');
INSERT INTO "plan_line" VALUES(19,43,4,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(20,43,4,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(21,43,4,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(22,43,4,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(23,43,4,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(24,43,4,6,'packaging',7,5,10,10,10,'packing');
CREATE TABLE reading (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, at TEXT,   -- at: local clock time 14:05
  what TEXT NOT NULL,                    -- lye temperature, fats temperature, pH, trace, poured, cook start, cook end, bar weight, labour, observation ...
  value INTEGER, unit TEXT CHECK (unit IN ('mg','milli-C','milli-pH','min')), text TEXT,
  plan_line_id INTEGER REFERENCES plan_line(id),    -- the line that was left out
  CHECK ((value IS NULL) = (unit IS NULL))
);
INSERT INTO "reading" VALUES(1,16,1,'2026-02-05',NULL,'lye temperature',49000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(2,16,1,'2026-02-05','10:40','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(3,17,1,'2026-02-05',NULL,'lye temperature',48000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(4,19,1,'2026-02-06',NULL,'observation',NULL,NULL,'cracked along the top',NULL);
INSERT INTO "reading" VALUES(5,31,2,'2026-03-15','09:20','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(6,41,3,'2026-03-23','09:50','poured',NULL,NULL,NULL,NULL);
CREATE TABLE recipe (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id)   -- what it gives: a soap, or an intermediate
);
INSERT INTO "recipe" VALUES(1,10,'morning',8);
CREATE TABLE recipe_version (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), number INTEGER NOT NULL, name TEXT NOT NULL, source TEXT NOT NULL
);
INSERT INTO "recipe_version" VALUES(1,10,1,1,'Morning Lavender','name = "Morning Lavender"
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
INSERT INTO "recipe_version" VALUES(2,20,1,2,'Morning Lavender','name = "Morning Lavender"
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
CREATE TABLE settings_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  business TEXT NOT NULL, country TEXT NOT NULL, currency TEXT NOT NULL,
  units TEXT NOT NULL CHECK (units IN ('metric','us')), time_zone TEXT NOT NULL,
  phone TEXT, labour_minor_per_hour INTEGER
);
INSERT INTO "settings_revision" VALUES(1,1,'Wrenfold Soapworks','IE','EUR','metric','Europe/Dublin',NULL,1400);
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
CREATE INDEX lot_code ON lot (code);
CREATE INDEX movement_stock ON movement (lot_id, place_id, "on", quantity);
CREATE INDEX movement_batch ON movement (batch_id, lot_id);
CREATE INDEX decision_lot ON decision (lot_id, "on", id, verdict);
CREATE VIEW live_attachment AS SELECT t.* FROM attachment t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX attachment_of_entry ON attachment (entry_id);
CREATE VIEW live_batch AS SELECT t.* FROM batch t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX batch_of_entry ON batch (entry_id);
CREATE VIEW live_complaint AS SELECT t.* FROM complaint t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX complaint_of_entry ON complaint (entry_id);
CREATE VIEW live_customer AS SELECT t.* FROM customer t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX customer_of_entry ON customer (entry_id);
CREATE VIEW live_customer_revision AS SELECT t.* FROM customer_revision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX customer_revision_of_entry ON customer_revision (entry_id);
CREATE VIEW live_decision AS SELECT t.* FROM decision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX decision_of_entry ON decision (entry_id);
CREATE VIEW live_delivery AS SELECT t.* FROM delivery t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX delivery_of_entry ON delivery (entry_id);
CREATE VIEW live_erasure AS SELECT t.* FROM erasure t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX erasure_of_entry ON erasure (entry_id);
CREATE VIEW live_label_run AS SELECT t.* FROM label_run t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX label_run_of_entry ON label_run (entry_id);
CREATE VIEW live_lot AS SELECT t.* FROM lot t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX lot_of_entry ON lot (entry_id);
CREATE VIEW live_market_address AS SELECT t.* FROM market_address t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX market_address_of_entry ON market_address (entry_id);
CREATE VIEW live_material AS SELECT t.* FROM material t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX material_of_entry ON material (entry_id);
CREATE VIEW live_material_revision AS SELECT t.* FROM material_revision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX material_revision_of_entry ON material_revision (entry_id);
CREATE VIEW live_movement AS SELECT t.* FROM movement t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX movement_of_entry ON movement (entry_id);
CREATE VIEW live_personal AS SELECT t.* FROM personal t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX personal_of_entry ON personal (entry_id);
CREATE VIEW live_place AS SELECT t.* FROM place t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX place_of_entry ON place (entry_id);
CREATE VIEW live_plan_line AS SELECT t.* FROM plan_line t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX plan_line_of_entry ON plan_line (entry_id);
CREATE VIEW live_reading AS SELECT t.* FROM reading t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX reading_of_entry ON reading (entry_id);
CREATE VIEW live_recipe AS SELECT t.* FROM recipe t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX recipe_of_entry ON recipe (entry_id);
CREATE VIEW live_recipe_version AS SELECT t.* FROM recipe_version t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX recipe_version_of_entry ON recipe_version (entry_id);
CREATE VIEW live_settings_revision AS SELECT t.* FROM settings_revision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX settings_revision_of_entry ON settings_revision (entry_id);
CREATE VIEW live_supplier AS SELECT t.* FROM supplier t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX supplier_of_entry ON supplier (entry_id);
CREATE VIEW live_supplier_revision AS SELECT t.* FROM supplier_revision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX supplier_revision_of_entry ON supplier_revision (entry_id);
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
              ORDER BY id DESC LIMIT 1), 'quarantine') <> 'accepted';
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
CREATE TRIGGER attachment_never_changed BEFORE UPDATE ON attachment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER attachment_never_deleted BEFORE DELETE ON attachment BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER attachment_entry_still_open BEFORE INSERT ON attachment WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER batch_never_changed BEFORE UPDATE ON batch BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER batch_never_deleted BEFORE DELETE ON batch BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER batch_entry_still_open BEFORE INSERT ON batch WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER complaint_never_changed BEFORE UPDATE ON complaint BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER complaint_never_deleted BEFORE DELETE ON complaint BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER complaint_entry_still_open BEFORE INSERT ON complaint WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
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
CREATE TRIGGER erasure_never_changed BEFORE UPDATE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER erasure_never_deleted BEFORE DELETE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER erasure_entry_still_open BEFORE INSERT ON erasure WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
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
CREATE TRIGGER reading_never_changed BEFORE UPDATE ON reading BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER reading_never_deleted BEFORE DELETE ON reading BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER reading_entry_still_open BEFORE INSERT ON reading WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER recipe_never_changed BEFORE UPDATE ON recipe BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER recipe_never_deleted BEFORE DELETE ON recipe BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER recipe_entry_still_open BEFORE INSERT ON recipe WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER recipe_version_never_changed BEFORE UPDATE ON recipe_version BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER recipe_version_never_deleted BEFORE DELETE ON recipe_version BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER recipe_version_entry_still_open BEFORE INSERT ON recipe_version WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER settings_revision_never_changed BEFORE UPDATE ON settings_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER settings_revision_never_deleted BEFORE DELETE ON settings_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER settings_revision_entry_still_open BEFORE INSERT ON settings_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER supplier_never_changed BEFORE UPDATE ON supplier BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER supplier_never_deleted BEFORE DELETE ON supplier BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER supplier_entry_still_open BEFORE INSERT ON supplier WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
CREATE TRIGGER supplier_revision_never_changed BEFORE UPDATE ON supplier_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER supplier_revision_never_deleted BEFORE DELETE ON supplier_revision BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER supplier_revision_entry_still_open BEFORE INSERT ON supplier_revision WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
COMMIT;
