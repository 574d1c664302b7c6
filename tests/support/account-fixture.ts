/** The demo year as a book that can only be read, with its photographs listed but not drawn; for pages made from it. */
import { createHash } from "node:crypto";
import { bookContent, photo, type BookContent, type Photo } from "../../src/engine/index.js";
import type { BookStore, RecordKind, RecordOf } from "../../src/store/index.js";
import { demoYear } from "./demo-year.js";

/** An id as a photograph would have it, from any text. */
export const photoIdOf = (text: string): Photo["id"] => createHash("sha256").update(text).digest("hex") as Photo["id"];

/** The demo's content with a record for every photograph, as they stand after sorting. */
export const demoContentWithPhotos = (): BookContent => {
  const { content, photos } = demoYear();
  return bookContent.parse({
    ...content,
    outings: content.outings.map((outing) => ({ ...outing, cameraShiftS: 440 })),
    photos: photos.map((demo) =>
      photo.parse({
        id: photoIdOf(demo.id),
        fileName: demo.file,
        format: "jpeg",
        bytes: 1,
        widthPx: 2400,
        heightPx: 1800,
        orientation: 1,
        takenCamera: demo.takenCamera,
        broughtAt: "2022-11-30T00:00:00Z",
        lat: content.spots.find((spot) => spot.id === content.plants.find((plant) => plant.id === demo.plant)?.spotId)?.lat ?? null,
        lon: content.spots.find((spot) => spot.id === content.plants.find((plant) => plant.id === demo.plant)?.spotId)?.lon ?? null,
        outingId: demo.visit,
        plantId: demo.plant,
        stageId: demo.stage,
        viewId: demo.view,
        placedBy: "clock",
        leaveOut: demo.trap ?? null,
      }),
    ),
  });
};

const lists: { readonly [K in RecordKind]: (content: BookContent) => readonly RecordOf[K][] } = {
  person: (c) => c.people,
  stage: (c) => c.stages,
  view: (c) => c.views,
  spot: (c) => c.spots,
  permission: (c) => c.permissions,
  plant: (c) => c.plants,
  happening: (c) => c.happenings,
  outing: (c) => c.outings,
  stop: (c) => c.stops,
  stageRecord: (c) => c.stageRecords,
  look: (c) => c.looks,
  reading: (c) => c.readings,
  slip: (c) => c.slips,
  voucher: (c) => c.vouchers,
  photo: (c) => c.photos,
  account: (c) => c.accounts,
};

/** A store over plain content that answers questions and refuses everything else. */
export const readOnlyStore = (content: BookContent, folder: string): BookStore => {
  const store: Pick<BookStore, "folder" | "info" | "list" | "table" | "content"> & {
    readonly files: Pick<BookStore["files"], "originalPath">;
  } = {
    folder,
    files: { originalPath: (id) => `${folder}/originals/${id}` },
    info: async () => Promise.resolve(content.info),
    list: async (kind) => Promise.resolve(lists[kind](content) as never),
    table: async (id) => Promise.resolve(content.tables.find((table) => table.id === id)),
    content: async () => Promise.resolve(content),
  };
  return store as BookStore;
};
