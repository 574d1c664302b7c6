/** The front door of the use cases: an explicit list of names. Each takes a workbench; effects come with it or as arguments. */
export { readingDay } from "./workbench.js";
export type { Workbench } from "./workbench.js";

// saying no
export { NotInBook, notInBook, Refused, Unanswered } from "./app-error.js";
export type { FieldFault, OpenQuestion } from "./app-error.js";

// the book
export { bookOverview } from "./book-overview.js";
export { createJobs } from "./jobs.js";
export type { JobControl, Jobs, JobWork } from "./jobs.js";

// records
export { removeRecord, writeInfo, writeRecord } from "./write-record.js";
export type { WrittenKind } from "./record-checks.js";
export { keepReading } from "./keep-reading.js";
export { keepSlip } from "./keep-slip.js";
export { keepVoucher } from "./keep-voucher.js";
export { mayCollect, oneInTwenty } from "./may-collect.js";
export type { CollectAnswer } from "./may-collect.js";
export { listOutings, listPlaces } from "./places-and-outings.js";
export type { OutingRow } from "./places-and-outings.js";

// photographs
export { changeSheets, getSheet, listSheets } from "./sheets.js";

// tables
export { getTable, keepTable, removeTable, summaryOf, takeStarterTable } from "./tables.js";
export type { StarterTable } from "./tables.js";
