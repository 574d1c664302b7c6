/**
 * Reads the invented demo year (demo/hobbin-carr.json) into a book's content, with what belongs beside it: the photographs to
 * be drawn and the answers by which a program can be checked. The file is ours; its layout is not an exchange format.
 */
import { z } from "zod";
import { localTime } from "../base/dates.js";
import { stageId, viewId, type TableId } from "../base/ids.js";
import type { BookContent } from "../characters/book-content.js";
import { bookContent } from "../characters/book-content.js";

const demoTableId = "willowherbs" as TableId;

const demoCharacter = z.object({
  id: z.string(),
  part: z.string(),
  name: z.string(),
  kind: z.enum(["states", "measure", "derived"]),
  states: z.array(z.object({ id: z.string(), name: z.string(), plain: z.string() })).default([]),
  unit: z.string().default(""),
  formula: z.string().default(""),
  minN: z.number().default(5),
  seenIn: z.array(z.string()),
  tool: z.string(),
  weight: z.number(),
  group: z.string(),
  onlyIf: z.object({ character: z.string(), states: z.array(z.string()) }).optional(),
  errors: z.array(z.string()).default([]),
  disturbs: z.boolean().default(false),
  note: z.string().default(""),
});

const demoPhoto = z.object({
  id: z.string(),
  file: z.string(),
  visit: z.string(),
  plant: z.string().nullable(),
  stage: stageId.nullable(),
  view: viewId.nullable(),
  scale: z.boolean(),
  takenCamera: localTime,
  takenTrue: localTime,
  draw: z.object({ figure: z.string(), taxon: z.string().nullable() }),
  trap: z.string().optional(),
  copyOf: z.string().optional(),
});
export type DemoPhoto = z.infer<typeof demoPhoto>;

const expectedVisit = z.object({
  plant: z.string(),
  afterVisit: z.string(),
  left: z.array(z.string()),
  onlyRarely: z.record(z.string(), z.array(z.string())).default({}),
  againstButNotOut: z.record(z.string(), z.record(z.string(), z.number())).default({}),
  groupsSeen: z.number(),
  settled: z.boolean().optional(),
  rivalsOutByOneGroupOnly: z.array(z.string()).default([]),
  nextCheck: z.array(z.object({ character: z.string(), pairs: z.number(), score: z.number(), seenIn: z.array(z.string()) })).default([]),
  atNextVisit: z.array(z.string()).default([]),
});

