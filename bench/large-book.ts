/**
 * A book with many photographs for the benches: 10,000 records on 20 outings of 10 plants, without originals; the 320-pixel
 * copies are links to one of five small drawn pictures. Made once in the temporary folder of the machine, then found again.
 */
import { createHash } from "node:crypto";
import { existsSync, linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import sharp from "sharp";
import { bookContent, readDemoYear } from "../src/engine/index.js";
import { beginBook } from "../src/store/index.js";

export const photoCount = 10_000;
const [plants, outings] = [10, 20];

const day = (outing: number): string =>
  `2022-${String(4 + Math.floor(outing / 4)).padStart(2, "0")}-${String(3 + 7 * (outing % 4)).padStart(2, "0")}`;

const demo = () => readDemoYear(JSON.parse(readFileSync(new URL("../demo/hobbin-carr.json", import.meta.url), "utf8"))).content;

/** Tables and stages of the demo. Two photographs in three are at their plants already, the others wait to be sorted. */
const content = () => {
  const { tables, stages, views } = demo();
  return bookContent.parse({
    info: { title: "Ten thousand photographs" },
    people: [{ id: "P1", initials: "A.B." }],
    stages,
    views,
    spots: [{ id: "A", name: "Ditch", lat: 54.3, lon: 4.2, uncertaintyM: 8, zone: "Europe/London", publishAs: "0.1-degree" }],
    permissions: [],
    tables,
    plants: Array.from({ length: plants }, (_, k) => ({
      id: `PL${k}`,
      nick: `plant ${k}`,
      spotId: "A",
      tableId: tables[0]?.id,
      rivalIds: [],
    })),
    happenings: [],
    outings: Array.from({ length: outings }, (_, k) => ({ id: `O${k}`, date: day(k), start: "08:00", people: ["A.B."] })),
    stops: [],
    stageRecords: [],
    looks: [],
    readings: [],
    slips: [],
    vouchers: [],
    photos: Array.from({ length: photoCount }, (_, k) => {
      const outing = Math.floor((k * outings) / photoCount);
      const second = 8 * 3600 + (k % (photoCount / outings)) * 40;
      const two = (n: number): string => String(Math.floor(n)).padStart(2, "0");
      const isPlaced = k % 3 > 0;
      return {
        id: createHash("sha256").update(`photograph ${k}`).digest("hex"),
        fileName: `IMG_${String(k).padStart(5, "0")}.JPG`,
        format: "jpeg",
        bytes: 6_000_000 + k,
        widthPx: 4000,
        heightPx: 3000,
        orientation: 1,
        takenCamera: `${day(outing)}T${two(second / 3600)}:${two((second / 60) % 60)}:${two(second % 60)}`,
        camera: "A camera",
        broughtAt: `${day(outing)}T20:00:00Z`,
        outingId: isPlaced ? `O${outing}` : null,
        plantId: isPlaced ? `PL${k % plants}` : null,
        placedBy: isPlaced ? "clock" : "nobody",
        stageId: isPlaced ? stages[0]?.id : null,
      };
    }),
    accounts: [],
  });
};

/** The folder of the book. */
export const largeBook = async (): Promise<string> => {
  const folder = join(tmpdir(), "stipule-bench-large-book-1");
  if (existsSync(folder)) return folder;
  const making = `${folder}-${process.pid}`;
  rmSync(making, { recursive: true, force: true });
  const all = content();
  const store = await beginBook(making, all.info, { clock: () => new Date() });
  await store.putContent(all, { label: "Lay down ten thousand photographs" });
  const pictures = await Promise.all(
    Array.from({ length: 5 }, async (_, k) => {
      const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="320" height="240"><rect width="320" height="240" fill="hsl(${k * 30 + 70},40%,60%)"/><circle cx="${100 + 30 * k}" cy="120" r="70" fill="hsl(${k * 60},60%,50%)"/></svg>`;
      const path = join(making, "derived", `bench-${k}.jpg`);
      writeFileSync(path, await sharp(Buffer.from(drawing)).jpeg({ quality: 78 }).toBuffer());
      return path;
    }),
  );
  all.photos.forEach((photo, k) => {
    const path = store.files.derivativePath(photo.id, 320);
    mkdirSync(dirname(path), { recursive: true });
    linkSync(pictures[k % pictures.length] ?? "", path);
  });
  await store.close();
  renameSync(making, folder);
  return folder;
};
