/**
 * Words of the desk: what use cases refuse and why, labels of edits, problems of the local server, the command line.
 * Part of the one catalogue in en.ts.
 */
export const enDesk = {
  // kinds of records, as they stand in sentences
  "kind.person": "person",
  "kind.stage": "stage",
  "kind.view": "view",
  "kind.spot": "spot",
  "kind.permission": "permission",
  "kind.plant": "plant",
  "kind.happening": "happening",
  "kind.outing": "outing",
  "kind.stop": "stop",
  "kind.stageRecord": "stage record",
  "kind.look": "look",
  "kind.reading": "series of readings",
  "kind.slip": "slip",
  "kind.voucher": "voucher",
  "kind.photo": "photograph",
  "kind.account": "account",
  "kind.table": "reference table",
  "kind.taxon": "taxon",
  "kind.book": "book",
  "kind.job": "piece of work",

  // labels of edits
  "edit.keep": "Keep {kind} {name}",
  "edit.change": "Change {kind} {name}",
  "edit.remove": "Remove {kind} {name}",
  "edit.nothing": "Already so; nothing changed",
  "edit.info": "Change what is said of the book",
  "edit.sheets": "Say something of {count, plural, one {one sheet} other {# sheets}}",
  "edit.table": "Take in table {title}",
  "edit.table-remove": "Remove table {title}",
  "edit.demo-sort": "Sort the sheets of the demo year as its keeper did",
  "edit.demo-shift": "Shift the camera by {seconds} s and place by the stops",

  // refusals of the use cases
  "refused.not-in-book": "There is no {kind} “{id}” in this book.",
  "refused.record": "This {kind} was not kept: {count, plural, one {one thing is wrong} other {# things are wrong}}. {first}",
  "refused.remedy": "Correct it and send it again. Nothing else was touched.",
  "refused.book-is-sound": "The book in {folder} opens; there is nothing to restore. What was written after its last backup would go.",
  "refused.book-is-sound-remedy": "To go back to the last backup all the same, add --even-if-sound; the present files are kept beside.",
  "refused.kept": "What was in the book before is unchanged.",
  "refused.id": "The address says “{path}”, the record says “{id}”. They must be the same.",
  "refused.unknown": "There is no {kind} “{id}” in this book.",
  "refused.unknown-in-table": "Table “{table}” has no {kind} “{id}”. It has: {has}.",
  "refused.date-of-outing": "Outing {outing} was on {date}; write that date.",
  "refused.stop-day": "Outing {outing} was on {date}; a stop of it begins on that day.",
  "refused.stop-order": "A stop ends after it begins: {from} to {to}.",
  "refused.dates-order": "The permission ends ({to}) before it begins ({from}).",
  "refused.zone": "“{zone}” is no time zone of the IANA list; write one such as Europe/Vienna.",
  "refused.sensitive-as-measured":
    "The place is said to be sensitive and would be published as measured. Choose a coarser grid, or say that it is not sensitive.",
  "refused.marked": "{marked} marked stems are more than the {stems} stems of the patch.",
  "refused.plant-table": "The plant has looks or readings in {characters}, which table “{table}” does not have.",
  "refused.stage-why": "Without a stage, say why: not reached, nothing stood there.",
  "refused.look-of-measure": "“{character}” is measured or counted; write readings, not a look.",
  "refused.reading-of-states": "“{character}” has named states; write a look, not readings.",
  "refused.reading-of-ratio": "“{character}” is computed from the readings of two other characters and is not written itself.",
  "refused.state": "“{character}” has no state “{state}”. It has: {has}.",
  "refused.only-if": "“{character}” exists only where “{other}” is {states}; here {found} was seen.",
  "refused.unit": "“{character}” is kept in {unit}; the series says {given}. Convert the values and send them in {unit}.",
  "refused.whole-number": "“{character}” is counted; {value} is no whole number.",
  "refused.negative": "“{character}” cannot be {value}.",
  "refused.slip-stands": "A slip is never written over. Write a new one, and mark this one as overturned.",
  "refused.slip-own-reason":
    "The case leaves no taxon for {nick}, or not this one. Put a question mark to the name, or give a reason of your own in a sentence.",
  "refused.slip-remedy": "Choose “?” beside the name, or write the reason as a sentence.",
  "refused.voucher": "Not to be collected: {reasons}",
  "refused.voucher-remedy": "Take photographs, or note it as refused with its reason.",
  "refused.table-in-use": "Table “{title}” is used by {plants}. Give them another table first.",
  "refused.starter": "There is no table “{key}” that comes with Stipule. There are: {has}.",
  "refused.sheets": "Some sheets are not in this book: {ids}. Nothing was changed.",
  "refused.folder": "There is no folder “{folder}” on this machine, or it cannot be read.",
  "refused.taxa-count": "Choose two to six taxa; {count} were named.",

  // questions before a series is kept
  "question.detail": "{count, plural, one {One question} other {# questions}} on the readings of “{character}” before they are kept.",
  "question.remedy": "Correct the values, or say that they are right as they stand.",
  "question.another-unit":
    "{values} {unit} {against, select, series {among others about {middle} {unit}} other {where the table expects about {middle} {unit}}}: {perhaps, select, none {a slip of the decimal point?} cm {centimetres?} mm {millimetres?} in {inches?} other {{perhaps}?}}",
  "question.far-from-series": "{value} {unit} stands far from the others, about {middle} {unit}. Is it right?",
  "question.outside-table": "{values} {unit} lie outside what any taxon of the table has ({low}–{high} {unit}). Are they right?",
  "question.comma": "“{written}”: one value with a decimal comma, or two values?",

  // may it be collected
  "collect.one-in-twenty":
    "{stems} stems stand in the patch; one in twenty allows {allowed} (Wagner 1995, Botanical Electronic News 180){before, plural, =0 {, and} one {, one was taken this year already, and} other {, # were taken this year already, and}} {wanted} {wanted, plural, one {was} other {were}} wanted.",
  "collect.count-unknown": "Count the stems of the patch first: without a count one in twenty allows none.",
  "collect.forbidden": "The permission by {by} ({from} to {to}) forbids: {forbids}.",
  "collect.no-permission-day": "No permission for this spot holds on {date}; the last one ended {to}.",
  "collect.no-permission": "No permission is written down for this spot. Ask the owner or warden, and keep to the local rules.",
  "collect.allowed":
    "Up to {allowed, plural, one {one stem} other {# stems}} of {stems} may be taken by the 1-in-20 rule{before, plural, =0 {} one {, besides the one taken this year} other {, besides the # taken this year}}.",

  // the demo year
  "demo.begin": "Begin the demo book",
  "demo.lay-down": "Lay down the year with the willowherbs of Hobbin Carr",

  // long pieces of work
  "job.cancelled": "Stopped; what was finished stays.",
  "job.failed": "It stopped: {why}",
  "job.demo": "Draw and bring the photographs of the demo year",
  "job.demo-done": "{count} photographs of the demo year are here; the last outing waits in the trays.",
  "job.bring": "Bring {folder}",
  "job.bring-done": "{fresh} new, {here} already here, {refused} refused",

  // problems of the local server
  "problem.title.not-found": "Not in this book",
  "problem.title.refused": "Not accepted",
  "problem.title.questions": "Questions first",
  "problem.title.invalid": "The request is not as it should be",
  "problem.title.forbidden": "Not from here",
  "problem.title.too-large": "Too large",
  "problem.title.media": "Another kind of content was expected",
  "problem.title.method": "Not done that way",
  "problem.title.book": "The book cannot be used",
  "problem.title.internal": "Something went wrong inside",
  "problem.no-route": "Nothing is at {path}.",
  "problem.method": "{path} does not take {method}.",
  "problem.invalid": "{count, plural, one {One field is not as it should be} other {# fields are not as they should be}}: {first}",
  "problem.invalid-json": "The body is no JSON: {why}.",
  "problem.media": "Send the body as {wanted}; it came as {given}.",
  "problem.host": "This server answers only under its own address on this machine.",
  "problem.origin": "This server answers only its own pages.",
  "problem.no-origin": "A request that changes something must come from the page itself or carry the header X-Stipule: 1.",
  "problem.too-large": "The body is larger than {limit}.",
  "problem.cut-short": "“{file}” was cut short: {expected} bytes were announced, {got} came. It was not kept; send it again.",
  "problem.no-length": "The request does not say how long the file is; send a Content-Length.",
  "problem.internal":
    "An error happened inside; it is in the log under {instance}. Your input was not kept by the server; what was in the book is safe.",
  "problem.page": "Kind of problem: {code}",
  "problem.page-text": "Stipule's replies name this kind of problem by its code. The reply itself says what happened and what to do.",
  "problem.not-published": "Nothing has been published under this address yet.",
  "problem.image-unreadable": "This photograph cannot be drawn smaller: {why}. The original is safe.",
  "problem.range": "The part of the file that was asked for does not exist.",

  // the page shown when the web app was not built
  "web.not-built-title": "The page has not been built yet",
  "web.not-built":
    "Stop the server and run `npm start`, which builds it, or run `npm run build`. The data is safe, and the interface under /api answers.",
} as const;