const demoFile = z.object({
  notice: z.string(),
  title: z.string(),
  year: z.number(),
  place: z.object({
    altitudeM: z.tuple([z.number(), z.number()]),
    coordinates: z.object({ uncertaintyM: z.number() }),
    spots: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        setting: z.string(),
        lat: z.number(),
        lon: z.number(),
        shade: z.string(),
        access: z.string(),
        note: z.string().default(""),
        sensitive: z.object({ publishAs: z.string(), reason: z.string() }).optional(),
      }),
    ),
    permissions: z.array(
      z.object({ id: z.string(), from: z.string(), to: z.string(), by: z.string(), allows: z.string(), forbids: z.string() }),
    ),
  }),
  people: z.array(z.object({ initials: z.string(), role: z.string() })),
  stages: z.array(z.object({ id: stageId, name: z.string(), bbch: z.array(z.string()), looksLike: z.string(), usualMonths: z.string() })),
  views: z.array(z.object({ id: viewId, name: z.string(), scaleWanted: z.boolean() })),
  characters: z.array(demoCharacter),
  taxa: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      author: z.string(),
      family: z.string(),
      names: z.record(z.string(), z.string()),
      status: z.string(),
      flowerMonths: z.string(),
      band: z.string(),
      inOneLine: z.string(),
      expectedInCounty: z.boolean(),
    }),
  ),
  values: z.record(
    z.string(),
    z.record(
      z.string(),
      z.union([
        z.object({ range: z.tuple([z.number(), z.number(), z.number(), z.number()]) }),
        z.object({ notApplicable: z.literal(true) }),
        z.object({ usual: z.array(z.string()), rarely: z.array(z.string()).default([]) }),
      ]),
    ),
  ),
  knownHybrids: z.array(z.object({ parents: z.tuple([z.string(), z.string()]), note: z.string() })),
  visits: z.array(
    z.object({
      id: z.string(),
      date: z.string(),
      start: z.string(),
      end: z.string(),
      weather: z.string(),
      who: z.string(),
      mainStage: z.array(stageId),
      goal: z.string(),
      note: z.string().default(""),
      clock: z.object({ cameraMinusPhone: z.string() }),
      stops: z.array(z.object({ plant: z.string(), spot: z.string(), from: z.string(), to: z.string() })),
    }),
  ),
  plants: z.array(
    z.object({ id: z.string(), nick: z.string(), spot: z.string(), followed: z.string(), truth: z.string(), story: z.string() }),
  ),
  stagesSeen: z.array(
    z.object({
      plant: z.string(),
      visit: z.string(),
      stage: stageId.nullable(),
      openFlowersPercent: z.number().nullish(),
      why: z.string().default(""),
    }),
  ),
  observations: z.array(
    z.object({
      id: z.string(),
      plant: z.string(),
      visit: z.string(),
      character: z.string(),
      states: z.array(z.string()),
      result: z.enum(["could not tell", "looked, not there yet"]).optional(),
      stemsLooked: z.number().optional(),
      by: z.string(),
      lens: z.string().nullish(),
      sure: z.enum(["sure", "fairly", "between two"]).default("sure"),
      note: z.string().default(""),
      leaveOut: z.string().optional(),
    }),
  ),
  measurements: z.array(
    z.object({
      id: z.string(),
      plant: z.string(),
      visit: z.string(),
      character: z.string(),
      unit: z.string(),
      values: z.array(z.number()),
      stems: z.number(),
      method: z.string(),
      by: z.string(),
      plusMinus: z.number(),
      note: z.string().default(""),
      leaveOut: z.string().optional(),
    }),
  ),
  photos: z.array(demoPhoto),
  vouchers: z.array(
    z.object({
      number: z.string(),
      plant: z.string(),
      visit: z.string(),
      stemsInPatch: z.number(),
      stemsTaken: z.number(),
      parts: z.string(),
      kept: z.string(),
    }),
  ),
  refusals: z.array(z.object({ plant: z.string(), visit: z.string(), wanted: z.number(), stemsInPatch: z.number(), result: z.string() })),
  determinations: z.array(
    z.object({
      plant: z.string(),
      on: z.string(),
      by: z.string(),
      name: z.string(),
      qualifier: z.enum(["", "cf.", "conf.", "?"]),
      why: z.string(),
      laterOverturned: z.boolean().default(false),
    }),
  ),
  expected: z.object({
    perVisit: z.array(expectedVisit),
    settledAt: z.record(z.string(), z.string().nullable()),
    hybridPairs: z.record(z.string(), z.array(z.object({ pair: z.tuple([z.string(), z.string()]), againstSum: z.number() }))),
    shortestDiagnoses: z.record(z.string(), z.object({ size: z.number(), best: z.array(z.string()), howMany: z.number() })),
    separates: z.record(z.string(), z.array(z.string())),
  }),
});
type DemoFile = z.infer<typeof demoFile>;

export interface DemoYear {
  readonly content: BookContent;
  /** The photographs to draw; they are brought like any others. */
  readonly photos: readonly DemoPhoto[];
  /** Expected answers of the plain reference rule. */
  readonly expected: DemoFile["expected"];
}

/** States that "looked, not there" stands for, by character. */
const absenceOf: Readonly<Record<string, string>> = { glands: "absent", stem_lines: "none", seed_neck: "none" };

const viewParts: Readonly<Record<string, string>> = {
  place: "place",
  habit: "whole plant",
  base: "base",
  stem_mid: "stem",
  stem_cut: "stem",
  node: "leaf",
  leaf_top: "leaf",
  leaf_under: "leaf",
  leaf_edge: "leaf",
  tip: "flower region",
  flower_face: "flower",
  flower_side: "flower",
  stigma: "flower",
  calyx_foot: "flower region",
  capsule_green: "fruit",
  capsule_open: "fruit",
  seed: "seed",
  winter: "base",
  label: "place",
};

