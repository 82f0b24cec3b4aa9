-- Written by the program of commit ff6f329: delivery, hold, paper, recipe revised, two portions, cut, pass, release, stall, shop, a person erased, rejected bars wasted, an undo, a batch on the rack, a plan.
PRAGMA application_id = 1353391830;
PRAGMA user_version = 2;
BEGIN TRANSACTION;
CREATE TABLE assessment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), source TEXT NOT NULL
);
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
INSERT INTO "batch" VALUES(1,17,'26-001-4','cold',1,8,'2026-02-05',10,NULL,NULL);
INSERT INTO "batch" VALUES(2,23,'26-002-2','cold',2,10,'2026-02-16',10,NULL,NULL);
INSERT INTO "batch" VALUES(3,23,'26-003-0','portion',2,11,'2026-02-16',6,2,'light');
INSERT INTO "batch" VALUES(4,23,'26-004-9','portion',2,12,'2026-02-16',4,2,'dark');
INSERT INTO "batch" VALUES(5,37,'26-005-7','cold',3,8,'2026-03-15',10,NULL,NULL);
INSERT INTO "batch" VALUES(6,47,'26-006-5','cold',3,8,'2026-03-23',10,NULL,NULL);
INSERT INTO "batch" VALUES(7,50,'26-007-3','cold',3,8,'2026-03-25',10,NULL,NULL);
CREATE TABLE complaint (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, lot_id INTEGER REFERENCES lot(id), bought TEXT, what TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, personal_id INTEGER REFERENCES personal(id)
);
INSERT INTO "complaint" VALUES(1,43,'2026-03-20',8,NULL,'itched',NULL,NULL,NULL);
CREATE TABLE constituent (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), lot_id INTEGER REFERENCES lot(id),
  name TEXT NOT NULL, share_ppm INTEGER NOT NULL, source TEXT NOT NULL
);
CREATE TABLE customer (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('shop','person'))
);
INSERT INTO "customer" VALUES(1,33,'harrow','shop');
INSERT INTO "customer" VALUES(2,34,'c-1','person');
CREATE TABLE customer_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), name TEXT,   -- a shop's trade name; a person's name is in personal_text
  personal_id INTEGER REFERENCES personal(id), note TEXT
);
INSERT INTO "customer_revision" VALUES(1,33,1,'Harrow and Fenn',2,NULL);
INSERT INTO "customer_revision" VALUES(2,34,2,NULL,3,NULL);
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
INSERT INTO "decision" VALUES(8,20,9,NULL,'accepted','2026-02-06','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(9,25,10,NULL,'accepted','2026-02-16','Nuala','divided at trace');
INSERT INTO "decision" VALUES(10,28,8,NULL,'passed','2026-03-09','Nuala',NULL);
INSERT INTO "decision" VALUES(11,29,8,NULL,'released','2026-03-10','Nuala',NULL);
INSERT INTO "decision" VALUES(12,38,NULL,5,'accepted','2026-03-15','Nuala','a hard bar for the workshop');
INSERT INTO "decision" VALUES(13,39,13,NULL,'accepted','2026-03-16','Nuala','offcuts kept');
INSERT INTO "decision" VALUES(14,40,12,NULL,'rejected','2026-03-17','Nuala','zap on the tongue');
INSERT INTO "decision" VALUES(15,42,14,NULL,'accepted','2026-03-19','Nuala',NULL);
INSERT INTO "decision" VALUES(16,49,16,NULL,'accepted','2026-03-24','Nuala','offcuts kept');
CREATE TABLE delivery (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id), note_number TEXT, "on" TEXT NOT NULL,
  carriage_minor INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "delivery" VALUES(1,13,1,'D-19','2026-02-03',650);
INSERT INTO "delivery" VALUES(2,14,2,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(3,15,1,NULL,'2026-02-03',0);
INSERT INTO "delivery" VALUES(4,42,2,NULL,'2026-03-19',0);
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
INSERT INTO "entry" VALUES(2,'2026-02-02T09:05:00Z','Nuala','supplier add','Added supplier Ottersby Oils (ottersby-oils).',NULL,'0.1.0','8c8a078d46a54d16be9938c641e3a38692b9e2fc198bf7b2b894c7eded6a8382','6026f59773e22e54ad4c8b1c7e1a937baaed74a001b64a64685e9b94fba4aee6');
INSERT INTO "entry" VALUES(3,'2026-02-02T09:06:00Z','Nuala','supplier add','Added supplier Own well (own-well).',NULL,'0.1.0','6026f59773e22e54ad4c8b1c7e1a937baaed74a001b64a64685e9b94fba4aee6','8b3a5b9281fd72b6c0e8fb0be5b858eb6be0858b5090f84a007937324532ae69');
INSERT INTO "entry" VALUES(4,'2026-02-02T09:10:00Z','Nuala','material add','Added material olive oil (olive-oil).',NULL,'0.1.0','8b3a5b9281fd72b6c0e8fb0be5b858eb6be0858b5090f84a007937324532ae69','d8c2742fa113994962dc784c2c33f8ea3f816451049f37d475316adf81a94e8d');
INSERT INTO "entry" VALUES(5,'2026-02-02T09:10:00Z','Nuala','material add','Added material coconut oil (coconut-oil).',NULL,'0.1.0','d8c2742fa113994962dc784c2c33f8ea3f816451049f37d475316adf81a94e8d','d176e825aa6771d17d5cbae52cf3e930541e595683018f06564f4ed06d4498c7');
INSERT INTO "entry" VALUES(6,'2026-02-02T09:10:00Z','Nuala','material add','Added material sodium hydroxide (sodium-hydroxide).',NULL,'0.1.0','d176e825aa6771d17d5cbae52cf3e930541e595683018f06564f4ed06d4498c7','388e55ddc7427c201bf94eed51d17fbeac88698be01feae2cb8f5936da73142f');
INSERT INTO "entry" VALUES(7,'2026-02-02T09:10:00Z','Nuala','material add','Added material water (water).',NULL,'0.1.0','388e55ddc7427c201bf94eed51d17fbeac88698be01feae2cb8f5936da73142f','65ef78ed1c892a71b996c1c77dd199d173f1bd0436d4a389850e341838f1f80b');
INSERT INTO "entry" VALUES(8,'2026-02-02T09:10:00Z','Nuala','material add','Added material lavender oil (lavender-oil).',NULL,'0.1.0','65ef78ed1c892a71b996c1c77dd199d173f1bd0436d4a389850e341838f1f80b','b44ca7fb7ff2441dde5df64d47d3ba36a18818eb5b6bd863ca104c21e24017d6');
INSERT INTO "entry" VALUES(9,'2026-02-02T09:10:00Z','Nuala','material add','Added material paper band (paper-band).',NULL,'0.1.0','b44ca7fb7ff2441dde5df64d47d3ba36a18818eb5b6bd863ca104c21e24017d6','40af3f506743afcf617c526de75b6d70aec62ff31d94770988acd7ab0d86d6df');
INSERT INTO "entry" VALUES(10,'2026-02-02T09:20:00Z','Nuala','material limit','lavender oil: at most 5.000 % by certificate LV-3.',NULL,'0.1.0','40af3f506743afcf617c526de75b6d70aec62ff31d94770988acd7ab0d86d6df','70625fba023c943b49ebaec474986c4196bcc827ea93c4d36614713e20d644a8');
INSERT INTO "entry" VALUES(11,'2026-02-02T09:30:00Z','Nuala','recipe add','Added recipe Morning Lavender (morning).',NULL,'0.1.0','70625fba023c943b49ebaec474986c4196bcc827ea93c4d36614713e20d644a8','91cb854b225ea3e3deeefa6fa8fdcdf4be45809aebb8796c752b0607d751b49e');
INSERT INTO "entry" VALUES(12,'2026-02-02T09:31:00Z','Nuala','recipe add','Added recipe Two Tone (two-tone).',NULL,'0.1.0','91cb854b225ea3e3deeefa6fa8fdcdf4be45809aebb8796c752b0607d751b49e','859b9808acac5754ebd00c54c54179112666c690ce8e5d3ee228496e8d9e9366');
INSERT INTO "entry" VALUES(13,'2026-02-03T10:00:00Z','Nuala','receive','Received 5 lots from Ottersby Oils: L1-X, L2-8, L3-6, L4-4, L5-2.',NULL,'0.1.0','859b9808acac5754ebd00c54c54179112666c690ce8e5d3ee228496e8d9e9366','5c4a16db48aff2b0dc8efb20119ea08deca7ba8f4f1638cea70aa0105a23fe0f');
INSERT INTO "entry" VALUES(14,'2026-02-03T10:05:00Z','Nuala','receive','Received 1 lot from Own well: L6-0.',NULL,'0.1.0','5c4a16db48aff2b0dc8efb20119ea08deca7ba8f4f1638cea70aa0105a23fe0f','df77ee150138555d1a1da6b3402ccfaf6c8c28a545fded1da0033688e8047a0a');
INSERT INTO "entry" VALUES(15,'2026-02-03T10:07:00Z','Nuala','receive','Received 1 lot from Ottersby Oils: L7-9.',NULL,'0.1.0','df77ee150138555d1a1da6b3402ccfaf6c8c28a545fded1da0033688e8047a0a','9dfecbdee2bee462818de097cf3e85b098d57abaf93ae66b421b276891ee533d');
INSERT INTO "entry" VALUES(16,'2026-02-03T10:10:00Z','Nuala','attach','Attached certificate.txt (paper) to lot L1-X.',NULL,'0.1.0','9dfecbdee2bee462818de097cf3e85b098d57abaf93ae66b421b276891ee533d','c44b31515769f30a5e893e9dffd78cc7329f61ef7bac07b0ad1758993cdadacf');
INSERT INTO "entry" VALUES(17,'2026-02-05T09:00:00Z','Nuala','batch plan','Planned batch 26-001-4, Morning Lavender version 1.',NULL,'0.1.0','c44b31515769f30a5e893e9dffd78cc7329f61ef7bac07b0ad1758993cdadacf','caf5f9ead2c05810ad12e7fa797534b62006031dec4fcd80d4a40224023866c2');
INSERT INTO "entry" VALUES(18,'2026-02-05T11:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-001-4; noted lye temperature, poured.',NULL,'0.1.0','caf5f9ead2c05810ad12e7fa797534b62006031dec4fcd80d4a40224023866c2','99ae4b4d593b4414090af0db76434b59550153fb8b5fc59ab148f3738e6680fa');
INSERT INTO "entry" VALUES(19,'2026-02-05T11:05:00Z','Nuala','batch reading','Noted lye temperature of batch 26-001-4.',NULL,'0.1.0','99ae4b4d593b4414090af0db76434b59550153fb8b5fc59ab148f3738e6680fa','b22f82b13f8bdc1caf3a153be0b626082412e37adfaec84641af44e6bffbc617');
INSERT INTO "entry" VALUES(20,'2026-02-06T09:00:00Z','Nuala','batch cut','Cut batch 26-001-4 into 10 bars.',NULL,'0.1.0','b22f82b13f8bdc1caf3a153be0b626082412e37adfaec84641af44e6bffbc617','c805afc0162f11fba00a2586d0cf5c17e37a5d092c2f39e799ec1ee5db9bd579');
INSERT INTO "entry" VALUES(21,'2026-02-06T09:10:00Z','Nuala','batch reading','Noted observation of batch 26-001-4.',NULL,'0.1.0','c805afc0162f11fba00a2586d0cf5c17e37a5d092c2f39e799ec1ee5db9bd579','1776d57fc0050d85f32445e3f101a3abbae4b6e1e3d0037790427be3cd68ac64');
INSERT INTO "entry" VALUES(22,'2026-02-14T09:00:00Z','Nuala','recipe revise','Version 2 of recipe Morning Lavender (morning).',NULL,'0.1.0','1776d57fc0050d85f32445e3f101a3abbae4b6e1e3d0037790427be3cd68ac64','632695470e7bb3b173b5ac231ac8e09e9a5a2824026a36f8f506d7347cf40c31');
INSERT INTO "entry" VALUES(23,'2026-02-16T09:00:00Z','Nuala','batch plan','Planned batch 26-002-2, Two Tone version 1.',NULL,'0.1.0','632695470e7bb3b173b5ac231ac8e09e9a5a2824026a36f8f506d7347cf40c31','cf9be287f2cb7cb2d0f717524cee173555f70096294be35b0862c956367b2672');
INSERT INTO "entry" VALUES(24,'2026-02-16T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-002-2.',NULL,'0.1.0','cf9be287f2cb7cb2d0f717524cee173555f70096294be35b0862c956367b2672','4eee815e3cc3aac3c3c9451b737d2828b443540a51ec8c42692a5bd8efb68fde');
INSERT INTO "entry" VALUES(25,'2026-02-16T10:05:00Z','Nuala','batch divide','Divided batch 26-002-2 into 26-003-0, 26-004-9.',NULL,'0.1.0','4eee815e3cc3aac3c3c9451b737d2828b443540a51ec8c42692a5bd8efb68fde','93b89747c78cb853da5a85a29ca188a003ff685de6dd41bd8aa886437b0766f7');
INSERT INTO "entry" VALUES(26,'2026-02-17T09:00:00Z','Nuala','batch reading','Noted poured of batch 26-003-0.',NULL,'0.1.0','93b89747c78cb853da5a85a29ca188a003ff685de6dd41bd8aa886437b0766f7','4c8c5723d05750707fdfdacdb805fd77ef460be0ca82654d84b8c6a074ccecb8');
INSERT INTO "entry" VALUES(27,'2026-02-17T09:01:00Z','Nuala','batch cut','Cut batch 26-003-0 into 6 bars.',NULL,'0.1.0','4c8c5723d05750707fdfdacdb805fd77ef460be0ca82654d84b8c6a074ccecb8','b386addb1e3e472125578d9b873906dec42bfde033b0011f9b5f246252445c57');
INSERT INTO "entry" VALUES(28,'2026-03-09T09:00:00Z','Nuala','pass','Passed 9 bars of batch 26-001-4 for packing.',NULL,'0.1.0','b386addb1e3e472125578d9b873906dec42bfde033b0011f9b5f246252445c57','81fda39799cd18fe6d7e3ba4c71e0d3eac390a8dd9be78e6c318491c13c6e1a0');
INSERT INTO "entry" VALUES(29,'2026-03-10T09:00:00Z','Nuala','release','Released batch 26-001-4, 8 bars.',NULL,'0.1.0','81fda39799cd18fe6d7e3ba4c71e0d3eac390a8dd9be78e6c318491c13c6e1a0','6fe29d1482b339d9fa7c0840486f950dec43cb8ef8cc3c79b6b765d9d0630b12');
INSERT INTO "entry" VALUES(30,'2026-03-10T09:30:00Z','Nuala','stall add','Added stall Quay market.',NULL,'0.1.0','6fe29d1482b339d9fa7c0840486f950dec43cb8ef8cc3c79b6b765d9d0630b12','38e53f10c236148e9c52addcc09ae117bb92a2b577bbab88d85db22d5fcee470');
INSERT INTO "entry" VALUES(31,'2026-03-10T09:31:00Z','Nuala','stall out','Took 4 bars to Quay market.',NULL,'0.1.0','38e53f10c236148e9c52addcc09ae117bb92a2b577bbab88d85db22d5fcee470','fe1e5fd86ef743f032db46a0e9a55a6944146765ad38703194d03efeaceedf2c');
INSERT INTO "entry" VALUES(32,'2026-03-10T18:00:00Z','Nuala','stall back','Back from Quay market: 3 bars sold, 1 came home.',NULL,'0.1.0','fe1e5fd86ef743f032db46a0e9a55a6944146765ad38703194d03efeaceedf2c','09980ca692777daa13d86414d9120198aa66d704a5d230765f008927d9e64f47');
INSERT INTO "entry" VALUES(33,'2026-03-11T09:00:00Z','Nuala','customer add','Added customer harrow.',NULL,'0.1.0','09980ca692777daa13d86414d9120198aa66d704a5d230765f008927d9e64f47','e2a2d1c0f38ed02cb171cfe9172e143f71cbc191545d3ace417b633fb41fa86c');
INSERT INTO "entry" VALUES(34,'2026-03-11T09:01:00Z','Nuala','customer add','Added customer c-1.',NULL,'0.1.0','e2a2d1c0f38ed02cb171cfe9172e143f71cbc191545d3ace417b633fb41fa86c','a14f3a192cecac5aaa375005bcbc2d859b11ea79a00a05669ab33d363c5eb811');
INSERT INTO "entry" VALUES(35,'2026-03-12T09:00:00Z','Nuala','dispatch','Dispatched 2 bars to harrow.',NULL,'0.1.0','a14f3a192cecac5aaa375005bcbc2d859b11ea79a00a05669ab33d363c5eb811','e67c83f7f9c581faf307fd111e68bd220b439e095553b70f5f4ca008a49b6585');
INSERT INTO "entry" VALUES(36,'2026-03-12T09:01:00Z','Nuala','dispatch','Dispatched 1 bars to c-1.',NULL,'0.1.0','e67c83f7f9c581faf307fd111e68bd220b439e095553b70f5f4ca008a49b6585','4e901394a7dcba8ce56c7c8bb31fb23c53d3508020e87a6fa861f39a52415c17');
INSERT INTO "entry" VALUES(37,'2026-03-15T09:00:00Z','Nuala','batch plan','Planned batch 26-005-7, Morning Lavender version 2.',NULL,'0.1.0','4e901394a7dcba8ce56c7c8bb31fb23c53d3508020e87a6fa861f39a52415c17','c45302a9cc4c3c344ffb4f1d17f9c5a93d4c121f56d3210aa91ad68aaee2aea5');
INSERT INTO "entry" VALUES(38,'2026-03-15T09:30:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-005-7; noted poured.',NULL,'0.1.0','c45302a9cc4c3c344ffb4f1d17f9c5a93d4c121f56d3210aa91ad68aaee2aea5','5abf8202d5de72e8e87b3d489532d1a5f4cc94527fabc9244c47f3b1aa0f2e82');
INSERT INTO "entry" VALUES(39,'2026-03-16T09:30:00Z','Nuala','batch cut','Cut batch 26-005-7 into 10 bars.',NULL,'0.1.0','5abf8202d5de72e8e87b3d489532d1a5f4cc94527fabc9244c47f3b1aa0f2e82','a610d46a813c2c1fadebb0bf1326e67f895acaa75cc9a8d88172aa9d9bc46842');
INSERT INTO "entry" VALUES(40,'2026-03-17T09:30:00Z','Nuala','reject','Rejected the bars of batch 26-005-7: zap on the tongue.',NULL,'0.1.0','a610d46a813c2c1fadebb0bf1326e67f895acaa75cc9a8d88172aa9d9bc46842','41caeb5668b5a2066d731fd47bda0578613e1897fb2d16bcc1900e335df2144c');
INSERT INTO "entry" VALUES(41,'2026-03-18T09:30:00Z','Nuala','lot waste','Threw away 10 of lot 26-005-7: thrown away.',NULL,'0.1.0','41caeb5668b5a2066d731fd47bda0578613e1897fb2d16bcc1900e335df2144c','cbfd38e5184d8ad64e247184f11a159ab08006a47f3c6caeb2eb3ac91d06fab8');
INSERT INTO "entry" VALUES(42,'2026-03-19T09:00:00Z','Nuala','receive','Received 1 lot from Own well: L11-6.',NULL,'0.1.0','cbfd38e5184d8ad64e247184f11a159ab08006a47f3c6caeb2eb3ac91d06fab8','11d44e5d2bc7ecf2ab2e0a41ce11f01f0c874101a63892f39551ad0622645595');
INSERT INTO "entry" VALUES(43,'2026-03-20T09:00:00Z','Nuala','complaint add','Booked complaint 1 about batch 26-001-4.',NULL,'0.1.0','11d44e5d2bc7ecf2ab2e0a41ce11f01f0c874101a63892f39551ad0622645595','166b4070ecf5a5a5d4810092e3aa1bf60a3de2407ba1b250c77a219aa85ab007');
INSERT INTO "entry" VALUES(44,'2026-03-21T09:00:00Z','Nuala','customer erase','Erased the personal details of customer c-1: she asked.',NULL,'0.1.0','166b4070ecf5a5a5d4810092e3aa1bf60a3de2407ba1b250c77a219aa85ab007','626c9bd3ca4f36165a9d938e0ab817203ce9bbe1dfedf51284ff68869d5cca24');
INSERT INTO "entry" VALUES(45,'2026-03-22T09:00:00Z','Nuala','lot waste','Threw away 20 g of lot L2-8: spilt.',NULL,'0.1.0','626c9bd3ca4f36165a9d938e0ab817203ce9bbe1dfedf51284ff68869d5cca24','732a48ae1179b9a6683fd2bdeff7e779d2394db6d2dd9ea5392b9f818b791ac5');
INSERT INTO "entry" VALUES(46,'2026-03-22T09:05:00Z','Nuala','undo','Took back entry 45: Threw away 20 g of lot L2-8: spilt.',45,'0.1.0','732a48ae1179b9a6683fd2bdeff7e779d2394db6d2dd9ea5392b9f818b791ac5','cdb6f8e279b269c689b6f85a7f2b5123ebdf878b3e0e04897c8c1fbe313086fd');
INSERT INTO "entry" VALUES(47,'2026-03-23T09:00:00Z','Nuala','batch plan','Planned batch 26-006-5, Morning Lavender version 2.',NULL,'0.1.0','cdb6f8e279b269c689b6f85a7f2b5123ebdf878b3e0e04897c8c1fbe313086fd','20ab3f0309e94395a2c801fbcb986943102925b17efb634f945dd027e7fc24a3');
INSERT INTO "entry" VALUES(48,'2026-03-23T10:00:00Z','Nuala','batch log','Weighed line 1, 2, 3, 4, 5 of batch 26-006-5; noted poured.',NULL,'0.1.0','20ab3f0309e94395a2c801fbcb986943102925b17efb634f945dd027e7fc24a3','4bae573d5caaf375ce3d5b1e478da2000d6e692315ee2f405f1badb3b9ca0aec');
INSERT INTO "entry" VALUES(49,'2026-03-24T10:00:00Z','Nuala','batch cut','Cut batch 26-006-5 into 10 bars.',NULL,'0.1.0','4bae573d5caaf375ce3d5b1e478da2000d6e692315ee2f405f1badb3b9ca0aec','20e824a3ad243c24578f86fdeda46915003d50480c399edf4f135bd9448bef06');
INSERT INTO "entry" VALUES(50,'2026-03-25T09:00:00Z','Nuala','batch plan','Planned batch 26-007-3, Morning Lavender version 2.',NULL,'0.1.0','20e824a3ad243c24578f86fdeda46915003d50480c399edf4f135bd9448bef06','ab0fae117409557dc021f9298d3502fbc79ea2e90aefb83f5aff6380c5d7d35f');
CREATE TABLE erasure (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  personal_id INTEGER NOT NULL REFERENCES personal(id), reason TEXT NOT NULL
);
INSERT INTO "erasure" VALUES(1,44,3,'she asked');
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
INSERT INTO "lot" VALUES(8,20,'26-001-4',8,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,1290000,NULL,NULL);
INSERT INTO "lot" VALUES(9,20,'L8-7',1,'2026-02-06',NULL,NULL,NULL,NULL,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(10,25,'L9-5',10,'2026-02-16',NULL,NULL,NULL,NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(11,27,'26-003-0',11,'2026-02-17',NULL,NULL,NULL,NULL,3,NULL,NULL,NULL,NULL,NULL,NULL,780000,NULL,NULL);
INSERT INTO "lot" VALUES(12,39,'26-005-7',8,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(13,39,'L10-8',1,'2026-03-16',NULL,NULL,NULL,NULL,5,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(14,42,'L11-6',5,'2026-03-19',4,2,'tank 4','tank4',NULL,NULL,0,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "lot" VALUES(15,49,'26-006-5',8,'2026-03-24',NULL,NULL,NULL,NULL,6,NULL,NULL,NULL,NULL,NULL,NULL,1300000,NULL,NULL);
INSERT INTO "lot" VALUES(16,49,'L12-4',1,'2026-03-24',NULL,NULL,NULL,NULL,6,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
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
INSERT INTO "movement" VALUES(8,18,1,1,'2026-02-05',-700000,'consumed',1,1,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(9,18,2,1,'2026-02-05',-300000,'consumed',1,2,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(10,18,6,1,'2026-02-05',-287246,'consumed',1,3,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(11,18,3,1,'2026-02-05',-143623,'consumed',1,4,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(12,18,4,1,'2026-02-05',-10000,'consumed',1,5,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(13,20,8,1,'2026-02-06',10,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(14,20,9,1,'2026-02-06',60000,'yielded',1,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(15,24,1,1,'2026-02-16',-700000,'consumed',2,7,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(16,24,2,1,'2026-02-16',-300000,'consumed',2,8,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(17,24,6,1,'2026-02-16',-287246,'consumed',2,9,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(18,24,3,1,'2026-02-16',-143623,'consumed',2,10,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(19,24,4,1,'2026-02-16',-10000,'consumed',2,11,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(20,25,10,1,'2026-02-16',1440869,'yielded',2,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(21,25,10,1,'2026-02-16',-864521,'consumed',3,12,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(22,25,10,1,'2026-02-16',-576348,'consumed',4,14,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(23,27,11,1,'2026-02-17',6,'yielded',3,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(24,28,8,1,'2026-03-09',-1,'wasted',NULL,NULL,NULL,NULL,'cracked');
INSERT INTO "movement" VALUES(25,28,5,1,'2026-03-09',-9,'consumed',1,6,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(26,29,8,1,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(27,29,8,2,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,'retained sample');
INSERT INTO "movement" VALUES(28,31,8,1,'2026-03-10',-4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(29,31,8,4,'2026-03-10',4,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(30,32,8,4,'2026-03-10',-1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(31,32,8,1,'2026-03-10',1,'moved',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(32,32,8,4,'2026-03-10',-3,'sold',NULL,NULL,NULL,1500,NULL);
INSERT INTO "movement" VALUES(33,35,8,1,'2026-03-12',-2,'dispatched',NULL,NULL,1,NULL,NULL);
INSERT INTO "movement" VALUES(34,36,8,1,'2026-03-12',-1,'dispatched',NULL,NULL,2,NULL,NULL);
INSERT INTO "movement" VALUES(35,38,3,1,'2026-03-15',-150000,'consumed',5,19,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(36,38,1,1,'2026-03-15',-700000,'consumed',5,16,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(37,38,2,1,'2026-03-15',-300000,'consumed',5,17,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(38,38,6,1,'2026-03-15',-284224,'consumed',5,18,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(39,38,4,1,'2026-03-15',-10000,'consumed',5,20,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(40,39,12,1,'2026-03-16',10,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(41,39,13,1,'2026-03-16',40000,'yielded',5,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(42,41,12,1,'2026-03-18',-10,'wasted',NULL,NULL,NULL,NULL,'thrown away');
INSERT INTO "movement" VALUES(43,42,14,1,'2026-03-19',2000000,'received',NULL,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(44,45,2,1,'2026-03-22',-20000,'wasted',NULL,NULL,NULL,NULL,'spilt');
INSERT INTO "movement" VALUES(45,46,2,1,'2026-03-22',20000,'wasted',NULL,NULL,NULL,NULL,'takes back entry 45');
INSERT INTO "movement" VALUES(46,48,1,1,'2026-03-23',-700000,'consumed',6,22,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(47,48,2,1,'2026-03-23',-300000,'consumed',6,23,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(48,48,6,1,'2026-03-23',-284224,'consumed',6,24,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(49,48,3,1,'2026-03-23',-142112,'consumed',6,25,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(50,48,4,1,'2026-03-23',-10000,'consumed',6,26,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(51,49,15,1,'2026-03-24',10,'yielded',6,NULL,NULL,NULL,NULL);
INSERT INTO "movement" VALUES(52,49,16,1,'2026-03-24',50000,'yielded',6,NULL,NULL,NULL,NULL);
CREATE TABLE personal (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salted_digest TEXT NOT NULL
);
INSERT INTO "personal" VALUES(1,2,'08388132abc94e9638466ab99c50855bcc0889c3ec5e9a5bab549b03d160e101');
INSERT INTO "personal" VALUES(2,33,'b2789a84a90c3380199db970fc903e8e0df4fe3f1059d68f7f472490b5a474ec');
INSERT INTO "personal" VALUES(3,34,'3fc8ea1e4c753e39f41b6cbc3c771faa27490b45b08fc6e15390c330ea6fbf21');
CREATE TABLE personal_text (
  personal_id INTEGER PRIMARY KEY REFERENCES personal(id),
  salt TEXT NOT NULL, name TEXT, phone TEXT, email TEXT, address TEXT, health TEXT
);
INSERT INTO "personal_text" VALUES(1,'8571d09b09f21a84f0cc8f989ab684f0',NULL,'+353 20 910 0131',NULL,NULL,NULL);
INSERT INTO "personal_text" VALUES(2,'036de3f81beb0d1fa9ab9d175f5051f4',NULL,'+353 20 910 0188',NULL,NULL,NULL);
CREATE TABLE place (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('workshop','stall','retained','returns'))
);
INSERT INTO "place" VALUES(1,1,'workshop','workshop','workshop');
INSERT INTO "place" VALUES(2,1,'retained','retained samples','retained');
INSERT INTO "place" VALUES(3,1,'returns','returns shelf','returns');
INSERT INTO "place" VALUES(4,30,'quay-market','Quay market','stall');
CREATE TABLE plan_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), number INTEGER NOT NULL,
  role TEXT NOT NULL, material_id INTEGER NOT NULL REFERENCES material(id),
  lot_id INTEGER REFERENCES lot(id),     -- the lot proposed: first to expire, first out
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL, stage TEXT NOT NULL
, in_demand INTEGER CHECK (in_demand IN (0,1)));
INSERT INTO "plan_line" VALUES(1,17,1,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(2,17,1,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(3,17,1,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(4,17,1,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(5,17,1,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(6,17,1,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(7,23,2,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(8,23,2,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(9,23,2,3,'liquid',5,6,287246,284374,290118,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(10,23,2,4,'alkali',4,3,143623,142905,143723,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(11,23,2,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(12,23,3,1,'dough',10,NULL,864521,821295,907747,'at trace',NULL);
INSERT INTO "plan_line" VALUES(13,23,3,2,'packaging',7,5,6,6,6,'packing',NULL);
INSERT INTO "plan_line" VALUES(14,23,4,1,'dough',10,NULL,576348,547531,605165,'at trace',NULL);
INSERT INTO "plan_line" VALUES(15,23,4,2,'packaging',7,5,4,4,4,'packing',NULL);
INSERT INTO "plan_line" VALUES(16,37,5,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(17,37,5,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(18,37,5,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(19,37,5,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(20,37,5,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(21,37,5,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(22,47,6,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(23,47,6,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(24,47,6,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(25,47,6,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(26,47,6,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(27,47,6,6,'packaging',7,5,10,10,10,'packing',NULL);
INSERT INTO "plan_line" VALUES(28,50,7,1,'fat',2,1,700000,693000,707000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(29,50,7,2,'fat',3,2,300000,297000,303000,'in the fats',NULL);
INSERT INTO "plan_line" VALUES(30,50,7,3,'liquid',5,6,284224,281382,287066,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(31,50,7,4,'alkali',4,3,142112,141402,142212,'with the lye',NULL);
INSERT INTO "plan_line" VALUES(32,50,7,5,'fragrance',6,4,10000,9500,10500,'at trace',NULL);
INSERT INTO "plan_line" VALUES(33,50,7,6,'packaging',7,5,10,10,10,'packing',NULL);
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
INSERT INTO "reading" VALUES(1,18,1,'2026-02-05',NULL,'lye temperature',49000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(2,18,1,'2026-02-05','10:40','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(3,19,1,'2026-02-05',NULL,'lye temperature',48000,'milli-C',NULL,NULL);
INSERT INTO "reading" VALUES(4,21,1,'2026-02-06',NULL,'observation',NULL,NULL,'cracked along the top',NULL);
INSERT INTO "reading" VALUES(5,26,3,'2026-02-16','09:00','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(6,38,5,'2026-03-15','09:20','poured',NULL,NULL,NULL,NULL);
INSERT INTO "reading" VALUES(7,48,6,'2026-03-23','09:50','poured',NULL,NULL,NULL,NULL);
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
INSERT INTO "recipe_version" VALUES(3,22,1,2,'Morning Lavender','name = "Morning Lavender"
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
