/** What a book is and holds, for the front door of the page. */
import type { BookOverview, Job } from "../contract/index.js";
import { readingDay } from "./workbench.js";
import type { Workbench } from "./workbench.js";

export const bookOverview = async (workbench: Workbench, jobs: readonly Job[]): Promise<BookOverview> => {
  const { store } = workbench;
  const [info, people, stages, views, plants, outings, looks, readings, photos, unsorted, spots, tables, history] = await Promise.all([
    store.info(),
    store.list("person"),
    store.list("stage"),
    store.list("view"),
    store.count("plant"),
    store.count("outing"),
    store.count("look"),
    store.count("reading"),
    store.count("photo"),
    store.count("photo", ["plantId", "leaveOut"]),
    store.count("spot"),
    store.tables(),
    store.history(500),
  ]);
  // Undo takes back the newest edit that stands; redo does again the one that was taken back last, the oldest of the undone.
  const undo = history.find((edit) => edit.state === "done" && edit.undoable);
  const redo = history.findLast((edit) => edit.state === "undone");
  return {
    info,
    folder: store.folder,
    upTo: await readingDay(workbench, undefined),
    people: [...people],
    stages: [...stages],
    views: [...views],
    counts: {
      plants,
      outings,
      looks,
      readings,
      photos,
      unsorted,
      spots,
      tables: tables.length,
    },
    undo: undo?.label ?? null,
    redo: redo?.label ?? null,
    jobs: [...jobs],
  };
};