const characterOf = (c: z.infer<typeof demoCharacter>): unknown => {
  const states = c.states;
  const [numerator, denominator] = /^(\w+) \/ (\w+)/u.exec(c.formula)?.slice(1) ?? [];
  return {
    id: c.id,
    part: c.part,
    name: c.name,
    answer:
      c.kind === "states"
        ? { kind: "states", states, absence: absenceOf[c.id] ?? null }
        : c.kind === "measure"
          ? { kind: "measure", unit: c.unit, minN: c.minN }
          : { kind: "ratio", numerator, denominator, minN: c.minN },
    seenIn: c.seenIn,
    tool: c.tool,
    weight: c.weight,
    group: c.group,
    onlyIf: c.onlyIf ?? null,
    role: c.group === "hybrid check" ? "hybrid-check" : c.group === "place" ? "support" : "taxa",
    errors: c.errors,
    disturbs: c.disturbs,
    note: c.note,
  };
};

const lookOf =
  (dateOfVisit: ReadonlyMap<string, string>) =>
  (o: DemoFile["observations"][number]): unknown => {
    const onlyAbsence = o.states.length === 1 && o.states[0] === absenceOf[o.character];
    const status = o.result === "could not tell" ? "could-not-tell" : o.result !== undefined || onlyAbsence ? "not-there" : "seen";
    return {
      id: o.id,
      plantId: o.plant,
      outingId: o.visit,
      characterId: o.character,
      date: dateOfVisit.get(o.visit),
      status,
      states: status === "seen" ? o.states : [],
      sure: o.sure === "between two" ? "between-two" : o.sure,
      lens: o.lens ?? null,
      n: o.stemsLooked ?? null,
      by: o.by,
      note: o.note,
      // A status other than `seen` says by itself that no state was seen; only real reasons to leave out are kept.
      leaveOut: o.result === undefined ? (o.leaveOut ?? null) : null,
    };
  };

const tableOf = (file: DemoFile): unknown => ({
  id: demoTableId,
  title: "Willowherbs of Eastmere (invented county)",
  notice: file.notice,
  stages: file.stages,
  characters: file.characters.map(characterOf),
  taxa: file.taxa.map((t) => ({
    id: t.id,
    name: t.name,
    authorship: t.author,
    family: t.family,
    vernacular: t.names,
    status: t.status,
    flowerMonths: t.flowerMonths,
    band: t.band,
    inOneLine: t.inOneLine,
    expectedInCounty: t.expectedInCounty,
  })),
  scores: Object.entries(file.values).flatMap(([taxonId, row]) =>
    Object.entries(row).map(([characterId, cell]) => ({
      taxonId,
      characterId,
      sourceId: "from-memory",
      value:
        "range" in cell
          ? { kind: "range", min: cell.range[0], low: cell.range[1], high: cell.range[2], max: cell.range[3] }
          : "usual" in cell
            ? { kind: "states", usual: cell.usual, rarely: cell.rarely }
            : { kind: "not-applicable" },
    })),
  ),
  sources: [
    {
      id: "from-memory",
      citation: "Character values from general knowledge, from memory, rounded; illustrative, not checked against any flora.",
    },
  ],
  knownHybrids: file.knownHybrids,
});

const numberBefore = (text: string, word: string): number | null => {
  const found = new RegExp(`(\\d+) ${word}`, "u").exec(text);
  return found === null ? null : Number(found[1]);
};

const happeningsOf = (file: DemoFile): unknown[] =>
  file.stagesSeen
    .filter((record) => /mown on (\d+) July/u.test(record.why))
    .filter((record, index, all) => all.findIndex((r) => r.plant === record.plant) === index)
    .map((record) => ({
      id: `mown-${record.plant}`,
      plantId: record.plant,
      date: `${String(file.year)}-07-${/mown on (\d+) July/u.exec(record.why)?.[1] ?? ""}`,
      kind: "mown",
      endsYear: true,
      note: record.why,
    }));

/**
 * The demo year as a book's content, without photographs (they are drawn, then brought).
 * @param json the parsed file
 * @throws {z.ZodError} if the file is not the demo's
 */
