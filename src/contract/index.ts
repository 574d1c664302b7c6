/**
 * What server and page say to each other. The page imports types only (`import type { Api }`), so no schema is shipped to the
 * browser.
 */
import { bookRoutes } from "./book.js";
import { pageRoutes } from "./pages.js";
import { photoRoutes } from "./photos.js";
import { plantRoutes } from "./plants.js";
import { recordRoutes } from "./records.js";
import { tableRoutes } from "./tables.js";

/** Every route, by method and path. */
export const api = { ...bookRoutes, ...plantRoutes, ...recordRoutes, ...photoRoutes, ...tableRoutes, ...pageRoutes } as const;
export type Api = typeof api;

export { route } from "./route.js";
export type { Route } from "./route.js";
export { problemDetails } from "./problem.js";
export type { ProblemDetails } from "./problem.js";
export type { Job, ProofLinks, Spans, TaxonName } from "./common.js";
export type { BookOverview, YearView } from "./book.js";
export type { ApartView, Board, BoardCell, CaseView, CheckLine, PlantCard, PlantPage, RivalLine, Standing, WitnessLine } from "./plants.js";
export type { BroughtFile, ClockProposal, SheetChange, SheetRow } from "./photos.js";
export type { TableReport, TableSummaryView } from "./tables.js";
export type { PageCard, PageDraft, Publication } from "./pages.js";
