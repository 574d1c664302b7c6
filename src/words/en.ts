import { enPage } from "./en-page.js";
import { enCase } from "./en-case.js";
import { enCli } from "./en-cli.js";
import { enDesk } from "./en-desk.js";
import { enPhotos } from "./en-photos.js";
import { enWeb } from "./en-web.js";
import { enWork } from "./en-work.js";

/**
 * The one catalogue of words people read, in English: ICU messages (Unicode MessageFormat 1) under keys
 * "subject.what". One flat object, grouped by subject; add keys to the group they belong to, or a new group at the end.
 * A message is a whole sentence where it can be one, so that other languages may order it anew.
 */
export const en = {
  ...enWeb,
  // the program
  "app.name": "Stipule",
  "words.missing": "[missing word: {key}]",

  ...enCase,
  ...enDesk,
  ...enCli,
  ...enPage,
  ...enPhotos,
  ...enWork,
} as const;