export const readDemoYear = (json: unknown): DemoYear => {
  const file = demoFile.parse(json);
  const dateOfVisit = new Map<string, string>(file.visits.map((visit) => [visit.id, visit.date]));
  const content = bookContent.parse({
    info: {
      title: file.title,
      notice: file.notice,
      illustrative: true,
      language: "en",
      zone: "Europe/London",
      readAt: `${String(file.year)}-11-30`,
    },
    people: file.people.map((p) => ({ id: p.initials, initials: p.initials, role: p.role })),
    stages: file.stages,
    views: file.views.map((view) => ({
      ...view,
      part: viewParts[view.id] ?? "",
      // Wanted at the stages at which the invented teacher photographed it on any plant.
      stages: [...new Set(file.photos.filter((photo) => photo.view === view.id).flatMap((photo) => photo.stage ?? []))].toSorted(),
    })),
    spots: file.place.spots.map((spot) => ({
      id: spot.id,
      name: spot.name,
      setting: spot.setting,
      lat: spot.lat,
      lon: spot.lon,
      uncertaintyM: file.place.coordinates.uncertaintyM,
      elevationM: file.place.altitudeM[0],
      shade: spot.shade,
      access: spot.access,
      note: spot.note,
      zone: "Europe/London",
      publishAs: spot.sensitive === undefined ? "0.001-degree" : spot.sensitive.publishAs.replace(" ", "-"),
      sensitiveBecause: spot.sensitive?.reason ?? "",
    })),
    permissions: file.place.permissions,
    tables: [tableOf(file)],
    plants: file.plants.map((plant) => ({
      id: plant.id,
      nick: plant.nick,
      spotId: plant.spot,
      marks: plant.followed,
      stemCount: numberBefore(plant.followed, "stems"),
      markedStemCount: numberBefore(plant.followed, "marked"),
      tableId: demoTableId,
      note: plant.story,
    })),
    happenings: happeningsOf(file),
    outings: file.visits.map((visit) => ({
      id: visit.id,
      date: visit.date,
      start: visit.start,
      end: visit.end,
      weather: visit.weather,
      people: visit.who.split(", "),
      goal: visit.goal,
      note: visit.note,
    })),
    stops: file.visits.flatMap((visit) =>
      visit.stops.map((stop) => ({
        id: `${visit.id}-${stop.plant}`,
        outingId: visit.id,
        plantId: stop.plant,
        from: stop.from,
        to: stop.to,
      })),
    ),
    stageRecords: file.stagesSeen.map((record) => ({
      id: `${record.visit}-${record.plant}-stage`,
      plantId: record.plant,
      outingId: record.visit,
      date: dateOfVisit.get(record.visit),
      stageId: record.stage,
      answer: record.stage === null ? "not-looked" : "yes",
      sharePercent: record.openFlowersPercent ?? null,
      why: record.why,
    })),
    looks: file.observations.map(lookOf(dateOfVisit)),
    readings: file.measurements.map((m) => ({
      id: m.id,
      plantId: m.plant,
      outingId: m.visit,
      characterId: m.character,
      date: dateOfVisit.get(m.visit),
      unit: m.unit,
      values: m.values,
      stems: m.stems,
      method: m.method,
      plusMinus: m.plusMinus,
      by: m.by,
      note: m.note,
      leaveOut: m.leaveOut ?? null,
    })),
    slips: file.determinations.map((d, index) => ({
      id: `slip-${String(index + 1)}`,
      plantId: d.plant,
      on: d.on,
      by: d.by,
      name: d.name,
      taxonIds: file.taxa.filter((taxon) => taxon.name === d.name).map((taxon) => taxon.id),
      role: d.qualifier === "conf." ? "conf" : "det",
      qualifier: d.qualifier === "conf." ? "" : d.qualifier,
      why: d.why,
      overturned: d.laterOverturned,
    })),
    vouchers: [
      ...file.vouchers.map((v) => ({
        id: v.number.replaceAll(" ", "-"),
        number: v.number,
        plantId: v.plant,
        date: dateOfVisit.get(v.visit),
        stemsInPatch: v.stemsInPatch,
        stemsTaken: v.stemsTaken,
        parts: v.parts,
        kept: v.kept,
      })),
      ...file.refusals.map((r, index) => ({
        id: `refused-${String(index + 1)}`,
        number: `refused ${String(index + 1)}`,
        plantId: r.plant,
        date: dateOfVisit.get(r.visit),
        stemsInPatch: r.stemsInPatch,
        stemsTaken: 0,
        refusedBecause: r.result,
      })),
    ],
    photos: [],
    accounts: [],
  });
  return { content, photos: file.photos, expected: file.expected };
};
