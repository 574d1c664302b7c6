/** The usual reasons for leaving something out, so that the usual case is one key. Common practice, no source. */
import { say } from "../../../words/index.js";

export const sheetReasons = (): readonly string[] => [
  say("sort.reason.blurred"),
  say("sort.reason.copy"),
  say("sort.reason.other-plant"),
  say("sort.reason.no-plant"),
  say("sort.reason.dark"),
];
