"""Words in English, German and French that make a soap a medicine, a sunscreen, a biocide or a green claim.

The English ones follow MHRA Guidance Note 8, section 10 (read) and the advertising code's advice (read); the German and
French ones say the same and are from memory, unverified. Whole words alone are questioned, so each ending stands here.
"""

from ledger.domain.label.claim import Claim

_E = r"(?:e|er|es|en|em)?"  # the endings of a German adjective
_MEDICINE = "Directive 2001/83/EC, Art 1(2); MHRA Guidance Note 8, section 10; US Food, Drug, and Cosmetic Act"
_OURS = "English words read in part, German and French from memory, unverified"
MORE_CLAIMS = (
    Claim(
        (
            r"ekzem(?:e|en|s)?", r"eczémas?", r"neurodermitis", r"schuppenflechte", r"akne", r"acnés?",
            r"(?:haut|nagel|fu(?:ß|ss))pilz(?:e|en)?", r"mycoses?", r"fungal", r"fungus", r"dermatites?",
            r"wound(?:s|ed)?", r"wunden?", r"plaies?", r"infections?", r"infektion(?:en)?",
            r"inflammations?", r"entz(?:ü|ue)ndung(?:en)?", r"pain(?:s|ful)?", r"schmerz(?:en|es)?", r"douleurs?",
            r"arthrit(?:is|e)", r"juckreiz", r"itch(?:es|ing|y)?", r"d[ée]mangeaisons?",
        ),
        "To name an illness or a pain is to say that the soap does something about it, as a medicine would.",
        _MEDICINE, _OURS,
    ),
    Claim(
        (
            r"reliev(?:e|es|ed|ing)", r"prevent(?:s|ed|ing|ion|ive)?", r"fight(?:s|ing)?", r"restor(?:e|es|ed|ing)",
            r"heilt", r"heilen", rf"heilend{_E}", r"heilsam(?:e|er|es)?", r"heil(?:kraft|wirkung|seife)",
            r"behandel(?:t|n)", r"behandlung(?:en)?", r"linder(?:t|n|nd|ung)", r"beugt vor", rf"vorbeugend{_E}",
            r"bek(?:ä|ae)mpf(?:t|en)", r"therapien?", rf"therapeutisch{_E}", rf"medizinisch{_E}",
            r"gu[ée]ri(?:t|r|son)", r"soign(?:e|er|ent)", r"traite(?:r|ment|ments)?", r"soulag(?:e|er|ent)",
            r"pr[ée]vient", r"combat(?:s|tre)?", r"th[ée]rapeutiques?", r"m[ée]dicina(?:l|le|les|ux)",
        ),
        "Said of an illness or what ails the skin it makes the soap a medicine; said of anything else it may stand.",
        _MEDICINE, _OURS,
    ),
    Claim(
        (
            r"regenerat(?:e|es|ing|ion)", r"regeneriert", rf"regenerierend{_E}", r"r[ée]g[ée]n[èe]re",
            r"boosts? circulation", r"stimulates? (?:the )?(?:circulation|growth)",
            r"collagen", r"kollagen", r"collag[èe]ne",
            r"anti~inflammator(?:y|ies)", rf"entz(?:ü|ue)ndungshemmend{_E}", r"anti~inflammatoires?",
            rf"durchblutungsf(?:ö|oe)rdernd{_E}", r"stimule la circulation", r"entgift(?:et|ung)", r"dé~tox",
        ),
        "A claim to change how the body works makes the soap a medicine by its function, in the United States a drug.",
        "Directive 2001/83/EC, Art 1(2); US Food, Drug, and Cosmetic Act, what is a drug", _OURS,
    ),
    Claim(
        (
            r"spf\s*[0-9]*", r"lsf\s*[0-9]*", r"fps\s*[0-9]*", r"sun~screens?", r"sun (?:protection|block)",
            r"sunburns?",
            r"sonnenschutz", r"sonnenbrand", r"(?:protection|[ée]cran) solaire", r"coups? de soleil",
            r"(?:uv|uva|uvb)~(?:filters?|protection|schutz)", r"anti~uv", r"filtres? uv",
        ),
        "A promise against the sun is that of a sunscreen, with its tests and warnings, which a soap cannot keep.",
        "Recommendation 2006/647/EC; in the United States a drug", "from memory, unverified",
    ),
    Claim(
        (
            r"kill(?:s|ing)? (?:\w+ )?(?:bacteria|virus(?:es)?|fungi|mites)",
            rf"anti~bakteriell{_E}", rf"anti~mikrobiell{_E}", rf"anti~septisch{_E}",
            r"t(?:ö|oe)tet (?:\w+ )?(?:keime|bakterien)",
            rf"keimt(?:ö|oe)tend{_E}", r"desinfi(?:ziert|zierend)", r"desinfektion",
            r"anti~bact[ée]rien(?:s|ne|nes)?", r"anti~microbiens?", r"antiseptiques?",
            r"tue(?:nt)? les (?:germes|bact[ée]ries)",
            r"d[ée]sinfect(?:e|er|ant|ants)", r"anti~fongiques?", r"repel(?:s|lent|lents)?", r"anti~moustiques?",
            rf"(?:m(?:ü|ue)cken|insekten)abweisend{_E}",
        ),
        "A claim against germs, insects or mould makes the soap a biocide or a medicine, with a permission of its own.",
        "Regulation (EU) No 528/2012, Art 3; US rules for antiseptic drugs", "from memory, unverified",
    ),
    Claim(
        (
            r"eco", r"eco~friendly", r"environment(?:ally)?~friendly", r"(?:planet|earth|nature|ocean)~friendly",
            r"green(?! (?:clays?|teas?|apples?|mint|olives?|mica))",
            r"(?:climate|carbon) (?:friendly|neutral|positive|negative)",
            r"bio~degradable", r"bio~based", r"sustainab(?:le|ly|ility)", r"zero waste", r"plastic~free", r"reef safe",
            rf"umwelt(?:freundlich|schonend){_E}", rf"(?:ö|oe)kologisch{_E}", r"(?:ö|oe)ko", rf"nachhaltig{_E}",
            r"nachhaltigkeit", rf"klima(?:neutral|freundlich){_E}", rf"biologisch abbaubar{_E}",
            rf"gr(?:ü|ue)n{_E}(?! (?:tonerde|tee|apfel|minze))",
            r"[ée]cologiques?", r"respectueu(?:x|se|ses) de (?:l['’]environnement|la nature)", r"durables?",
            r"neutres? en carbone", r"bio~d[ée]gradables?", r"[ée]co~responsables?",
            r"(?<!argile\s)(?<!th[ée]\s)verte?s?",
        ),
        "A general green claim needs recognised excellent performance, or says of what and by what proof; none is "
        "true of a part alone or by offsetting. France forbids some of these words on packs (from memory).",
        "Directive (EU) 2024/825, applied from 27 September 2026; Regulation (EU) No 655/2013",
        "read in a secondary text",
    ),
)  # fmt: skip
