import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { memoryStore } from "../../tests/support/memory-store.js";
import type { MemoryStore } from "../../tests/support/memory-store.js";
import { outing, photo, view } from "../engine/index.js";
import type { IsoDate, PhotoId } from "../engine/index.js";
import { changeSheets, listSheets } from "./sheets.js";
import type { Workbench } from "./workbench.js";

const id = "a".repeat(64) as PhotoId;
let store: MemoryStore;
let bench: Workbench;
beforeEach(async () => {
  store = memoryStore();
  bench = { store, today: () => "2024-05-03" as IsoDate };
  await store.edit({ label: "fill" }, async (edit) => {
    const of = { fileName: "a.jpg", format: "jpeg", bytes: 1, widthPx: 1, heightPx: 1, orientation: 1, broughtAt: "" };
    await edit.put("photo", photo.parse({ ...of, id, takenCamera: "2024-05-02T23:30:00" }));
    await edit.put("view", view.parse({ id: "leaf", name: "leaf" }));
    await edit.put("plant", { id: "P1" } as never);
    // The camera is an hour behind: by the phone the photograph is of the third, just after midnight.
    await edit.put("outing", outing.parse({ id: "second", date: "2024-05-02", cameraShiftS: 0 }));
    await edit.put("outing", outing.parse({ id: "third", date: "2024-05-03", cameraShiftS: 3600 }));
  });
});
afterEach(() => store.close());

describe("what is said of sheets", () => {
  it("stays when another page says something of the same sheet while this is under way", async () => {
    let first = true;
    const slow: Workbench = {
      ...bench,
      store: {
        ...store,
        edit: async (what, change) => {
          if (first) {
            first = false;
            await changeSheets(bench, [id], { caption: "lower leaf" });
          }
          return store.edit(what, change);
        },
      },
    };
    await changeSheets(slow, [id], { viewId: "leaf" as never });
    expect(await store.get("photo", id)).toMatchObject({ caption: "lower leaf", viewId: "leaf" });
  });

  it("says nothing changed where it was said before, and refuses sheets that are not there", async () => {
    await changeSheets(bench, [id], { caption: "one" });
    expect((await changeSheets(bench, [id], { caption: "one" })).edit.id).toBe(0);
    await expect(changeSheets(bench, [id, "b".repeat(64) as PhotoId], { caption: "two" })).rejects.toMatchObject({
      code: "sheets-unknown",
    });
    expect(await store.get("photo", id)).toMatchObject({ caption: "one" });
  });

  it("puts a photograph into the outing of its day by the shifted clock", async () => {
    await store.edit({ label: "away" }, (edit) => edit.remove("outing", "second"));
    expect((await listSheets(bench))[0]!.taken).toBe("2024-05-03T00:30:00");
    const { sheets } = await changeSheets(bench, [id], { plantId: "P1" as never });
    expect(sheets[0]).toMatchObject({ plantId: "P1", outingId: "third", taken: "2024-05-03T00:30:00" });
  });
});
