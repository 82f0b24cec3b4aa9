-- Written by the program of commit 438a983: delivery, hold, paper, recipe revised, two portions, cut, pass, label run, release, stall, shop, a person erased, rejected bars wasted, an undo, a batch on the rack, a plan.
PRAGMA application_id = 1353391830;
PRAGMA user_version = 3;
BEGIN TRANSACTION;
CREATE TABLE assessment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), source TEXT NOT NULL
);
INSERT INTO "assessment" VALUES(1,33,1,'assessor = "R. Lund"
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
  process TEXT NOT NULL CHECK (process IN ('cold','hot','infusion','blend','rebatch','portion','combine')),
  recipe_version_id INTEGER REFERENCES recipe_version(id),      -- none for a combined drum
  material_id INTEGER NOT NULL REFERENCES material(id),         -- what it gives
  "on" TEXT NOT NULL,                                           -- the day it is planned for, then made on
  bars_planned INTEGER,
  part_of INTEGER REFERENCES batch(id),                         -- the batch a portion was divided from
  portion TEXT
);
INSERT INTO "batch" VALUES(1,18,'26-001-4','cold',1,8,'2026-02-05',10,NULL,NULL);
INSERT INTO "batch" VALUES(2,24,'26-002-2','cold',2,10,'2026-02-16',10,NULL,NULL);
INSERT INTO "batch" VALUES(3,24,'26-003-0','portion',2,11,'2026-02-16',6,2,'light');
INSERT INTO "batch" VALUES(4,24,'26-004-9','portion',2,12,'2026-02-16',4,2,'dark');
INSERT INTO "batch" VALUES(5,42,'26-005-7','cold',3,8,'2026-03-15',10,NULL,NULL);
INSERT INTO "batch" VALUES(6,52,'26-006-5','cold',3,8,'2026-03-23',10,NULL,NULL);
INSERT INTO "batch" VALUES(7,55,'26-007-3','cold',3,8,'2026-03-25',10,NULL,NULL);
CREATE TABLE complaint (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, lot_id INTEGER REFERENCES lot(id), bought TEXT, what TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, personal_id INTEGER REFERENCES personal(id)
);
INSERT INTO "complaint" VALUES(1,48,'2026-03-20',8,NULL,'itched',NULL,NULL,NULL);
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
INSERT INTO "customer" VALUES(1,38,'harrow','shop');
INSERT INTO "customer" VALUES(2,39,'c-1','person');
CREATE TABLE customer_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), name TEXT,   -- a shop's trade name; a person's name is in personal_text
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "customer_revision" VALUES(1,38,1,'Harrow and Fenn',2,NULL);
INSERT INTO "customer_revision" VALUES(2,39,2,NULL,3,NULL);
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
INSERT INTO "decision" VALUES(8,21,9,NULL,'accepted','2026-02-06','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(9,26,10,NULL,'accepted','2026-02-16','Nuala','divided at trace');
INSERT INTO "decision" VALUES(10,29,8,NULL,'passed','2026-03-09','Nuala',NULL);
INSERT INTO "decision" VALUES(11,34,8,NULL,'released','2026-03-10','Nuala','not covered by what was assessed (LAVANDULA ANGUSTIFOLIA OIL is 0.69 % fragrance, assessed at most 0.5 %); released all the same: the assessor wrote that half a percent more is no matter');
INSERT INTO "decision" VALUES(12,43,NULL,5,'accepted','2026-03-15','Nuala','a hard bar for the workshop');
INSERT INTO "decision" VALUES(13,44,13,NULL,'accepted','2026-03-16','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(14,45,12,NULL,'rejected','2026-03-17','Nuala','zap on the tongue');
INSERT INTO "decision" VALUES(15,47,14,NULL,'accepted','2026-03-19','Nuala',NULL);
INSERT INTO "decision" VALUES(16,54,16,NULL,'accepted','2026-03-24','Nuala','offcuts kept');
CREATE TABLE delivery (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), note_number TEXT, "on" TEXT NOT NULL,
  carriage_minor INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "delivery" VALUES(1,13,1,'D-19','2026-02-03',650);
INSERT INTO "delivery" VALUES(2,14,2,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(3,15,1,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(4,47,2,NULL,'2026-03-19',0);
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
INSERT INTO "entry" VALUES(2,'2026-02-02T09:05:00Z','Nuala','supplier add','Added supplier Ottersby Oils (ottersby-oils).',NULL,'0.1.0','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382','f0be54b6f4215bf2bb22b50b6c377137cd958eb3bccfaceb159dded1408e8074');
INSERT INTO "entry" VALUES(3,'2026-02-02T09:06:00Z','Nuala','supplier add','Added supplier Own well (own-well).',NULL,'0.1.0','f0be54b6f4215bf2bb22b50b6c377137cd958eb3bccfaceb159dded1408e8074','204b2dcbda674418dee8be5364d358c50abf96ddc86a94ef573082f3f37e2f69');
INSERT INTO "entry" VALUES(4,'2026-02-02T09:10:00Z','Nuala','material add','Added material olive oil (olive-oil).',NULL,'0.1.0','204b2dcbda674418dee8be5364d358c50abf96ddc86a94ef573082f3f37e2f69','18e813ef4a3d3d93d62092453f3bc51025191c60d58e94819ad867f836be8991');
INSERT INTO "entry" VALUES(5,'2026-02-02T09:10:00Z','Nuala','material add','Added material coconut oil (coconut-oil).',NULL,'0.1.0','18e813ef4a3d3d93d62092453f3bc51025191c60d58e94819ad867f836be8991','69e312bef108aab63aff96b89a6e86d4e3098d0e2e5137f3e18485760df599e1');
INSERT INTO "entry" VALUES(6,'2026-02-02T09:10:00Z','Nuala','material add','Added material sodium hydroxide (sodium-hydroxide).',NULL,'0.1.0','69e312bef108aab63aff96b89a6e86d4e3098d0e2e5137f3e18485760df599e1','6b3822a5fac9a8df10f5f1ca4c6523c401bd9c8fd7f47141dfef79528d94184c');
INSERT INTO "entry" VALUES(7,'2026-02-02T09:10:00Z','Nuala','material add','Added material water (water).',NULL,'0.1.0','6b3822a5fac9a8df10f5f1ca4c6523c401bd9c8fd7f47141dfef79528d94184c','afa6b6e8da106ca9869c23cb90ea452cd5cbf5fba10a117a76239861cf38d0a0');
INSERT INTO "entry" VALUES(8,'2026-02-02T09:10:00Z','Nuala','material add','Added material lavender oil (lavender-oil).',NULL,'0.1.0','afa6b6e8da106ca9869c23cb90ea452cd5cbf5fba10a117a76239861cf38d0a0','9bbb0b6d9b9615e1bfdbc8cfd5fb59c532833fe7f443918094e4bc604724469a');
INSERT INTO "entry" VALUES(9,'2026-02-02T09:10:00Z','Nuala','material add','Added material paper band (paper-band).',NULL,'0.1.0','9bbb0b6d9b9615e1bfdbc8cfd5fb59c532833fe7f443918094e4bc604724469a','8678c4ebea5e52c04592381a21928ea6623f823f62c7701da89f943e11927bec');
INSERT INTO "entry" VALUES(10,'2026-02-02T09:20:00Z','Nuala','material limit','lavender oil: at most 5.000 % by certificate LV-3.',NULL,'0.1.0','8678c4ebea5e52c04592381a21928ea6623f823f62c7701da89f943e11927bec','1f41164f76fec5c517a0a0a4f90cae502c1988dcc3470b94246f2fb12702b78d');
INSERT INTO "entry" VALUES(11,'2026-02-02T09:30:00Z','Nuala','recipe add','Added recipe Morning Lavender (morning).',NULL,'0.1.0','1f41164f76fec5c517a0a0a4f90cae502c1988dcc3470b94246f2fb12702b78d','6387d6099f166fc60b6f813e1805bd8e4926a4f590be1b95dbbbfb17ecfb5dc1');
INSERT INTO "entry" VALUES(12,'2026-02-02T09:31:00Z','Nuala','recipe add','Added recipe Two Tone (two-tone).',NULL,'0.1.0','6387d6099f166fc60b6f813e1805bd8e4926a4f590be1b95dbbbfb17ecfb5dc1','576f4e9bc6eeb1e9acaddcabc000d4ecddab259be38ec19eba07bd0640363654');
INSERT INTO "entry" VALUES(13,'2026-02-03T10:00:00Z','Nuala','receive','Received 5 lots from Ottersby Oils: L1-X, L2-8, L3-6, L4-4, L5-2.',NULL,'0.1.0','576f4e9bc6eeb1e9acaddcabc000d4ecddab259be38ec19eba07bd0640363654','38381f21c3050ec90714ad72db3b4fa64d2070d9e25d7b13fa596956a90c0bd8');
INSERT INTO "entry" VALUES(14,'2026-02-03T10:05:00Z','Nuala','receive','Received 1 lot from Own well: L6-0.',NULL,'0.1.0','38381f21c3050ec90714ad72db3b4fa64d2070d9e25d7b13fa596956a90c0bd8','461a62a4db3bfd37334d627fc235723f354e3c7b923cdfb56c12385300bc5a53');
INSERT INTO "entry" VALUES(15,'2026-02-03T10:07:00Z','Nuala','receive','Received 1 lot from Ottersby Oils: L7-9.',NULL,'0.1.0','461a62a4db3bfd37334d627fc235723f354e3c7b923cdfb56c12385300bc5a53','706e9f53b14283c87b793b36392f3ac4f40218e800f0f0f3162eefb0828f9444');
INSERT INTO "entry" VALUES(16,'2026-02-03T10:10:00Z','Nuala','attach','Attached certificate.txt (paper) to lot L1-X.',NULL,'0.1.0','706e9f53b14283c87b793b36392f3ac4f40218e800f0f0f3162eefb0828f9444','bf9fb88a37a8bc57e2096461e784d39ba9808f1b243dc1b9c93ad48a4c84ccbd');
INSERT INTO "entry" VALUES(17,'2026-02-03T10:15:00Z','Nuala','material contains','Stated what lot L4-4 of lavender oil contains: linalool, limonene.',NULL,'0.1.0','bf9fb88a37a8bc57e2096461e784d39ba9808f1b243dc1b9c93ad48a4c84ccbd','a0e92ff0dd902b012e993904f82d69323f8e5191ac35c2acf715c0c931e60d98');
INSERT INTO "entry" VALUES(18,'2026-02-05T09:00:00Z','Nuala','batch plan','Planned batch 26-001-4, Morning Lavender version 1.',NULL,'0.1.0','a0e92ff0dd902b012e993904f82d69323f8e5191ac35c2acf715c0c931e60d98','92f6f11ea48fc491b87af5900f058f8f63cef5238232fb3df86bd6717de83716');
INSERT INTO "entry" VALUES(19,'2026-02-05T11:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-001-4; noted lye temperature, poured.',NULL,'0.1.0','92f6f11ea48fc491b87af5900f058f8f63cef5238232fb3df86bd6717de83716','45fede3a34c6ee3e7a7043b8a5fe12359073fa6f0dde733c191fb91900daa0c6');
INSERT INTO "entry" VALUES(20,'2026-02-05T11:05:00Z','Nuala','batch reading','Noted lye temperature of batch 26-001-4.',NULL,'0.1.0','45fede3a34c6ee3e7a7043b8a5fe12359073fa6f0dde733c191fb91900daa0c6','a841a772ce28f36ddf0ff03a4bad9fc1a9bff079cc69d2cc04c9e51e919bd89e');
INSERT INTO "entry" VALUES(21,'2026-02-06T09:00:00Z','Nuala','batch cut','Cut batch 26-001-4 into 10 bars.',NULL,'0.1.0','a841a772ce28f36ddf0ff03a4bad9fc1a9bff079cc69d2cc04c9e51e919bd89e','838a8712c47a57f1ff5fe3652430ad277b94f3d040dd37b6c862c57bc1f43477');
INSERT INTO "entry" VALUES(22,'2026-02-06T09:10:00Z','Nuala','batch reading','Noted observation of batch 26-001-4.',NULL,'0.1.0','838a8712c47a57f1ff5fe3652430ad277b94f3d040dd37b6c862c57bc1f43477','48ab2276bd06a2a0d2604e26a511f40ee7b5d5c0be0c44788b48e109a32dd733');
INSERT INTO "entry" VALUES(23,'2026-02-14T09:00:00Z','Nuala','recipe revise','Version 2 of recipe Morning Lavender (morning).',NULL,'0.1.0','48ab2276bd06a2a0d2604e26a511f40ee7b5d5c0be0c44788b48e109a32dd733','4168775890ba59e7aa663bc274fd9b83ce93fb3dacd586298aaf70cdf0f3bda3');
INSERT INTO "entry" VALUES(24,'2026-02-16T09:00:00Z','Nuala','batch plan','Planned batch 26-002-2, Two Tone version 1.',NULL,'0.1.0','4168775890ba59e7aa663bc274fd9b83ce93fb3dacd586298aaf70cdf0f3bda3','864a917a5cc7d1a950977c6b253196de09d7b60de35df61108fa335811ba91d2');
INSERT INTO "entry" VALUES(25,'2026-02-16T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-002-2.',NULL,'0.1.0','864a917a5cc7d1a950977c6b253196de09d7b60de35df61108fa335811ba91d2','6b41b908958038d524cc0311012034775db598a5f95ab276a03c7842cf946ce2');
INSERT INTO "entry" VALUES(26,'2026-02-16T10:05:00Z','Nuala','batch divide','Divided batch 26-002-2 into 26-003-0, 26-004-9.',NULL,'0.1.0','6b41b908958038d524cc0311012034775db598a5f95ab276a03c7842cf946ce2','13d15ff6477a8ac39760c37b7c1c1e0185ee525d233b390c5d531e1729c453d1');
INSERT INTO "entry" VALUES(27,'2026-02-17T09:00:00Z','Nuala','batch reading','Noted poured of batch 26-003-0.',NULL,'0.1.0','13d15ff6477a8ac39760c37b7c1c1e0185ee525d233b390c5d531e1729c453d1','54144c1794512837f31dd251eb75e1eb2c1db8e46c5576515b80ff9c51554988');
INSERT INTO "entry" VALUES(28,'2026-02-17T09:01:00Z','Nuala','batch cut','Cut batch 26-003-0 into 6 bars.',NULL,'0.1.0','54144c1794512837f31dd251eb75e1eb2c1db8e46c5576515b80ff9c51554988','faa43d0c06d1a4e3f8eff21006bdce7e978237896e3d81f26f726bdd78b8f06d');
INSERT INTO "entry" VALUES(29,'2026-03-09T09:00:00Z','Nuala','pass','Passed 9 bars of batch 26-001-4 for packing.',NULL,'0.1.0','faa43d0c06d1a4e3f8eff21006bdce7e978237896e3d81f26f726bdd78b8f06d','0593ace37f5765a429955d9bfc5f5f41a968a2772dba3d92836ea71aea6f2faa');
INSERT INTO "entry" VALUES(30,'2026-03-09T09:10:00Z','Nuala','label approve','Approved the label of batch 26-001-4 for eu.',NULL,'0.1.0','0593ace37f5765a429955d9bfc5f5f41a968a2772dba3d92836ea71aea6f2faa','58760448895d77c2992467e93c8595cf58d03289318b9a225d69668c2af44a6f');
INSERT INTO "entry" VALUES(31,'2026-03-09T09:15:00Z','Nuala','label print','Printed 8 labels for batch 26-001-4, eu.',NULL,'0.1.0','58760448895d77c2992467e93c8595cf58d03289318b9a225d69668c2af44a6f','f45524a140a8eac218c841d1a7c21a57757f0a193dd0fef609f9246848f71357');
INSERT INTO "entry" VALUES(32,'2026-03-09T09:20:00Z','Nuala','label count','Counted run 1: 8 used, 0 spoiled, 0 returned.',NULL,'0.1.0','f45524a140a8eac218c841d1a7c21a57757f0a193dd0fef609f9246848f71357','e0797bb5e321bdd92af476915103af06c305e7ca0c095dd6d529812ecc1b7ef3');
INSERT INTO "entry" VALUES(33,'2026-03-09T09:30:00Z','Nuala','recipe assess','Booked assessment QR-114 of R. Lund, 12 Jan 2026, for Morning Lavender (morning).',NULL,'0.1.0','e0797bb5e321bdd92af476915103af06c305e7ca0c095dd6d529812ecc1b7ef3','8feec993b850586842364a4fe852650456e40e4ff746ae3e596432971d645ac7');
INSERT INTO "entry" VALUES(34,'2026-03-10T09:00:00Z','Nuala','release','Released batch 26-001-4, 8 bars.',NULL,'0.1.0','8feec993b850586842364a4fe852650456e40e4ff746ae3e596432971d645ac7','9229cd22723de0899dd72a8bca11189ced961058b2be86884d375c8d2e29b64d');
INSERT INTO "entry" VALUES(35,'2026-03-10T09:30:00Z','Nuala','stall add','Added stall Quay market.',NULL,'0.1.0','9229cd22723de0899dd72a8bca11189ced961058b2be86884d375c8d2e29b64d','2e549bb23ca7bdb0e1df256dbaf063f6fcf4d87cd7018d1915df0dc935c60e5d');
INSERT INTO "entry" VALUES(36,'2026-03-10T09:31:00Z','Nuala','stall out','Took 4 bars to Quay market.',NULL,'0.1.0','2e549bb23ca7bdb0e1df256dbaf063f6fcf4d87cd7018d1915df0dc935c60e5d','a7a55695a958b6a8e5dc2f3ecd9c8f8705103b1d4d621024ecca154b39662150');
INSERT INTO "entry" VALUES(37,'2026-03-10T18:00:00Z','Nuala','stall back','Back from Quay market: 3 bars sold, 1 came home.',NULL,'0.1.0','a7a55695a958b6a8e5dc2f3ecd9c8f8705103b1d4d621024ecca154b39662150','fc757908e4a71e2a25f3876ab310ccbb6b0fb1ed83c4d0cf5bb18cf6e8aac3b5');
INSERT INTO "entry" VALUES(38,'2026-03-11T09:00:00Z','Nuala','customer add','Added customer harrow.',NULL,'0.1.0','fc757908e4a71e2a25f3876ab310ccbb6b0fb1ed83c4d0cf5bb18cf6e8aac3b5','3db20cf4da832b8f97b451688a53980e0ac1f9479dc6082d6b40ae3bc99fc015');
INSERT INTO "entry" VALUES(39,'2026-03-11T09:01:00Z','Nuala','customer add','Added customer c-1.',NULL,'0.1.0','3db20cf4da832b8f97b451688a53980e0ac1f9479dc6082d6b40ae3bc99fc015','81628acf0aae0491c398982268cf545af4c22817e82943f96285d2fbddc84023');
INSERT INTO "entry" VALUES(40,'2026-03-12T09:00:00Z','Nuala','dispatch','Dispatched 2 bars to harrow.',NULL,'0.1.0','81628acf0aae0491c398982268cf545af4c22817e82943f96285d2fbddc84023','c664d9d111c0811964ee73c26295be9c3ee8449dafe93a2ce5beba9ff967160d');
INSERT INTO "entry" VALUES(41,'2026-03-12T09:01:00Z','Nuala','dispatch','Dispatched 1 bars to c-1.',NULL,'0.1.0','c664d9d111c0811964ee73c26295be9c3ee8449dafe93a2ce5beba9ff967160d','2e65b90f5601f7e33c569d3d5ceacc33c0dc55f722265e93e47ce59234637346');
INSERT INTO "entry" VALUES(42,'2026-03-15T09:00:00Z','Nuala','batch plan','Planned batch 26-005-7, Morning Lavender version 2.',NULL,'0.1.0','2e65b90f5601f7e33c569d3d5ceacc33c0dc55f722265e93e47ce59234637346','d98b2abdcef6d976bd57c42a00567030a9d6eb4f3c92c3819fa4b8fc7b21c36d');
INSERT INTO "entry" VALUES(43,'2026-03-15T09:30:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-005-7; noted poured.',NULL,'0.1.0','d98b2abdcef6d976bd57c42a00567030a9d6eb4f3c92c3819fa4b8fc7b21c36d','8d8f87990e8e4ee62fc4195ba57b5be9744e095f3e0d9ba624309f1e6dd36312');
INSERT INTO "entry" VALUES(44,'2026-03-16T09:30:00Z','Nuala','batch cut','Cut batch 26-005-7 into 10 bars.',NULL,'0.1.0','8d8f87990e8e4ee62fc4195ba57b5be9744e095f3e0d9ba624309f1e6dd36312','5daffc30b2ba907d8837c9f6ac67e1040285a09cbdb0a3f55f78baf1c266051c');
INSERT INTO "entry" VALUES(45,'2026-03-17T09:30:00Z','Nuala','reject','Rejected the bars of batch 26-005-7: zap on the tongue.',NULL,'0.1.0','5daffc30b2ba907d8837c9f6ac67e1040285a09cbdb0a3f55f78baf1c266051c','b7ffcd0cd80bec65f8f318c7dd8fb591172b81891feb31e3abe79211493fa8e6');
INSERT INTO "entry" VALUES(46,'2026-03-18T09:30:00Z','Nuala','lot waste','Threw away 10 of lot 26-005-7: thrown away.',NULL,'0.1.0','b7ffcd0cd80bec65f8f318c7dd8fb591172b81891feb31e3abe79211493fa8e6','0ad7b298884451b50ac2c6eaf3386f5535753366231afb8fec65b5661bb27f6b');
INSERT INTO "entry" VALUES(47,'2026-03-19T09:00:00Z','Nuala','receive','Received 1 lot from Own well: L11-6.',NULL,'0.1.0','0ad7b298884451b50ac2c6eaf3386f5535753366231afb8fec65b5661bb27f6b','1d60045ded8380d999c1d7f93a4e0924007c32ca227720b5e0e9cc2f58851c18');
INSERT INTO "entry" VALUES(48,'2026-03-20T09:00:00Z','Nuala','complaint add','Booked complaint 1 about batch 26-001-4.',NULL,'0.1.0','1d60045ded8380d999c1d7f93a4e0924007c32ca227720b5e0e9cc2f58851c18','c5af87345cd57ae0382c895a31404ee5d7e79a22e73f85323e37fbbbfa2ae425');
INSERT INTO "entry" VALUES(49,'2026-03-21T09:00:00Z','Nuala','customer erase','Erased the personal details of customer c-1: she asked.',NULL,'0.1.0','c5af87345cd57ae0382c895a31404ee5d7e79a22e73f85323e37fbbbfa2ae425','8af5057d8f26a70f9455abfd55c0636a7a7c216ba30faa900a8cacfa14e15a1f');
INSERT INTO "entry" VALUES(50,'2026-03-22T09:00:00Z','Nuala','lot waste','Threw away 20 g of lot L2-8: spilt.',NULL,'0.1.0','8af5057d8f26a70f9455abfd55c0636a7a7c216ba30faa900a8cacfa14e15a1f','99b04176cc1137981897a9786d0fcd8ed9c982a64e2e4a54ea939a1c4277d5bd');
INSERT INTO "entry" VALUES(51,'2026-03-22T09:05:00Z','Nuala','undo','Took back entry 50: Threw away 20 g of lot L2-8: spilt.',50,'0.1.0','99b04176cc1137981897a9786d0fcd8ed9c982a64e2e4a54ea939a1c4277d5bd','a656fb35f76d64247e075102cc67fcff8585fcf1c8588b01159eb289ee078d86');
INSERT INTO "entry" VALUES(52,'2026-03-23T09:00:00Z','Nuala','batch plan','Planned batch 26-006-5, Morning Lavender version 2.',NULL,'0.1.0','a656fb35f76d64247e075102cc67fcff8585fcf1c8588b01159eb289ee078d86','519b2bfa2e412b97e6b01bd866c60bbd4d17aa920530fec0e3b0ef42b9f43456');
INSERT INTO "entry" VALUES(53,'2026-03-23T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-006-5; noted poured.',NULL,'0.1.0','519b2bfa2e412b97e6b01bd866c60bbd4d17aa920530fec0e3b0ef42b9f43456','86e23d3be3de16ecf17b6331f45284196ab6aaa0e3a1a67f5aa55df4d03e14f5');
INSERT INTO "entry" VALUES(54,'2026-03-24T10:00:00Z','Nuala','batch cut','Cut batch 26-006-5 into 10 bars.',NULL,'0.1.0','86e23d3be3de16ecf17b6331f45284196ab6aaa0e3a1a67f5aa55df4d03e14f5','6f28c317355072e157e636d0cfe084ab7bce69979a550c0f92034a164075dce9');
INSERT INTO "entry" VALUES(55,'2026-03-25T09:00:00Z','Nuala','batch plan','Planned batch 26-007-3, Morning Lavender version 2.',NULL,'0.1.0','6f28c317355072e157e636d0cfe084ab7bce69979a550c0f92034a164075dce9','79d724f6ff823cdb959e40303bc664f94bf09e4445d74323fe29530374135bce');
CREATE TABLE erasure (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  personal_id INTEGER NOT NULL REFERENCES personal(id), reason TEXT NOT NULL
);
INSERT INTO "erasure" VALUES(1,49,3,'she asked');
CREATE TABLE label_approval (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), market TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL,
  text TEXT NOT NULL, text_digest TEXT NOT NULL
);
INSERT INTO "label_approval" VALUES(1,30,8,'eu','2026-03-09','Nuala','Morning Lavender
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
INSERT INTO "label_count" VALUES(1,32,1,'2026-03-09',8,0,0);
CREATE TABLE label_run (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, layout TEXT NOT NULL, market TEXT NOT NULL,
  count INTEGER NOT NULL, text TEXT NOT NULL, text_digest TEXT NOT NULL
, view TEXT, layout_source TEXT, sheet_source TEXT, start INTEGER, reprint_of INTEGER REFERENCES label_run(id));
INSERT INTO "label_run" VALUES(1,31,8,'2026-03-09','band','eu',8,'Morning Lavender
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
INSERT INTO "lot" VALUES(8,21,'26-001-4',8,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,1290000,NULL,NULL);
INSERT INTO "lot" VALUES(9,21,'L8-7',1,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(10,26,'L9-5',10,'2026-02-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(11,28,'26-003-0',11,'2026-02-17',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,780000,NULL,NULL);
INSERT INTO "lot" VALUES(12,44,'26-005-7',8,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(13,44,'L10-8',1,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(14,47,'L11-6',5,'2026-03-19',4,2,'tank 4','tank4',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(15,54,'26-006-5',8,'2026-03-24',NULL,NULL,NULL,NULL,6,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(16,54,'L12-4',1,'2026-03-24',NULL,NULL,NULL,NULL,6,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "movement" VALUES(8,19,1,1,'2026-02-05',-700000,'consumed',1,1,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(9,19,2,1,'2026-02-05',-300000,'consumed',1,2,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(10,19,6,1,'2026-02-05',-287246,'consumed',1,3,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(11,19,3,1,'2026-02-05',-143623,'consumed',1,4,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(12,19,4,1,'2026-02-05',-10000,'consumed',1,5,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(13,21,8,1,'2026-02-06',10,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(14,21,9,1,'2026-02-06',60000,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(15,25,1,1,'2026-02-16',-700000,'consumed',2,7,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(16,25,2,1,'2026-02-16',-300000,'consumed',2,8,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(17,25,6,1,'2026-02-16',-287246,'consumed',2,9,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(18,25,3,1,'2026-02-16',-143623,'consumed',2,10,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(19,25,4,1,'2026-02-16',-10000,'consumed',2,11,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(20,26,10,1,'2026-02-16',1440869,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(21,26,10,1,'2026-02-16',-864521,'consumed',3,12,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(22,26,10,1,'2026-02-16',-576348,'consumed',4,14,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(23,28,11,1,'2026-02-17',6,'yielded',3,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(24,29,8,1,'2026-03-09',-1,'wasted',NULL,NULL,NULL,NULL,'cracked');
INSERT INTO "movement" VALUES(25,29,5,1,'2026-03-09',-9,'consumed',1,6,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(26,34,8,1,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(27,34,8,2,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(28,36,8,1,'2026-03-10',-4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(29,36,8,4,'2026-03-10',4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(30,37,8,4,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(31,37,8,1,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(32,37,8,4,'2026-03-10',-3,'sold',NULL,NULL,NULL,1500,NULL);
INSERT INTO "movement" VALUES(33,40,8,1,'2026-03-12',-2,'dispatched',NULL,NULL,1,NULL,NULL);
INSERT INTO "movement" VALUES(34,41,8,1,'2026-03-12',-1,'dispatched',NULL,NULL,2,NULL,NULL);
INSERT INTO "movement" VALUES(35,43,3,1,'2026-03-15',-150000,'consumed',5,19,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(36,43,1,1,'2026-03-15',-700000,'consumed',5,16,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(37,43,2,1,'2026-03-15',-300000,'consumed',5,17,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(38,43,6,1,'2026-03-15',-284224,'consumed',5,18,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(39,43,4,1,'2026-03-15',-10000,'consumed',5,20,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(40,44,12,1,'2026-03-16',10,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(41,44,13,1,'2026-03-16',40000,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(42,46,12,1,'2026-03-18',-10,'wasted',NULL,NULL,NULL,NULL,'thrown away');
INSERT INTO "movement" VALUES(43,47,14,1,'2026-03-19',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(44,50,2,1,'2026-03-22',-20000,'wasted',NULL,NULL,NULL,NULL,'spilt');
INSERT INTO "movement" VALUES(45,51,2,1,'2026-03-22',20000,'wasted',NULL,NULL,NULL,NULL,'takes back entry 50');
INSERT INTO "movement" VALUES(46,53,1,1,'2026-03-23',-700000,'consumed',6,22,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(47,53,2,1,'2026-03-23',-300000,'consumed',6,23,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(48,53,6,1,'2026-03-23',-284224,'consumed',6,24,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(49,53,3,1,'2026-03-23',-142112,'consumed',6,25,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(50,53,4,1,'2026-03-23',-10000,'consumed',6,26,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(51,54,15,1,'2026-03-24',10,'yielded',6,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(52,54,16,1,'2026-03-24',50000,'yielded',6,NULL,NULL,NULL,NULL);
CREATE TABLE personal (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salted_digest TEXT NOT NULL
);
INSERT INTO "personal" VALUES(1,2,'6203a6358b9b07e793a39caa419bb48d629a39da92ad75e3d3cfbd3e7646b82b');
INSERT INTO "personal" VALUES(2,38,'d392cabe91c033a4eedc126abd7fcb290fafa7a53ef516fa786c06b72e401012');
INSERT INTO "personal" VALUES(3,39,'1d2d66939533ad55a0438a3e37920bee071119397d68ea084bb21937fc000fbe');
CREATE TABLE personal_text (
  personal_id INTEGER PRIMARY KEY REFERENCES personal(id),
  salt TEXT NOT NULL, name TEXT, phone TEXT, email TEXT, address TEXT, health TEXT
);
INSERT INTO "personal_text" VALUES(1,'259c8b7c09e539d3362f62aed39aed98',NULL,'+353 20 910 0131',NULL,NULL,NULL);
INSERT INTO "personal_text" VALUES(2,'de2ee2d30258d80812776fc54929d238',NULL,'+353 20 910 0188',NULL,NULL,NULL);
CREATE TABLE place (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('workshop','stall','retained','returns'))
);
INSERT INTO "place" VALUES(1,1,'workshop','workshop','workshop');
INSERT INTO "place" VALUES(2,1,'retained','retained samples','retained');
INSERT INTO "place" VALUES(3,1,'returns','returns shelf','returns');
INSERT INTO "place" VALUES(4,35,'quay-market','Quay market','stall');
CREATE TABLE plan_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), number INTEGER NOT NULL,
  role TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id),
  lot_id INTEGER REFERENCES lot(id),     -- the lot proposed: first to expire, first out
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL, stage TEXT NOT NULL
, in_demand INTEGER CHECK (in_demand IN (0,1)));
INSERT INTO "plan_line" VALUES(1,18,1,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(2,18,1,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(3,18,1,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(4,18,1,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(5,18,1,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(6,18,1,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(7,24,2,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(8,24,2,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(9,24,2,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(10,24,2,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(11,24,2,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(12,24,3,1,'dough',10,NULL,864521,821295,907747,'at trace',NULL);
INSERT INTO "plan_line" VALUES(13,24,3,2,'packaging',7,5,6,6,6,'packing',NULL);
INSERT INTO "plan_line" VALUES(14,24,4,1,'dough',10,NULL,576348,547531,605165,'at trace',NULL);
INSERT INTO "plan_line" VALUES(15,24,4,2,'packaging',7,5,4,4,4,'packing',NULL);
INSERT INTO "plan_line" VALUES(16,42,5,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(17,42,5,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(18,42,5,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(19,42,5,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(20,42,5,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(21,42,5,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(22,52,6,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(23,52,6,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(24,52,6,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(25,52,6,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(26,52,6,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(27,52,6,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(28,55,7,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(29,55,7,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(30,55,7,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(31,55,7,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(32,55,7,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(33,55,7,6,'packaging',7,5,10,10,10,'packing',NULL);
CREATE TABLE plan_target (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  plan_line_id INTEGER NOT NULL REFERENCES plan_line(id),
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL
);
CREATE TABLE "reading" (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, at TEXT,   -- at: local clock time 14:05
  what TEXT NOT NULL, value INTEGER, unit TEXT, text TEXT,
  plan_line_id INTEGER REFERENCES plan_line(id),    -- the line that was left out
  CHECK ((value IS NULL) = (unit IS NULL))
);
INSERT INTO "reading" VALUES(1,19,1,'2026-02-05',NULL,'lye temperature',49000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(2,19,1,'2026-02-05','10:40','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(3,20,1,'2026-02-05',NULL,'lye temperature',48000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(4,22,1,'2026-02-06',NULL,'observation',NULL,NULL,'cracked along the top',NULL);
INSERT INTO "reading" VALUES(5,27,3,'2026-02-16','09:00','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(6,43,5,'2026-03-15','09:20','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(7,53,6,'2026-03-23','09:50','poured',NULL,NULL,NULL,NULL);
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
INSERT INTO "recipe_version" VALUES(3,23,1,2,'Morning Lavender','name = "Morning Lavender"
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
CREATE INDEX lot_code ON lot (code);
CREATE INDEX movement_stock ON movement (lot_id, place_id, "on", quantity);
CREATE INDEX movement_batch ON movement (batch_id, lot_id);
CREATE INDEX decision_lot ON decision (lot_id, "on", id, verdict);
CREATE INDEX plan_target_line ON plan_target (plan_line_id);
CREATE INDEX constituent_material ON constituent (material_id, lot_id);
CREATE INDEX label_count_run ON label_count (label_run_id);
CREATE VIEW live_assessment AS SELECT t.* FROM assessment t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX assessment_of_entry ON assessment (entry_id);
CREATE VIEW live_attachment AS SELECT t.* FROM attachment t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX attachment_of_entry ON attachment (entry_id);
CREATE VIEW live_batch AS SELECT t.* FROM batch t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX batch_of_entry ON batch (entry_id);
CREATE VIEW live_complaint AS SELECT t.* FROM complaint t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX complaint_of_entry ON complaint (entry_id);
CREATE VIEW live_constituent AS SELECT t.* FROM constituent t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX constituent_of_entry ON constituent (entry_id);
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
CREATE VIEW live_label_approval AS SELECT t.* FROM label_approval t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX label_approval_of_entry ON label_approval (entry_id);
CREATE VIEW live_label_count AS SELECT t.* FROM label_count t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX label_count_of_entry ON label_count (entry_id);
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
CREATE VIEW live_plan_target AS SELECT t.* FROM plan_target t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX plan_target_of_entry ON plan_target (entry_id);
CREATE VIEW live_reading AS SELECT t.* FROM reading t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX reading_of_entry ON reading (entry_id);
CREATE VIEW live_recipe AS SELECT t.* FROM recipe t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX recipe_of_entry ON recipe (entry_id);
CREATE VIEW live_recipe_version AS SELECT t.* FROM recipe_version t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX recipe_version_of_entry ON recipe_version (entry_id);
CREATE VIEW live_settings_revision AS SELECT t.* FROM settings_revision t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX settings_revision_of_entry ON settings_revision (entry_id);
CREATE VIEW live_skin_limit AS SELECT t.* FROM skin_limit t WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = t.entry_id) AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL);
CREATE INDEX skin_limit_of_entry ON skin_limit (entry_id);
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
CREATE TRIGGER erasure_never_changed BEFORE UPDATE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never changed.'); END;
CREATE TRIGGER erasure_never_deleted BEFORE DELETE ON erasure BEGIN SELECT RAISE(ABORT, 'guard: What was written is never deleted.'); END;
CREATE TRIGGER erasure_entry_still_open BEFORE INSERT ON erasure WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.entry_id) BEGIN SELECT RAISE(ABORT, 'guard: Nothing is added to an entry that was closed.'); END;
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
COMMIT;
