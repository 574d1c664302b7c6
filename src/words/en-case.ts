/** Words of the case, the board, the year and side by side: what the evidence says, in sentences. */
export const enCase = {
  // how a plant stands
  "standing.species": "Settled: {taxon}.",
  "standing.cf": "Only {taxon} is left, but it is not settled.",
  "standing.one-of-two": "One of two: {taxa}.",
  "standing.hybrid-question": "None of {count} fits. A hybrid of {taxa}?",
  "standing.some-left": "{count, plural, =3 {Three} =4 {Four} =5 {Five} other {#}} are left: {taxa}.",
  "standing.genus-only": "{genus} sp.: {count} are left.",
  "standing.not-enough-evidence": "Not enough evidence: {count, plural, one {one is} other {# are}} still possible.",
  "standing.no-looks": "No looks yet.",
  "standing.none-fits": "None of {count} fits, and no pair of them does.",
  "word.species": "species",
  "word.cf": "cf. (likely, not proven)",
  "word.one-of-two": "one of two",
  "word.hybrid-question": "hybrid?",
  "word.genus-only": "genus only",
  "word.not-enough-evidence": "not enough evidence",

  // why it stands so
  "why.species":
    "Every rival is out by {witnesses} or more independent witnesses, on evidence of {outings, plural, one {one outing} other {# outings}}.",
  "why.rivals-thin": "Every other is out, but {taxa} by one witness only: {witnesses}. If that one were wrong, the answer would change.",
  "why.too-few-groups":
    "Only {seen, plural, =0 {no independent witness was} one {one independent witness was} other {# independent witnesses were}} seen; the rule asks for {needed}.",
  "why.too-few-outings":
    "The evidence is of {seen, plural, =0 {no outing} one {one outing} other {# outings}}; the rule asks for {needed}.",
  "why.no-deciding-part": "Nothing was seen yet of {parts}.",
  "why.to-decide": "What would decide: {checks}.",
  "why.nothing-decides": "Nothing in the table tells them apart.",
  "why.hybrid": "Each character fits one of the two or the other. That raises a question and proves nothing.",
  "why.none-fits": "Before thinking of a hybrid, check the looks that speak against nearly all.",
  "why.no-looks": "Record an outing, or bring photographs and say what they show.",
  "why.lost": "This year it cannot be decided: {what}.",
  "why.lost-next": "This year it cannot be decided: {what}. Next year before {date}.",
  "lost.mown": "mown on {date}",
  "lost.grazed": "grazed on {date}",
  "lost.flooded": "flooded on {date}",
  "lost.trampled": "trampled on {date}",
  "lost.died": "it died on {date}",
  "lost.other": "nothing was left after {date}",
  "check.lost": "Not this year: {what}.",
  "check.lost-next": "Not this year: {what}. Next year before {date}.",

  // findings
  "finding.states": "{states}",
  "finding.between": "{states}, not decided",
  "finding.absent": "{states}",
  "finding.absent-n": "{states}; none in {n}, so up to {share} of them could still have it",
  "finding.measured": "{notation}",
  "finding.too-few": "{notation}; too few to speak",
  "detail.stems": "{n, plural, one {one stem} other {# stems}}",
  "detail.looked": "{n} looked at",
  "detail.eye": "naked eye",
  "detail.rarely": "fits, but as a rarity of this species",
  "detail.together": "one witness together with {others}",
  "detail.expected": "this species: {expected}",
  "witness.line": "{character}: {finding}",
  "witness.title": "{character}",

  // rivals
  "rival.left": "still possible",
  "rival.left-rarely": "still possible, though only as a rarity in {characters}",
  "rival.left-against": "still possible, though {characters} speaks against it",
  "rival.out": "out by {witnesses}",
  "rival.out-of-range": "not expected here",
  "rival.if-right": "For it to be right, {characters} would have to be wrong{count, plural, one {} other { together}}.",
  "rival.if-right-left": "Nothing would have to be wrong.",

  // what would decide
  "check.how": "{states}; {tool}",
  "check.how-measure": "{tool}; {ranges}",
  "check.disturbs": "part, do not pull or dig",
  "check.now": "now, until {to}",
  "check.window": "can be seen {from} to {to}",
  "check.no-window": "at {stages}",
  "check.why": "would tell {a} from {b}",
  "check.why-usually": "would usually tell {a} from {b}",
  "check.why-many": "would tell apart {pairs} of {all} pairs",
  "tool.eye": "no tool",
  "tool.tape": "a tape",
  "tool.ruler": "a ruler",
  "tool.ruler or photo": "a ruler, or a photograph with the scale card",
  "tool.x10": "lens ×10",
  "tool.x20": "lens ×20",
  "tool.bench lens": "bench lens at home",
  "tool.dissection": "dissection",
  "tool.computed": "computed from two measures",

  // probability, robustness
  "probability.sentence":
    "Probability {leader} for {taxon} among the taxa of this table, {none} for none of these. Computed with assumed misreading rates, not yet fitted to known plants.",
  "probability.nothing": "No probability without a look that speaks.",
  "robust.none": "No single set of looks decides alone.",
  "robust.some": "{n, plural, one {One look} other {# looks}} would have to be wrong to change the answer: {characters}.",
  "robust.never": "No number of single wrong looks changes the answer.",
  "disagree.taxon": "The rule and the probabilities part: the rule leaves {rule}, the probabilities favour {taxon} ({p}).",
  "disagree.none": "The rule and the probabilities part: the rule leaves {rule}, the probabilities favour none of these ({p}).",
  "disagree.rule-none": "no taxon",

  // hybrid question
  "hybrid.pair": "{a} × {b}: what speaks against each alone comes to {sum}{known, select, yes {; a known hybrid} other {}}",
  "hybrid.sign": "{character} is low: {values} {unit}, middle {median}. Well-filled seeds would speak against a hybrid.",
  "hybrid.check-again": "{character}: {finding} speaks against {taxa}",

  // the rule in words
  "rule.text":
    "Settled means: one taxon is left; every rival is out by at least {witnesses} independent witnesses; at least {groups} witnesses were seen, on at least {outings} outings, one of them from {parts}. A taxon is out when what speaks against it sums to {outAt}.",

  // board
  "board.seen": "{character}, {stage}: seen, {what}",
  "board.not-there": "{character}, {stage}: looked for, not there{what, select, none {} other { ({what})}}",
  "board.could-not-tell": "{character}, {stage}: could not tell",
  "board.open": "{character}, {stage}: not looked; can be seen {when}, {tool}",
  "board.open-disturbs": "{character}, {stage}: not looked; can be seen {when}, {tool}; part, do not pull or dig",
  "board.cannot": "{character}, {stage}: cannot be seen in this stage",
  "board.left-out": "{sentence}; left out",
  "board.label-not-there": "not there",
  "board.label-cannot-tell": "?",
  "board.window": "{from} to {to}",
  "board.in-stage": "in this stage",
  "conflict.sentence": "Two looks disagree on {character}: {looks}. Both stand until you decide.",
  "conflict.look": "{states} ({by}, {lens}, {date})",

  // year
  "year.due": "{character}: {why}.",
  "year.summary-settled": "{count, plural, one {One plant is} other {# plants are}} settled: {plants}.",
  "year.summary-open": "{count, plural, one {One plant stays} other {# plants stay}} open: {plants}.",
  "year.summary-hybrid": "{count, plural, one {One plant raises} other {# plants raise}} a hybrid question: {plants}.",
  "year.summary-none": "No plant is followed yet.",
  "year.not-reached": "not reached",
  "year.now": "now",

  // what comes with Stipule
  "starter.willowherbs": "Willowherbs (the invented demo year)",
  "starter.willowherbs-notice": "Ten willowherbs by 28 characters, from memory and rounded: illustrative, not for identification.",
  "starter.irises": "Three irises, measured",
  "starter.irises-notice": "Sepals and petals of 50 flowers of each of three species (Anderson 1935; Fisher 1936). To learn the tool by.",
  "starter.pattern": "Characters of flowering plants, without taxa",
  "starter.pattern-notice": "About 145 general characters as a pattern: take them, leave out what you do not need, add your taxa.",

  // side by side
  "apart.unknown": "nobody says",
  "apart.not-applicable": "has none",
  "apart.rarely": "{usual}, rarely {rarely}",
  "apart.only-rarely": "rarely {rarely}",
  "refused.apart-unknown": "This table has no taxon {taxa}.",
  "refused.apart-count":
    "{count, plural, =0 {No taxon was} one {One taxon was} other {# taxa were}} named; two to six can stand side by side.",
  "refused.apart-remedy": "Name two to six taxon ids of the table, separated by commas.",
  "apart.not-separated": "Nothing in this table surely tells {a} from {b}.",
} as const;
