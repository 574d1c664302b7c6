import { enDesk } from "./en-desk.js";

/**
 * The one catalogue of words people read, in English: ICU messages (Unicode MessageFormat 1) under keys
 * "subject.what". One flat object, grouped by subject; add keys to the group they belong to, or a new group at the end.
 * A message is a whole sentence where it can be one, so that other languages may order it anew.
 */
export const en = {
  // the program
  "app.name": "Stipule",
  "words.missing": "[missing word: {key}]",

  // species account: the published page
  "page.skip": "Skip to the account",
  "page.contents": "On this page",
  "page.notice": "Please note",
  ...enDesk,
} as const;
