/** A small book with at least one record of every kind, invented, for the tests of the store. */
import { bookContent } from "../../src/engine/index.js";
import type { BookContent, BookInfo } from "../../src/engine/index.js";
import { bookInfo } from "../../src/engine/index.js";

export const fixedClock = (): Date => new Date("2022-07-01T10:00:00.000Z");

export const sampleInfo: BookInfo = bookInfo.parse({ title: "Sample", zone: "Europe/London" });

export const sampleContent = (): BookContent =>
  bookContent.parse({
    info: { title: "A ditch through the year", notice: "Invented", readAt: "2022-09-01", settledRule: { outAt: 5 } },
    people: [
      { id: "P2", initials: "Z.B.", role: "recorder" },
      { id: "P1", initials: "A.B." },
    ],
    stages: [
      { id: "S0", name: "overwintering", bbch: ["00"] },
      { id: "S5", name: "full flower", bbch: ["65-69"], usualMonths: "Jul" },
    ],
    views: [{ id: "V1", name: "flower from the front", part: "flower", scaleWanted: true, stages: ["S5"] }],
    spots: [{ id: "A", name: "Ditch", lat: 54.31742, lon: 4.20936, uncertaintyM: 8.5, zone: "Europe/London", publishAs: "0.01-degree" }],
    permissions: [{ id: "PERM-1", from: "2022-01-01", to: "2022-12-31", by: "warden", spotIds: ["A"] }],
    tables: [
      {
        id: "T1",
        title: "Willowherbs, invented",
        stages: [{ id: "S5", name: "full flower" }],
        characters: [
          {
            id: "hairs",
            part: "stem",
            name: "glandular hairs",
            group: "hairs",
            answer: {
              kind: "states",
              states: [
                { id: "yes", name: "there" },
                { id: "no", name: "none" },
              ],
              absence: "no",
            },
            seenIn: ["S5"],
            errors: ["dust"],
          },
          {
            id: "capsule",
            part: "fruit",
            name: "capsule length",
            group: "capsule",
            answer: { kind: "measure", unit: "mm" },
            misreading: 0.05,
          },
        ],
        taxa: [
          { id: "obs", name: "Epilobium obscurum", vernacular: { en: "short-fruited willowherb" }, cautions: ["none known"] },
          { id: "tet", name: "Epilobium tetragonum", expectedInCounty: false },
        ],
        scores: [
          { taxonId: "tet", characterId: "capsule", value: { kind: "range", min: 60, low: 65, high: 90, max: 100 }, sourceId: "src" },
          { taxonId: "obs", characterId: "capsule", value: { kind: "range", low: 40, high: 60 }, page: "12", words: "40-60 mm" },
          { taxonId: "obs", characterId: "hairs", value: { kind: "states", usual: ["yes"], rarely: [] } },
          { taxonId: "tet", characterId: "hairs", value: { kind: "unknown" } },
        ],
        sources: [{ id: "src", citation: "Invented, 2022" }],
        knownHybrids: [{ parents: ["obs", "tet"], note: "rare" }],
      },
    ],
    plants: [{ id: "PL1", nick: "wool", spotId: "A", stemCount: 35, tableId: "T1", rivalIds: ["tet"] }],
    happenings: [{ id: "H1", plantId: "PL1", date: "2022-07-20", kind: "mown", endsYear: true }],
    outings: [{ id: "O1", date: "2022-07-01", start: "10:00", people: ["A.B."], cameraShiftS: -440 }],
    stops: [{ id: "ST1", outingId: "O1", plantId: "PL1", from: "2022-07-01T10:05:00", to: "2022-07-01T10:25:00" }],
    stageRecords: [
      { id: "SR1", plantId: "PL1", outingId: "O1", date: "2022-07-01", stageId: "S5", answer: "yes", sharePercent: 12.5 },
      { id: "SR2", plantId: "PL1", outingId: "O1", date: "2022-07-01", stageId: null, answer: "not-looked", why: "flooded" },
    ],
    looks: [
      {
        id: "L1",
        plantId: "PL1",
        outingId: "O1",
        characterId: "hairs",
        date: "2022-07-01",
        status: "seen",
        states: ["yes"],
        lens: "x20",
        n: 5,
        photoIds: ["a".repeat(64)],
      },
    ],
    readings: [
      {
        id: "R1",
        plantId: "PL1",
        outingId: "O1",
        characterId: "capsule",
        date: "2022-07-01",
        unit: "mm",
        values: [51.5, 48, 55.25],
        plusMinus: 0.5,
        leaveOut: "young",
      },
    ],
    slips: [{ id: "SL1", plantId: "PL1", on: "2022-07-02", by: "A.B.", name: "Epilobium obscurum", why: "glands", qualifier: "cf." }],
    vouchers: [{ id: "VO1", number: "22-1", plantId: "PL1", date: "2022-07-01", stemsInPatch: 35, stemsTaken: 1 }],
    photos: [
      {
        id: "a".repeat(64),
        fileName: "Blüte 🌿.JPG",
        format: "jpeg",
        bytes: 5_000_000_000,
        widthPx: 4000,
        heightPx: 3000,
        orientation: 1,
        takenCamera: "2022-07-01T10:06:00",
        takenOffset: "+01:00",
        broughtAt: "2022-07-01T18:00:00Z",
        outingId: "O1",
        plantId: "PL1",
        placedBy: "clock",
        stageId: "S5",
        viewId: "V1",
      },
    ],
    accounts: [{ id: "AC1", taxonId: "obs", tableId: "T1", plantIds: ["PL1"], edited: { "in-one-line": "A willowherb." } }],
  });
