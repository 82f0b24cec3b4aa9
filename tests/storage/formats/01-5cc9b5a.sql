-- Written by the program of commit 5cc9b5a: delivery, hold, paper, recipe revised, cut, pass, release, stall, shop, a person erased, rejected bars wasted, an undo, a batch on the rack, a plan.
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
INSERT INTO "batch" VALUES(2,31,'26-002-2','cold',2,8,'2026-03-15',10);
INSERT INTO "batch" VALUES(3,42,'26-003-0','cold',2,8,'2026-03-23',10);
INSERT INTO "batch" VALUES(4,46,'26-004-9','cold',2,8,'2026-03-25',10);
CREATE TABLE complaint (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, lot_id INTEGER REFERENCES lot(id), bought TEXT, what TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, personal_id INTEGER REFERENCES personal(id)
);
INSERT INTO "complaint" VALUES(1,38,'2026-03-20',8,NULL,'itched',NULL,NULL,NULL);
CREATE TABLE customer (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('shop','person'))
);
INSERT INTO "customer" VALUES(1,27,'harrow','shop');
INSERT INTO "customer" VALUES(2,28,'c-1','person');
CREATE TABLE customer_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), name TEXT,   -- a shop's trade name; a person's name is in personal_text
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "customer_revision" VALUES(1,27,1,'Harrow and Fenn',2,NULL);
INSERT INTO "customer_revision" VALUES(2,28,2,NULL,3,NULL);
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
INSERT INTO "decision" VALUES(8,19,9,NULL,'accepted','2026-02-06','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(9,22,8,NULL,'passed','2026-03-09','Nuala',NULL);
INSERT INTO "decision" VALUES(10,23,8,NULL,'released','2026-03-10','Nuala',NULL);
INSERT INTO "decision" VALUES(11,32,NULL,2,'accepted','2026-03-15','Nuala','a hard bar for the workshop');
INSERT INTO "decision" VALUES(12,34,11,NULL,'accepted','2026-03-16','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(13,35,10,NULL,'rejected','2026-03-17','Nuala','zap on the tongue');
INSERT INTO "decision" VALUES(14,37,12,NULL,'accepted','2026-03-19','Nuala',NULL);
INSERT INTO "decision" VALUES(15,45,14,NULL,'accepted','2026-03-24','Nuala','offcuts kept');
CREATE TABLE delivery (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), note_number TEXT, "on" TEXT NOT NULL,
  carriage_minor INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "delivery" VALUES(1,11,1,'D-19','2026-02-03',650);
INSERT INTO "delivery" VALUES(2,12,2,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(3,13,1,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(4,37,2,NULL,'2026-03-19',0);
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
INSERT INTO "entry" VALUES(2,'2026-02-02T09:05:00Z','Nuala','supplier add','Added supplier Ottersby Oils (ottersby-oils).',NULL,'0.1.0','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382','4475e65e5a98c420b9591b9d3633f6c8291bd566d7490195d987e29d5270cb06');
INSERT INTO "entry" VALUES(3,'2026-02-02T09:06:00Z','Nuala','supplier add','Added supplier Own well (own-well).',NULL,'0.1.0','4475e65e5a98c420b9591b9d3633f6c8291bd566d7490195d987e29d5270cb06','c6c4416f3b77cba20a2040a024478363b24b10d08b7434ac83bbb56d20f6af57');
INSERT INTO "entry" VALUES(4,'2026-02-02T09:10:00Z','Nuala','material add','Added material olive oil (olive-oil).',NULL,'0.1.0','c6c4416f3b77cba20a2040a024478363b24b10d08b7434ac83bbb56d20f6af57','5d381787ca1059e7881feb492ac6bb8ab4a74bdde3e096f21d4ae373caf18fb8');
INSERT INTO "entry" VALUES(5,'2026-02-02T09:10:00Z','Nuala','material add','Added material coconut oil (coconut-oil).',NULL,'0.1.0','5d381787ca1059e7881feb492ac6bb8ab4a74bdde3e096f21d4ae373caf18fb8','e93dd7d1957d78bde5fcda69fb232ca7fcb6dec4ee9c1ec0c1ebc29ab747dca2');
INSERT INTO "entry" VALUES(6,'2026-02-02T09:10:00Z','Nuala','material add','Added material sodium hydroxide (sodium-hydroxide).',NULL,'0.1.0','e93dd7d1957d78bde5fcda69fb232ca7fcb6dec4ee9c1ec0c1ebc29ab747dca2','f861270cb22f2b9a03734a6e424848587a3b9a90b478bc550005fe1f283d1294');
INSERT INTO "entry" VALUES(7,'2026-02-02T09:10:00Z','Nuala','material add','Added material water (water).',NULL,'0.1.0','f861270cb22f2b9a03734a6e424848587a3b9a90b478bc550005fe1f283d1294','b48726a2a700939717d56d81cddc2ba4846953c6b70c3b4a7af4fc0d3ff5b46b');
INSERT INTO "entry" VALUES(8,'2026-02-02T09:10:00Z','Nuala','material add','Added material lavender oil (lavender-oil).',NULL,'0.1.0','b48726a2a700939717d56d81cddc2ba4846953c6b70c3b4a7af4fc0d3ff5b46b','91157b7fb8ce50395181f0d4d67d59dc28e4174ca92fe5a87cd3d2a10450eeaa');
INSERT INTO "entry" VALUES(9,'2026-02-02T09:10:00Z','Nuala','material add','Added material paper band (paper-band).',NULL,'0.1.0','91157b7fb8ce50395181f0d4d67d59dc28e4174ca92fe5a87cd3d2a10450eeaa','b045131c159fde88cf5d7c4d41c3b47090f7b9a9ab58bfaf5e1f2a5eb768486d');
INSERT INTO "entry" VALUES(10,'2026-02-02T09:30:00Z','Nuala','recipe add','Added recipe Morning Lavender (morning).',NULL,'0.1.0','b045131c159fde88cf5d7c4d41c3b47090f7b9a9ab58bfaf5e1f2a5eb768486d','9e5b7aceed5ba6cab8c4366916ca6dd0c38f6d9e5d3673b5eb88a1f428454053');
INSERT INTO "entry" VALUES(11,'2026-02-03T10:00:00Z','Nuala','receive','Received 5 lots from Ottersby Oils: L1-X, L2-8, L3-6, L4-4, L5-2.',NULL,'0.1.0','9e5b7aceed5ba6cab8c4366916ca6dd0c38f6d9e5d3673b5eb88a1f428454053','b618021116ffc78715b02152883b9030242228429e8fb65e25b54fbecbe0622f');
INSERT INTO "entry" VALUES(12,'2026-02-03T10:05:00Z','Nuala','receive','Received 1 lot from Own well: L6-0.',NULL,'0.1.0','b618021116ffc78715b02152883b9030242228429e8fb65e25b54fbecbe0622f','9563a74cfbb1f7abe20a42d122581e9131c9311f047f5b59e84e50569d6de3c1');
INSERT INTO "entry" VALUES(13,'2026-02-03T10:07:00Z','Nuala','receive','Received 1 lot from Ottersby Oils: L7-9.',NULL,'0.1.0','9563a74cfbb1f7abe20a42d122581e9131c9311f047f5b59e84e50569d6de3c1','fe52540dc99ed219516b4443c8f56726165d7a1bcd4cddf1b5751611fca32053');
INSERT INTO "entry" VALUES(14,'2026-02-03T10:10:00Z','Nuala','attach','Attached certificate.txt (paper) to L1-X.',NULL,'0.1.0','fe52540dc99ed219516b4443c8f56726165d7a1bcd4cddf1b5751611fca32053','12da2fe6f2c625009ca64c58bb0c11338e32849d85bc7844d2ef2e62ec79455d');
INSERT INTO "entry" VALUES(15,'2026-02-05T09:00:00Z','Nuala','batch plan','Planned batch 26-001-4, Morning Lavender version 1.',NULL,'0.1.0','12da2fe6f2c625009ca64c58bb0c11338e32849d85bc7844d2ef2e62ec79455d','ec11a7033aca25dec77a0099949f12be181c6bf81e1a21e67155519a703161d3');
INSERT INTO "entry" VALUES(16,'2026-02-05T11:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-001-4.',NULL,'0.1.0','ec11a7033aca25dec77a0099949f12be181c6bf81e1a21e67155519a703161d3','8f8efe7d47c01757d53e530986a2f1a3f55d7db9353d5d1b61415281fb04a1a4');
INSERT INTO "entry" VALUES(17,'2026-02-05T11:00:00Z','Nuala','batch reading','Noted lye temperature, poured of batch 26-001-4.',NULL,'0.1.0','8f8efe7d47c01757d53e530986a2f1a3f55d7db9353d5d1b61415281fb04a1a4','6a8d9e8dab072365a8248fd9205687d852b26fe84e41fc6ef173f0354dd46f0b');
INSERT INTO "entry" VALUES(18,'2026-02-05T11:05:00Z','Nuala','batch reading','Noted lye temperature of batch 26-001-4.',NULL,'0.1.0','6a8d9e8dab072365a8248fd9205687d852b26fe84e41fc6ef173f0354dd46f0b','798114780549d9433bc8c13fb55bc34dfef71c4fc59d0011c23434e74505aed4');
INSERT INTO "entry" VALUES(19,'2026-02-06T09:00:00Z','Nuala','batch cut','Cut batch 26-001-4 into 10 bars.',NULL,'0.1.0','798114780549d9433bc8c13fb55bc34dfef71c4fc59d0011c23434e74505aed4','40b55b323a62316884fa102cd6c06370570b4d2e38cc4dfd9ee2d2db4b025ca5');
INSERT INTO "entry" VALUES(20,'2026-02-06T09:10:00Z','Nuala','batch reading','Noted observation of batch 26-001-4.',NULL,'0.1.0','40b55b323a62316884fa102cd6c06370570b4d2e38cc4dfd9ee2d2db4b025ca5','c4d19fbfa48c6b0c231672f2291ec700de661d78a41724c4e70ea7648c09ca85');
INSERT INTO "entry" VALUES(21,'2026-02-14T09:00:00Z','Nuala','recipe edit','Version 2 of recipe Morning Lavender (morning).',NULL,'0.1.0','c4d19fbfa48c6b0c231672f2291ec700de661d78a41724c4e70ea7648c09ca85','d7ed00eaf1ea5773ccce42bb02850107f6bbdfde19ff8b5bb261d7561b707e9c');
INSERT INTO "entry" VALUES(22,'2026-03-09T09:00:00Z','Nuala','pass','Passed 9 bars of batch 26-001-4 for packing.',NULL,'0.1.0','d7ed00eaf1ea5773ccce42bb02850107f6bbdfde19ff8b5bb261d7561b707e9c','d9ee2dacea9a4cd961f1ecf5e95de76a518edb483aaed2bcd39de2108f77d2fe');
INSERT INTO "entry" VALUES(23,'2026-03-10T09:00:00Z','Nuala','release','Released batch 26-001-4, 8 bars.',NULL,'0.1.0','d9ee2dacea9a4cd961f1ecf5e95de76a518edb483aaed2bcd39de2108f77d2fe','fb727705995845f643e992cd0d1293e4a8e07b65101f8485b23467978f4bd217');
INSERT INTO "entry" VALUES(24,'2026-03-10T09:30:00Z','Nuala','stall add','Added stall Quay market.',NULL,'0.1.0','fb727705995845f643e992cd0d1293e4a8e07b65101f8485b23467978f4bd217','caca59e913d76dae63da42009e0015c97c9415fccc0eef52ea28dc9a6e3ed2c9');
INSERT INTO "entry" VALUES(25,'2026-03-10T09:31:00Z','Nuala','stall out','Took 4 bars to Quay market.',NULL,'0.1.0','caca59e913d76dae63da42009e0015c97c9415fccc0eef52ea28dc9a6e3ed2c9','96b3b90f77fbe7fd4e29f74d81f718fc4a07129c8cdda895187957d867538acd');
INSERT INTO "entry" VALUES(26,'2026-03-10T18:00:00Z','Nuala','stall back','Back from Quay market: 3 bars sold, 1 came home.',NULL,'0.1.0','96b3b90f77fbe7fd4e29f74d81f718fc4a07129c8cdda895187957d867538acd','c2c60d8d2a6de4d4ca085e6922841337f3a48d0d6f73fc87de3979ac89b1c795');
INSERT INTO "entry" VALUES(27,'2026-03-11T09:00:00Z','Nuala','customer add','Added customer harrow.',NULL,'0.1.0','c2c60d8d2a6de4d4ca085e6922841337f3a48d0d6f73fc87de3979ac89b1c795','7137a3658d116b615d1a34ef791e74ded8a52856efcf98118d1f27ccdac9e8fc');
INSERT INTO "entry" VALUES(28,'2026-03-11T09:01:00Z','Nuala','customer add','Added customer c-1.',NULL,'0.1.0','7137a3658d116b615d1a34ef791e74ded8a52856efcf98118d1f27ccdac9e8fc','568cbcfb15926bc86e6c74260b22cc91346ad72511b4ff6bc162b427c2ddbd27');
INSERT INTO "entry" VALUES(29,'2026-03-12T09:00:00Z','Nuala','dispatch','Dispatched 2 bars to harrow.',NULL,'0.1.0','568cbcfb15926bc86e6c74260b22cc91346ad72511b4ff6bc162b427c2ddbd27','27d81f6b6f4c86c7e44e921b32cc3297307db4a912297a4adbaff2ca1eab3188');
INSERT INTO "entry" VALUES(30,'2026-03-12T09:01:00Z','Nuala','dispatch','Dispatched 1 bars to c-1.',NULL,'0.1.0','27d81f6b6f4c86c7e44e921b32cc3297307db4a912297a4adbaff2ca1eab3188','c42dddba7b37e928dd8c6aa0b2229c9afb5fb29a232af2b0697402b8c28ed8bf');
INSERT INTO "entry" VALUES(31,'2026-03-15T09:00:00Z','Nuala','batch plan','Planned batch 26-002-2, Morning Lavender version 2.',NULL,'0.1.0','c42dddba7b37e928dd8c6aa0b2229c9afb5fb29a232af2b0697402b8c28ed8bf','cfc56d787c0acc57573fb1c4021f8ac9d70b35f55d356210c8a1be4b40aaf10d');
INSERT INTO "entry" VALUES(32,'2026-03-15T09:30:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-002-2.',NULL,'0.1.0','cfc56d787c0acc57573fb1c4021f8ac9d70b35f55d356210c8a1be4b40aaf10d','77123ea39e735993a6543e6d00f96c7a5907eecd736ed4bae9b1481c2004f6d9');
INSERT INTO "entry" VALUES(33,'2026-03-15T09:30:00Z','Nuala','batch reading','Noted poured of batch 26-002-2.',NULL,'0.1.0','77123ea39e735993a6543e6d00f96c7a5907eecd736ed4bae9b1481c2004f6d9','eab05f45c3301409c46a04097ebf8ecc827cc5a6a61ee7fcb7c06ffc62a1deeb');
INSERT INTO "entry" VALUES(34,'2026-03-16T09:30:00Z','Nuala','batch cut','Cut batch 26-002-2 into 10 bars.',NULL,'0.1.0','eab05f45c3301409c46a04097ebf8ecc827cc5a6a61ee7fcb7c06ffc62a1deeb','bb900f0c6f3dce27838c1376dc715c9df7a707aa921e39f8cfa225ad18887ec5');
INSERT INTO "entry" VALUES(35,'2026-03-17T09:30:00Z','Nuala','reject','Rejected the bars of batch 26-002-2: zap on the tongue.',NULL,'0.1.0','bb900f0c6f3dce27838c1376dc715c9df7a707aa921e39f8cfa225ad18887ec5','aeef77175f5085fc5e10e93be230a1f373710bd55a06ca27f5a17ebc8adadc8e');
INSERT INTO "entry" VALUES(36,'2026-03-18T09:30:00Z','Nuala','lot waste','Threw away some of lot 26-002-2: thrown away.',NULL,'0.1.0','aeef77175f5085fc5e10e93be230a1f373710bd55a06ca27f5a17ebc8adadc8e','197296f99b3b4e4e20e9a07323683e0e0e783e18296a1e926bc205625ddbc97b');
INSERT INTO "entry" VALUES(37,'2026-03-19T09:00:00Z','Nuala','receive','Received 1 lot from Own well: L10-8.',NULL,'0.1.0','197296f99b3b4e4e20e9a07323683e0e0e783e18296a1e926bc205625ddbc97b','ca47e147806118e07e82945e19ece073d91813917a5baf1838b34e69eda55a9c');
INSERT INTO "entry" VALUES(38,'2026-03-20T09:00:00Z','Nuala','complaint add','Booked complaint 1 about batch 26-001-4.',NULL,'0.1.0','ca47e147806118e07e82945e19ece073d91813917a5baf1838b34e69eda55a9c','a91bc32b2a179ccb771db958493d17ff888cc4f583bacc9be79c40d49b67380e');
INSERT INTO "entry" VALUES(39,'2026-03-21T09:00:00Z','Nuala','customer erase','Erased the personal details of customer c-1: she asked.',NULL,'0.1.0','a91bc32b2a179ccb771db958493d17ff888cc4f583bacc9be79c40d49b67380e','fb8f946d3506c06022a3637e9bf48e7791ddd9bc9504edaaf79e56045aecdd28');
INSERT INTO "entry" VALUES(40,'2026-03-22T09:00:00Z','Nuala','lot waste','Threw away some of lot L2-8: spilt.',NULL,'0.1.0','fb8f946d3506c06022a3637e9bf48e7791ddd9bc9504edaaf79e56045aecdd28','26bcf8db10f126f8c7667e27d715fbc3dbe51b438926d3c6d769ab9ed39d4c2a');
INSERT INTO "entry" VALUES(41,'2026-03-22T09:05:00Z','Nuala','undo','Took back entry 40: Threw away some of lot L2-8: spilt.',40,'0.1.0','26bcf8db10f126f8c7667e27d715fbc3dbe51b438926d3c6d769ab9ed39d4c2a','a5048a6b871d7226f574a57af005fa882ab767669630f45064dd254171c4f343');
INSERT INTO "entry" VALUES(42,'2026-03-23T09:00:00Z','Nuala','batch plan','Planned batch 26-003-0, Morning Lavender version 2.',NULL,'0.1.0','a5048a6b871d7226f574a57af005fa882ab767669630f45064dd254171c4f343','8b5a7c2d7d3ae7dd7d3baac2ef56d3608441d8107288c65430044dbfdcc8face');
INSERT INTO "entry" VALUES(43,'2026-03-23T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-003-0.',NULL,'0.1.0','8b5a7c2d7d3ae7dd7d3baac2ef56d3608441d8107288c65430044dbfdcc8face','494eb0c8aa427e41c9990ed4ff25fa599857f46ce6c20f470b44850394358cff');
INSERT INTO "entry" VALUES(44,'2026-03-23T10:00:00Z','Nuala','batch reading','Noted poured of batch 26-003-0.',NULL,'0.1.0','494eb0c8aa427e41c9990ed4ff25fa599857f46ce6c20f470b44850394358cff','0ba26147c987b3901c09cc9585951c7349b866ae624bfebacbb129764b4219e6');
INSERT INTO "entry" VALUES(45,'2026-03-24T10:00:00Z','Nuala','batch cut','Cut batch 26-003-0 into 10 bars.',NULL,'0.1.0','0ba26147c987b3901c09cc9585951c7349b866ae624bfebacbb129764b4219e6','f7f02fea2a6dae7184c9cdaaa7c16ec218aa83a5503543da249b32caee74a1d5');
INSERT INTO "entry" VALUES(46,'2026-03-25T09:00:00Z','Nuala','batch plan','Planned batch 26-004-9, Morning Lavender version 2.',NULL,'0.1.0','f7f02fea2a6dae7184c9cdaaa7c16ec218aa83a5503543da249b32caee74a1d5','3a376f889d831a13b5705d575f4074af1783fddb4bfd86530aa63e569f1e0aa4');
CREATE TABLE erasure (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  personal_id INTEGER NOT NULL REFERENCES personal(id), reason TEXT NOT NULL
);
INSERT INTO "erasure" VALUES(1,39,3,'she asked');
CREATE TABLE label_run (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, layout TEXT NOT NULL, market TEXT NOT NULL,
  count INTEGER NOT NULL, text TEXT NOT NULL, text_digest TEXT NOT NULL
);
CREATE TABLE lot (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE,             -- L41-7; the bars of a batch carry the batch's own code
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
INSERT INTO "lot" VALUES(8,19,'26-001-4',8,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,1290000);
INSERT INTO "lot" VALUES(9,19,'L8-7',1,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(10,34,'26-002-2',8,'2026-03-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,1300000);
INSERT INTO "lot" VALUES(11,34,'L9-5',1,'2026-03-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(12,37,'L10-8',5,'2026-03-19',4,2,'tank 4','tank4',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(13,45,'26-003-0',8,'2026-03-24',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,1300000);
INSERT INTO "lot" VALUES(14,45,'L11-6',1,'2026-03-24',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "movement" VALUES(13,19,8,1,'2026-02-06',10,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(14,19,9,1,'2026-02-06',60000,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(15,22,8,1,'2026-03-09',-1,'wasted',NULL,NULL,NULL,NULL,'cracked');
INSERT INTO "movement" VALUES(16,22,5,1,'2026-03-09',-9,'consumed',1,6,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(17,23,8,1,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(18,23,8,2,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(19,25,8,1,'2026-03-10',-4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(20,25,8,4,'2026-03-10',4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(21,26,8,4,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(22,26,8,1,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(23,26,8,4,'2026-03-10',-3,'sold',NULL,NULL,NULL,1500,NULL);
INSERT INTO "movement" VALUES(24,29,8,1,'2026-03-12',-2,'dispatched',NULL,NULL,1,NULL,NULL);
INSERT INTO "movement" VALUES(25,30,8,1,'2026-03-12',-1,'dispatched',NULL,NULL,2,NULL,NULL);
INSERT INTO "movement" VALUES(26,32,3,1,'2026-03-15',-153000,'consumed',2,10,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(27,32,1,1,'2026-03-15',-700000,'consumed',2,7,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(28,32,2,1,'2026-03-15',-300000,'consumed',2,8,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(29,32,6,1,'2026-03-15',-284224,'consumed',2,9,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(30,32,4,1,'2026-03-15',-10000,'consumed',2,11,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(31,34,10,1,'2026-03-16',10,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(32,34,11,1,'2026-03-16',40000,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(33,36,10,1,'2026-03-18',-10,'wasted',NULL,NULL,NULL,NULL,'thrown away');
INSERT INTO "movement" VALUES(34,37,12,1,'2026-03-19',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(35,40,2,1,'2026-03-22',-20000,'wasted',NULL,NULL,NULL,NULL,'spilt');
INSERT INTO "movement" VALUES(36,41,2,1,'2026-03-22',20000,'wasted',NULL,NULL,NULL,NULL,'takes back entry 40');
INSERT INTO "movement" VALUES(37,43,1,1,'2026-03-23',-700000,'consumed',3,13,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(38,43,2,1,'2026-03-23',-300000,'consumed',3,14,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(39,43,6,1,'2026-03-23',-284224,'consumed',3,15,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(40,43,3,1,'2026-03-23',-142112,'consumed',3,16,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(41,43,4,1,'2026-03-23',-10000,'consumed',3,17,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(42,45,13,1,'2026-03-24',10,'yielded',3,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(43,45,14,1,'2026-03-24',50000,'yielded',3,NULL,NULL,NULL,NULL);
CREATE TABLE personal (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salted_digest TEXT NOT NULL
);
INSERT INTO "personal" VALUES(1,2,'9e934204719d70d9364f535581f5afaec13fcfb295c497c07906e4229ca6dea9');
INSERT INTO "personal" VALUES(2,27,'4170ba36495e62be1d1be0277c6305facc3f8a7348842de6d723dae3d0dddd37');
INSERT INTO "personal" VALUES(3,28,'b25d7f7f3c4fed3072f03ea2c3f72f4cd0ca0057d5dcc3c55ce1e4880bf0829e');
CREATE TABLE personal_text (
  personal_id INTEGER PRIMARY KEY REFERENCES personal(id),
  salt TEXT NOT NULL, name TEXT, phone TEXT, email TEXT, address TEXT, health TEXT
);
INSERT INTO "personal_text" VALUES(1,'cbdb8992e145cf152f2cab7414d2c1cc',NULL,'+353 20 910 0131',NULL,NULL,NULL);
INSERT INTO "personal_text" VALUES(2,'8fd4ce88b71c63305f81492d30fac6c6',NULL,'+353 20 910 0188',NULL,NULL,NULL);
CREATE TABLE place (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('workshop','stall','retained','returns'))
);
INSERT INTO "place" VALUES(1,1,'workshop','workshop','workshop');
INSERT INTO "place" VALUES(2,1,'retained','retained samples','retained');
INSERT INTO "place" VALUES(3,1,'returns','returns shelf','returns');
INSERT INTO "place" VALUES(4,24,'quay-market','Quay market','stall');
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
INSERT INTO "plan_line" VALUES(7,31,2,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(8,31,2,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(9,31,2,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(10,31,2,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(11,31,2,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(12,31,2,6,'packaging',7,5,10,10,10,'packing');
INSERT INTO "plan_line" VALUES(13,42,3,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(14,42,3,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(15,42,3,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(16,42,3,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(17,42,3,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(18,42,3,6,'packaging',7,5,10,10,10,'packing');
INSERT INTO "plan_line" VALUES(19,46,4,1,'fat',2,1,700000,693000,707000,'in the fats');
INSERT INTO "plan_line" VALUES(20,46,4,2,'fat',3,2,300000,297000,303000,'in the fats');
INSERT INTO "plan_line" VALUES(21,46,4,3,'liquid',5,6,284224,281382,287066,'with the lye');
INSERT INTO "plan_line" VALUES(22,46,4,4,'alkali',4,3,142112,141402,142212,'with the lye');
INSERT INTO "plan_line" VALUES(23,46,4,5,'fragrance',6,4,10000,9500,10500,'at trace');
INSERT INTO "plan_line" VALUES(24,46,4,6,'packaging',7,5,10,10,10,'packing');
CREATE TABLE reading (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, at TEXT,   -- at: local clock time 14:05
  what TEXT NOT NULL,                    -- lye temperature, fats temperature, pH, trace, poured, cook start, cook end, bar weight, labour, observation ...
  value INTEGER, unit TEXT CHECK (unit IN ('mg','milli-C','milli-pH','min')), text TEXT,
  CHECK ((value IS NULL) = (unit IS NULL))
);
INSERT INTO "reading" VALUES(1,17,1,'2026-02-05',NULL,'lye temperature',49000,'milli-C',NULL);
INSERT INTO "reading" VALUES(2,17,1,'2026-02-05','10:40','poured',NULL,NULL,NULL);
INSERT INTO "reading" VALUES(3,18,1,'2026-02-05',NULL,'lye temperature',48000,'milli-C',NULL);
INSERT INTO "reading" VALUES(4,20,1,'2026-02-06',NULL,'observation',NULL,NULL,'cracked along the top');
INSERT INTO "reading" VALUES(5,33,2,'2026-03-15','09:20','poured',NULL,NULL,NULL);
INSERT INTO "reading" VALUES(6,44,3,'2026-03-23','09:50','poured',NULL,NULL,NULL);
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
INSERT INTO "recipe_version" VALUES(2,21,1,2,'Morning Lavender','name = "Morning Lavender"
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
