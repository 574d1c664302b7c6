/** Handlers of photographs: the sheets, bringing, the clock. */
import {
  applyClockShift,
  bringFolderJob,
  bringPhotos,
  changeSheets,
  getSheet,
  lastBrought,
  listSheets,
  proposeClockShifts,
} from "../../app/index.js";
import type { Handlers } from "../handlers.js";

export const photoHandlers = {
  "GET /api/sheets": async (_input, { workbench }) => ({ sheets: await listSheets(workbench) }),
  "GET /api/sheets/{photoId}": ({ params }, { workbench }) => getSheet(workbench, params.photoId),
  "PATCH /api/sheets": ({ body }, { workbench }) => changeSheets(workbench, body.ids, body.change),
  "PUT /api/bring/{fileName}": async ({ params, file }, { workbench, bench }) => {
    const effects = { store: workbench.store, workers: bench.workers(), now: bench.now };
    const { files } = await bringPhotos([{ name: params.fileName, open: () => file.bytes }], effects);
    // A file that was cut short on its way is the request's fault, not the photograph's.
    const failure = file.failure();
    if (failure !== undefined) throw failure;
    const [outcome] = files;
    if (outcome === undefined) throw new TypeError("bringPhotos requires one outcome for one source: got none");
    return outcome;
  },
  "POST /api/bring/folder": async ({ body }, { bench, jobs }) => bringFolderJob(bench, jobs, body.folder),
  "GET /api/bring/outcomes": async (_input, { jobs }) => ({ files: lastBrought(jobs) }),
  "GET /api/clock": async (_input, { workbench }) => ({ proposals: await proposeClockShifts(workbench.store) }),
  "POST /api/clock": ({ body }, { workbench }) => applyClockShift(workbench.store, body),
} satisfies Partial<Handlers>;
