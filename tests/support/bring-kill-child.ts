/**
 * The process that is killed while it brings a folder. Says each file's fate on its standard output once it is sure, one
 * JSON object a line. Arguments: the book's folder, the folder to bring.
 */
import { writeSync } from "node:fs";
import { bringFolder } from "../../src/app/bring-folder.js";
import { openPhotoWorkers } from "../../src/media/index.js";
import { openBook } from "../../src/store/index.js";
import { fixedClock } from "./store-sample.js";

const [, , book, from] = process.argv;
if (book === undefined || from === undefined) throw new Error("bring-kill-child requires a book and a folder");
const store = await openBook(book, { clock: fixedClock });
const workers = openPhotoWorkers({ threads: 2 });
// Straight to the descriptor: nothing that was said may be lost in a buffer when the process is killed.
const onOutcome = (outcome: object): void => void writeSync(1, `${JSON.stringify(outcome)}\n`);
await bringFolder(from, { store, workers, now: fixedClock, onOutcome });
await workers.close();
await store.close();
