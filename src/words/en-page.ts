/** Words of published pages: the species account, its description and its notation. Spread into the catalogue. */
export const enPage = {
  // species account: frame
  "page.skip": "Skip to the account",
  "page.contents": "On this page",
  "page.notice": "Please note",
  "page.illustrative": "Illustrative. Not for identification.",
  "page.notSettled":
    "Not settled: none of the plants behind this page counts as settled by the rule of this book. Read it as a working draft.",
  "page.title": "{name}, {vernacular}",
  "page.evidenceMark": "evidence {number}",
  "page.sourceMark": "source {number}",
  "page.openPhoto": "Open the photograph large",
  "page.madeWith": "Made from the evidence of the book “{book}”. This folder needs no network and no program but a browser.",
  "page.backToTop": "Back to the top",

  // species account: sections
  "section.in-one-line": "In one line",
  "section.how-to-be-sure": "How to be sure",
  "section.description": "Description, base to seed",
  "section.own-measures": "Our own measures",
  "section.look-alikes": "Look-alikes",
  "section.the-year": "The year",
  "section.setting": "Setting and range",
  "section.cautions": "Cautions",
  "section.evidence": "Evidence",
  "section.sources": "Sources",
  "section.credits": "Credits and licence",

  // in one line
  "account.restsOn":
    "This account rests on {plants, plural, one {one followed plant} other {# followed plants}}, visited on {outings, plural, one {one day} other {# days}} {span}: {looks, plural, =0 {no looks} one {one look} other {# looks}} and {series, plural, =0 {no measured series} one {one measured series} other {# measured series}}{values, plural, =0 {} one { with one value} other { with # values}}.",
  "account.spanDays": "between {from} and {to}",
  "account.spanDay": "on {from}",
  "account.nothingYet": "Nothing has been recorded for this account yet.",

  // how to be sure
  "steps.lead": "Take the steps in the order of the seasons. Each is an independent witness: another organ or another time of the year.",
  "steps.none": "No independent witness speaks yet. Look at more parts, at more stages.",
  "steps.when": "{stages}",
  "steps.look": "{character}: {finding}.",
  "steps.with": "Use {tool}.",
  "steps.excludes": "It speaks against {taxa}.",
  "steps.error": "Mind: {error}.",

  // tools
  "pageTool.eye": "the naked eye",
  "pageTool.tape": "a tape",
  "pageTool.ruler": "a ruler",
  "pageTool.ruler or photo": "a ruler, or a photograph with a scale",
  "pageTool.x10": "a ×10 lens",
  "pageTool.x20": "a ×20 lens and low side light",
  "pageTool.bench lens": "a bench lens",
  "pageTool.dissection": "a needle and a bench lens",
  "pageTool.computed": "the two measures it is computed from",

  // description
  "description.floras": "Floras",
  "description.ours": "Ours",
  "description.lead":
    "What the sources say stands first; what we saw ourselves stands apart below it. Values in brackets are exceptional; “rarely” is kept as the source has it.",
  "description.none": "The table holds no description of this taxon.",
  "prose.or": "{first} or {second}",
  "prose.and": "{first} and {second}",
  "prose.rarely": "{usual}, rarely {rarely}",
  "prose.onlyRarely": "rarely {rarely}",
  "prose.sentence": "{character}: {finding}.",
  "prose.absent": "looked for and not there",
  "prose.absentOf": "looked for in {n, number} and not there (at 95 % confidence at most {share} % of all have it)",
  "prose.betweenTwo": "{states} (we could not decide between them)",
  "prose.notApplicable": "does not apply",
  "prose.measured": "{range}, n = {n, number}{stems, plural, =0 {} one {, # stem} other {, # stems}}",

  // own measures
  "measures.lead":
    "Only values that count; what was left out stands, with the reason, under Evidence. From ten values on the usual values are the 10 % and 90 % quantiles (linear interpolation, type 7 of Hyndman & Fan 1996), with the smallest and largest in brackets; below ten values we give smallest and largest only.",
  "measures.none": "Nothing was measured for this account.",
  "measures.caption": "Own measures, apart from the values of floras",
  "measures.character": "Character",
  "measures.ours": "Ours",
  "measures.n": "n",
  "measures.stems": "Stems",
  "measures.median": "Median",
  "measures.floras": "Floras",
  "measures.readings": "Readings",
  "measures.unknown": "not known",

  // look-alikes
  "rivals.lead":
    "What had to be excluded, and by what. Witnesses count when they are independent: another organ or another stage; one alone is not enough. The values are those of the sources: “sure” where the two never meet, “usual” where only rare states meet.",
  "rivals.none": "No look-alike has been compared.",
  "rivals.against":
    "{count, plural, =0 {Not excluded: nothing speaks against it yet} one {Spoken against by one witness only} other {Spoken against by # witnesses}}",
  "rivals.left": "Still possible by our evidence.",
  "rivals.sure": "(sure)",
  "rivals.usual": "(usual)",
  "rivals.this": "Here",
  "rivals.that": "There",
  "rivals.caption": "Deciding differences from {name}",
  "rivals.character": "Character",

  // the year
  "year.lead":
    "A stage is known only for the days of our visits. It began some time after the last visit without it and up to the first visit with it.",
  "year.none": "No stage has been recorded.",
  "year.caption": "Stages of the year {years}, from {visits, plural, one {one visit} other {# visits}}",
  "year.stage": "Stage",
  "year.seen": "Seen on",
  "year.began": "Began",
  "year.visits": "Visits with it",
  "year.between": "between {from} and {to}",
  "year.by": "by {to}; no visit before",
  "year.svgTitle": "The year in stages",
  "year.svgDesc": "A strip of twelve months. {rows}",
  "year.svgRow": "{stage}: seen on {dates}.",
  "year.legend":
    "Filled dot: a visit that saw the stage. Thick line: between the first and the last such visit. Dashed line: the stage began in this time.",

  // setting
  "setting.found": "Found at: {settings}.",
  "setting.status": "Status: {status}.",
  "setting.band": "Altitude: {band}.",
  "setting.flowers": "Flowers {months}, as the sources say.",
  "setting.spot": "{plant}: {spot}",
  "setting.placeNamed": "{name}, ",
  "setting.point": "{name}latitude {lat}, longitude {lon} (WGS 84), within about {uncertainty}.",
  "setting.pointUnknown": "{name}latitude {lat}, longitude {lon} (WGS 84), uncertainty not recorded.",
  "setting.unknown": "{name}no coordinates recorded.",
  "setting.withheld": "The place is withheld.",
  "setting.withheldText": "Locality text and exact dates are withheld, too.",
  "setting.generalised":
    "Coordinates rounded to the middle of a {grid}-degree grid cell for protection (never shifted at random); a finer place is kept by the author.",
  "setting.metres": "{m, number} m",
  "setting.kilometres": "{km} km",

  // cautions
  "cautions.study": "This page is for study. It says nothing of eating or healing; taste no part of a wild plant because of it.",
  "cautions.law": "Ask whoever owns or keeps the land. Local law decides what may be picked or dug; photograph and measure in place first.",
  "cautions.disturbs": "Looking at {parts} can harm the plant: part the litter by hand, do not dig.",
  "cautions.sensitive": "The place is sensitive. Please do not search for it.",

  // evidence
  "evidence.lead": "Every number and every word of finding on this page leads here.",
  "evidence.plant": "Plant {number}",
  "evidence.plantNamed": "Plant {number}, “{nick}”",
  "evidence.stemCount": "about {count, number} stems",
  "evidence.caption": "Looks and readings at plant {number}",
  "evidence.no": "No.",
  "evidence.date": "Date",
  "evidence.what": "What",
  "evidence.found": "Found",
  "evidence.how": "How",
  "evidence.leftOut": "Left out: {why}",
  "evidence.lens": "{lens}",
  "evidence.nakedEye": "naked eye",
  "evidence.n": "n = {n, number}",
  "evidence.stems": "{stems, plural, one {# stem} other {# stems}}",
  "evidence.plusMinus": "± {error} {unit}",
  "evidence.by": "by {by}",
  "evidence.notThere": "looked, not there",
  "evidence.couldNotTell": "could not tell",
  "evidence.notLooked": "not looked",
  "evidence.betweenTwo": "between two",
  "evidence.photographs": "photographs {marks}",
  "evidence.slips": "Determination slips",
  "evidence.slip": "{role} {by}, {date}: {why}",
  "evidence.overturned": "later overturned",
  "evidence.vouchers": "Vouchers",
  "evidence.voucher": "{number}, {date}: {parts}; kept: {kept}.",
  "evidence.voucherTaken": "{taken, number} of about {patch, number} stems taken.",
  "evidence.plates": "Photographs",
  "evidence.figure": "Figure {number}",
  "evidence.scale": "With a scale in the picture.",
  "evidence.noScale": "No scale in the picture.",
  "evidence.noAlt": "A photograph without a description.",
  "evidence.photoOf": "{view}, {stage}",

  // results of a case, as a page says them
  "result.species": "Settled as {name}.",
  "result.species-open": "Only {name} is left, but not settled.",
  "result.cf": "Probably {name}; not settled.",
  "result.one-of-two": "One of two: {name}.",
  "result.hybrid-question": "No species fits. Perhaps a hybrid: {name}.",
  "result.genus-only": "Known to the genus only; still possible: {name}.",
  "result.not-enough-evidence": "Not enough evidence for a name.",

  // sources and credits
  "sources.table": "Values of “{title}”",
  "sources.none": "The table names no published source.",
  "sources.noticeOf": "{notice}",
  "credits.author": "Text: {author}.",
  "credits.observers": "Observed by {people}.",
  "credits.photos": "Photographs: {credit}{licence, select, none {} other {, {licence}}}.",
  "credits.photosUnnamed": "The photographs name no author.",
  "credits.licence": "Licence of this page: {licence}.",
  "credits.noLicence": "No licence has been given: all rights stay with the author.",
  "credits.fonts": "Typefaces: Source Serif 4 and Source Sans 3, SIL Open Font License 1.1 (the licence lies in the folder fonts).",

  // the folder's README
  "folder.readme":
    "{title}\n\nThis folder is one published species account. Open index.html in any browser; it needs no network.\n\nindex.html   the page, to be read and printed\npage.css     how it looks on screen and on paper\ndata.json    the same content for machines: findings, values, dates, sources\nimages/      the photographs, with everything hidden inside them removed\nfonts/       the typefaces and their licence\n\n{notice}\n\nPlaces are given as coarsely as the author allows. Nothing finer lies anywhere in this folder.\n",

  // what is held back from a publication
  "heldBack.place": "{plant}: coordinates rounded to the middle of a {grid}-degree cell.",
  "heldBack.placeWithheld": "{plant}: the place is withheld.",
  "heldBack.sensitive": "{plant}: name of the spot, nickname, notes and exact days are withheld, because the place is sensitive.",
  "heldBack.placePhotos":
    "{plant}: {count, plural, one {one photograph} other {# photographs}} of the place, or of which nobody has said what it shows, held back; a landmark may give it away.",
  "heldBack.leftOut":
    "{count, plural, one {One photograph is left out} other {# photographs are left out}} for a reason noted in the book.",
  "heldBack.moreOfView": "{count, plural, one {One further photograph} other {# further photographs}} of views and stages already shown.",
  "heldBack.metadata": "Everything hidden inside the photographs (place, camera, serial numbers) is removed.",
  "heldBack.unreadable": "{fileName}: the photograph cannot be read and was held back.",
  "publish.leak":
    "Nothing was published: {path} would give away the place of {spot}. Look for its coordinates or its name in notes, captions and slips.",
  "publish.leakRemedy": "Take the place out of that text, or make its class finer under Places.",
  "publish.noTaxon": "The table “{table}” holds no taxon {id}.",
  "publish.noPlant": "No plant stands for {name} yet.",
  "pdf.made": "Printed to {paper} with the Chromium at {program}.",
  "pdf.noProgram":
    "No Chromium was found for the PDF. Open index.html and print it from your browser, or set STIPULE_CHROMIUM to the program.",
  "pdf.failed": "The PDF could not be made ({reason}). The page itself is there: print it from your browser.",
  "pdf.notWanted": "No PDF was asked for.",

  // what is asked about a typed series
  "series.anotherUnit": "{value} {unit} among values near {middle}: {perhaps, select, none {a slip} other {{perhaps}}}?",
  "series.farFromSeries": "{value} {unit} stands far from the others (near {middle}). Keep it?",
  "series.outsideTable": "{value} {unit} lies outside what the table says ({low}–{high}). Keep it?",
  "series.comma": "“{written}”: one value with a decimal comma, or two values?",
} as const;
