/** The front door of the use cases: an explicit list of names. Each takes a workbench; effects come with it or as arguments. */
export { readingDay } from "./workbench.js";
export type { Workbench } from "./workbench.js";

export { benchOn, bookFolderOf, demoFolder, homeOfBooks, localDate, openWorkbench } from "./open-workbench.js";
export type { OpenBench } from "./open-workbench.js";
export { beginEmptyBook, openOrBeginBook, restoreBook } from "./begin-book.js";
export { openDemo } from "./open-demo.js";
export { demoPhotoPath, startDemoPhotos } from "./demo-photos-job.js";
export { sortDemoPhotos } from "./sort-demo-photos.js";
export { dryRun } from "./dry-run.js";
export type { DryRun } from "./dry-run.js";

// saying no
export { isTaggedError, NotInBook, notInBook, Refused, Unanswered } from "./app-error.js";
export type { FieldFault, OpenQuestion } from "./app-error.js";

// the book
export { bookOverview } from "./book-overview.js";
export { createJobs } from "./jobs.js";
export type { JobControl, Jobs, JobWork } from "./jobs.js";

// plants and the year
export { plantList } from "./plant-list.js";
export { caseView, plantCase } from "./case-view.js";
export { plantPage } from "./plant-page.js";
export { yearView } from "./year-view.js";
export { apartView, taxaApart } from "./apart-view.js";

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
export { derivativeMaker } from "./ensure-derivative.js";
export { takeTableCsv, tableCsv } from "./table-csv.js";
export { bringFolder } from "./bring-folder.js";
export type { FolderReport } from "./bring-folder.js";
export { bringPhotos, refusalText } from "./bring-photos.js";
export type { BringEffects, BringReport, PhotoSource } from "./bring-photos.js";
export { remakeDerivatives } from "./remake-derivatives.js";
export type { RemakeReport } from "./remake-derivatives.js";
export { bringFolderJob, lastBrought } from "./bring-folder-job.js";
export { applyClockShift, proposeClockShifts } from "./place-photos.js";
export { changeSheets, getSheet, listSheets } from "./sheets.js";

// what comes with Stipule
export { starterTables, starterVocabulary } from "./starter-kit.js";

// on plain files
export { standOnFiles, tableFromCsv } from "./stand-on-files.js";
export type { FileStanding, StandReport } from "./stand-on-files.js";

// tables
export { getTable, keepTable, removeTable, summaryOf, takeStarterTable } from "./tables.js";
export type { StarterTable } from "./tables.js";

// pages
export { draftPage, listPages, publishPage } from "./publish-page.js";

// the demo's photographs
export { demoPhotoFolder } from "./demo/demo-photo-folder.js";
export { demoPhotoEdition, drawDemoPhotos } from "./demo/draw-demo-photos.js";
export type { DemoPhotoFolder, DemoPhotoOptions, DemoPhotosMade, DemoPhotoTruth } from "./demo/draw-demo-photos.js";

// species pages
export { accountSource } from "./page-account.js";
export type { AccountSource, ChosenPhoto } from "./page-account.js";
export { firstLeak, pageFolder } from "./publish-page.js";
export type { PublishedPage, PublishEffects } from "./publish-page.js";
export { findChromium, printPdf } from "./print-pdf.js";
export type { Paper, PrintProblem } from "./print-pdf.js";
