import { useMemo } from "react";
import type { SheetRow } from "../../contract/index.js";
import { useApi } from "../api.js";
import { describeSheet } from "./photo-viewer.js";

/** The sheets of the book by id, and what each shows in words. */
export const useSheetWords = (): { readonly sheets: ReadonlyMap<string, SheetRow>; readonly describe: (photoId: string) => string } => {
  const { data: all } = useApi("GET /api/sheets", {});
  const { data: book } = useApi("GET /api/book", {});
  const { data: list } = useApi("GET /api/plants", {});
  return useMemo(() => {
    const sheets = new Map<string, SheetRow>(all?.sheets.map((sheet) => [sheet.id, sheet]));
    const views = new Map<string, string>(book?.views.map((view) => [view.id, view.name]));
    const stages = new Map<string, string>(book?.stages.map((stage) => [stage.id, stage.name]));
    const plants = new Map<string, string>(list?.plants.map(({ plant }) => [plant.id, plant.nick]));
    const names = { plant: (id: string) => plants.get(id), view: (id: string) => views.get(id), stage: (id: string) => stages.get(id) };
    return { sheets, describe: (photoId: string) => describeSheet(sheets.get(photoId), names) };
  }, [all, book, list]);
};
