/**
 * A stand-in for the server, for drawing and checking the page alone: replies of the contract's shape (each is parsed by
 * its schema) made from demo/hobbin-carr.json by the demo's visible rule, and drawn "photographs". It keeps nothing.
 * Run: `npx tsx tests/support/mock-api.ts [port] [empty]`; it serves dist/web under the strict content policy.
 */
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { api } from "../../src/contract/index.js";

// oxlint-disable-next-line typescript/no-explicit-any -- the demo file is read as it lies; replies are parsed by the contract
type Loose = any;
const demo: Loose = JSON.parse(readFileSync(new URL("../../demo/hobbin-carr.json", import.meta.url), "utf8"));
const empty = process.argv.includes("empty");
const port = Number(process.argv[2] ?? 4898);
const web = new URL("../../dist/web/", import.meta.url).pathname;
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const notice = "Invented data, from general knowledge. Illustrative, not for identification.";
const sha = (text: string): string => createHash("sha256").update(text).digest("hex");
const byId = (list: Loose[], id: unknown): Loose => list.find((one) => one.id === id);
const dateOf = (visit: string): string => byId(demo.visits, visit).date;
const stages = demo.stages;
const taxa: Loose[] = demo.taxa;
const characters: Loose[] = demo.characters;
const plants: Loose[] = empty ? [] : demo.plants;
const visits: Loose[] = empty ? [] : demo.visits;
const photos: Loose[] = demo.photos.map((photo: Loose) => ({ ...photo, sha: sha(photo.id) }));
const observations: Loose[] = demo.observations.map((o: Loose) => ({
  ...o,
  date: dateOf(o.visit),
  status: o.states.length > 0 ? "seen" : o.result === "could not tell" ? "could-not-tell" : "not-there",
}));
const measurements: Loose[] = demo.measurements.map((m: Loose) => ({ ...m, date: dateOf(m.visit) }));
const spots: Loose[] = demo.place.spots.map((s: Loose) => ({
  ...s,
  sensitiveBecause: s.id === "D" ? "rare fen plants stand here" : "",
  publishAs: s.id === "D" ? "0.01-degree" : "0.001-degree",
  zone: "Europe/London",
}));
const permissions = demo.place.permissions;
const stageAt = (plant: string, visit: string): Loose => demo.stagesSeen.find((s: Loose) => s.plant === plant && s.visit === visit);
const happenings = (id: string): Loose[] =>
  id === "P6" ? [{ id: "H1", plantId: "P6", date: "2022-07-20", kind: "mown", endsYear: true, note: "footbridge verge" }] : [];

const short = (name: string): string => name.replace(/^(\w)\w+/, "$1.");
const nameSpans = (taxon: Loose) => [
  { text: taxon.name, italic: true },
  { text: ` ${taxon.author}`, italic: false },
];
const taxonName = (id: string) => {
  const taxon = byId(taxa, id);
  return { taxonId: id, name: nameSpans(taxon), plain: `${taxon.name} ${taxon.author}`, vernacular: taxon.names.en };
};
const stateName = (character: Loose, state: string): string => byId(character.states ?? [], state)?.name ?? state;
const median = (values: number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[Math.floor((sorted.length - 1) / 2)] as number) + (sorted[Math.ceil((sorted.length - 1) / 2)] as number)) / 2;
};

interface Found {
  readonly character: Loose;
  readonly states: string[];
  readonly values: number[];
  readonly looks: Loose[];
  readonly readings: Loose[];
}
const findings = (plant: string, upTo: string): Found[] =>
  characters.flatMap((character) => {
    const looks = observations.filter((o) => o.plant === plant && o.character === character.id && o.date <= upTo && !o.leaveOut);
    const readings = measurements.filter((m) => m.plant === plant && m.character === character.id && m.date <= upTo && !m.leaveOut);
    const states = [...new Set(looks.flatMap((o) => o.states as string[]))];
    const values = readings.flatMap((m) => m.values as number[]);
    return states.length > 0 || values.length > 0 ? [{ character, states, values, looks, readings }] : [];
  });
const against = (found: Found, taxon: string): boolean => {
  const value = demo.values[taxon][found.character.id];
  if (value === undefined || value.notApplicable || found.character.weight < 2) return false;
  if (value.range) return found.values.length >= 3 && (median(found.values) < value.range[0] || median(found.values) > value.range[3]);
  if (!value.usual || found.states.length === 0) return false;
  return !found.states.some((state) => value.usual.includes(state) || value.rarely?.includes(state));
};
const textOf = (found: Found): string =>
  found.values.length > 0
    ? `${Math.min(...found.values)}–${Math.max(...found.values)} ${found.character.unit ?? "mm"}, n = ${found.values.length}`
    : found.states.map((state) => stateName(found.character, state)).join(" or ");
const photosOf = (plant: string, visitIds: string[]) => photos.filter((p) => p.plant === plant && visitIds.includes(p.visit)).slice(0, 2);
const witness = (found: Found, decibans: number | null) => ({
  group: found.character.group,
  title: `${found.character.name}: ${textOf(found)}`,
  detail: `${found.character.tool}, ${[...new Set([...found.looks, ...found.readings].map((e) => e.date))].join(", ")}, ${[...found.looks, ...found.readings][0]?.by ?? ""}`,
  decibans,
  characterIds: [found.character.id],
  lookIds: found.looks.map((o) => o.id),
  readingIds: found.readings.map((m) => m.id),
  photoIds: photosOf(
    (found.looks[0] ?? found.readings[0]).plant,
    [...found.looks, ...found.readings].map((e) => e.visit),
  ).map((p) => p.sha),
});
const groupsAgainst = (plant: string, upTo: string, taxon: string): Map<string, Found> => {
  const groups = new Map<string, Found>();
  for (const found of findings(plant, upTo)) {
    if (!against(found, taxon)) continue;
    const before = groups.get(found.character.group);
    if (before === undefined || before.character.weight < found.character.weight) groups.set(found.character.group, found);
  }
  return groups;
};
const sumOf = (groups: Map<string, Found>): number => [...groups.values()].reduce((sum, found) => sum + found.character.weight, 0);

const lastVisit = (upTo: string): string | undefined => visits.filter((v) => v.date <= upTo).at(-1)?.id;
const standing = (plant: string, upTo: string) => {
  const left = taxa.filter((taxon) => sumOf(groupsAgainst(plant, upTo, taxon.id)) < 4);
  const settledAt = demo.expected.settledAt[plant];
  const settled = settledAt !== null && dateOf(settledAt) <= upTo;
  const seen = findings(plant, upTo).length;
  const names = (list: Loose[]) =>
    list.flatMap((taxon, index) => [
      ...(index === 0 ? [] : [{ text: index === list.length - 1 ? " or " : ", ", italic: false }]),
      { text: `${taxon.names.en}, `, italic: false },
      { text: short(taxon.name), italic: true },
    ]);
  if (seen < 2 || left.length > 4)
    return {
      word: "not-enough-evidence",
      settled: false,
      headline: [{ text: `Not enough has been seen yet; ${left.length} of ten are possible.`, italic: false }],
      explanation: "",
      left,
    };
  if (left.length === 0)
    return {
      word: "hybrid-question",
      settled: false,
      headline: [
        { text: "None of ten fits. The question of a hybrid: ", italic: false },
        { text: "Epilobium obscurum", italic: true },
        { text: " × ", italic: false },
        { text: "E. ciliatum", italic: true },
        { text: "?", italic: false },
      ],
      explanation:
        "Every species is spoken against by two or more independent witnesses, and few seeds are filled. Before thinking of a hybrid, look again at the seeds and the foot of the calyx.",
      left,
    };
  if (left.length === 1)
    return {
      word: settled ? "species" : "cf",
      settled,
      headline: settled
        ? [{ text: "Settled: ", italic: false }, ...names(left), { text: ".", italic: false }]
        : [{ text: "Only one left, not settled: ", italic: false }, ...names(left), { text: ".", italic: false }],
      explanation: settled
        ? "Every other taxon of the county is spoken against by at least two independent witnesses."
        : "One rival is out by one witness only. If that one series were wrong, the answer would change.",
      left,
    };
  return {
    word: left.length === 2 ? "one-of-two" : "genus-only",
    settled: false,
    headline: [
      { text: left.length === 2 ? "One of two: " : `${left.length} left: `, italic: false },
      ...names(left),
      { text: ".", italic: false },
    ],
    explanation: "The characters seen so far do not part them.",
    left,
  };
};
const publicStanding = (plant: string, upTo: string) => {
  const { left: _left, ...rest } = standing(plant, upTo);
  return rest;
};

const expectedAt = (plant: string, upTo: string): Loose =>
  demo.expected.perVisit.find((r: Loose) => r.plant === plant && r.afterVisit === lastVisit(upTo));
const months: Record<string, [string, string]> = {
  S0: ["12-01", "03-31"],
  S6: ["08-10", "09-05"],
  S7: ["08-21", "09-30"],
  S8: ["10-01", "11-20"],
  S4: ["07-01", "07-20"],
  S5: ["07-15", "08-10"],
  S3: ["06-10", "06-30"],
  S2: ["05-15", "06-10"],
  S1: ["04-15", "05-15"],
};
const checks = (plant: string, upTo: string) =>
  ((expectedAt(plant, upTo)?.nextCheck ?? []) as Loose[]).slice(0, 4).map((check) => {
    const character = byId(characters, check.character);
    const from = `2022-${months[check.seenIn[0]]?.[0] ?? "06-01"}`;
    const to = `2022-${months[check.seenIn.at(-1)]?.[1] ?? "09-01"}`;
    return {
      characterId: character.id,
      title: character.name,
      how: `${
        (character.states ?? [])
          .map((s: Loose) => s.name)
          .slice(0, 4)
          .join(" or ") || "measure ten"
      }; ${character.tool === "eye" ? "no tool" : character.tool}`,
      when: `can be seen from ${from.slice(5)} to ${to.slice(5)}`,
      why: `would part ${check.pairs} pair${check.pairs === 1 ? "" : "s"} still open`,
      from,
      to: to < from ? null : to,
      tool: character.tool,
      disturbs: character.disturbs,
      pairs: check.pairs,
      score: check.score,
      bits: Math.round(check.pairs * 40) / 100,
      lost: plant === "P6" && upTo >= "2022-07-20" ? "Not this year: mown on 20 July. Next year before 18 July." : null,
    };
  });

const lookOf = (o: Loose) => ({
  id: o.id,
  plantId: o.plant,
  outingId: o.visit,
  characterId: o.character,
  date: o.date,
  status: o.status,
  states: o.states,
  sure: ["sure", "fairly", "between-two"].includes(o.sure) ? o.sure : "sure",
  lens: o.lens ?? null,
  n: o.stemsLooked ?? null,
  by: o.by,
  note: o.note ?? "",
  leaveOut: o.leaveOut ?? null,
  photoIds: photosOf(o.plant, [o.visit]).map((p) => p.sha),
});
const readingOf = (m: Loose) => ({
  id: m.id,
  plantId: m.plant,
  outingId: m.visit,
  characterId: m.character,
  date: m.date,
  unit: m.unit,
  values: m.values,
  stems: m.stems ?? null,
  method: m.method,
  plusMinus: m.plusMinus ?? null,
  by: m.by,
  note: m.note ?? "",
  leaveOut: m.leaveOut ?? null,
  photoIds: photosOf(m.plant, [m.visit]).map((p) => p.sha),
});
const plantOf = (plant: Loose) => ({
  id: plant.id,
  nick: plant.nick,
  spotId: plant.spot,
  marks: plant.followed,
  stemCount: 30,
  markedStemCount: 5,
  tableId: "willowherbs",
});
const slipOf = (s: Loose, index: number) => ({
  id: `S${index}`,
  plantId: s.plant,
  on: s.on,
  by: s.by,
  name: s.name,
  taxonIds: taxa.filter((t) => t.name === s.name).map((t) => t.id),
  role: s.qualifier === "conf." ? "conf" : "det",
  qualifier: s.qualifier === "conf." ? "" : s.qualifier,
  why: s.why,
  overturned: s.laterOverturned === true,
});
const slipsOf = (plant: string, upTo: string): Loose[] =>
  demo.determinations.map(slipOf).filter((s: Loose) => s.plantId === plant && s.on <= upTo);
const outingOf = (v: Loose) => ({
  id: v.id,
  date: v.date,
  start: v.start,
  end: v.end,
  weather: v.weather,
  people: v.who.split(", "),
  goal: v.goal,
  note: v.note ?? "",
});

const cellOf = (plant: string, upTo: string, character: Loose, stage: Loose) => {
  const inStage = (e: Loose) =>
    e.plant === plant && e.character === character.id && e.date <= upTo && stageAt(plant, e.visit)?.stage === stage.id;
  const looks = observations.filter(inStage);
  const readings = measurements.filter(inStage);
  const leftOut = [...looks, ...readings].length > 0 && [...looks, ...readings].every((e) => e.leaveOut && e.status !== "could-not-tell");
  const seen = looks.filter((o) => o.status === "seen");
  const kind =
    seen.length > 0 || readings.length > 0
      ? "seen"
      : looks.some((o) => o.status === "not-there")
        ? "not-there"
        : looks.length > 0
          ? "could-not-tell"
          : character.seenIn.length === 0 || character.seenIn.includes(stage.id)
            ? "open"
            : "cannot";
  const states = [...new Set(seen.flatMap((o) => o.states as string[]))].map((s) => stateName(character, s)).join(", ");
  const label =
    kind === "seen"
      ? readings.length > 0
        ? `n ${readings.flatMap((m) => m.values).length}`
        : states
      : kind === "not-there"
        ? "not there"
        : kind === "could-not-tell"
          ? "?"
          : "";
  const said = {
    seen: label,
    "not-there": "looked, not there",
    "could-not-tell": "could not tell",
    open: `not looked; can be seen ${stage.usualMonths}, ${character.tool}`,
    cannot: "cannot be seen in this stage",
  }[kind];
  return {
    stageId: stage.id,
    kind,
    label,
    sentence: `${character.name}, ${stage.name}: ${said}${leftOut ? " (left out)" : ""}`,
    leftOut,
    lookIds: looks.map((o) => o.id),
    readingIds: readings.map((m) => m.id),
    photoIds: [...new Set([...looks, ...readings].flatMap((e) => photosOf(plant, [e.visit]).map((p) => p.sha)))],
  };
};

const partOrder = ["whole plant", "base", "stem", "leaf", "flower region", "flower", "fruit", "seed", "place"];
const overview = (upTo: string) => ({
  info: {
    title: empty ? "An empty book" : demo.title,
    notice: empty ? "" : notice,
    illustrative: !empty,
    readAt: "2022-11-06",
    zone: "Europe/London",
  },
  folder: "/tmp/book",
  upTo,
  people: demo.people.map((p: Loose) => ({ id: p.initials.replaceAll(".", ""), ...p })),
  stages,
  views: demo.views,
  counts: { plants: plants.length, outings: visits.length, looks: 118, readings: 48, photos: 199, unsorted: 2, spots: 5, tables: 1 },
  undo: empty ? null : "Look at Ditch plant: stigma",
  redo: null,
  jobs: [],
});

const replies: Record<string, (params: Loose, query: Loose, upTo: string) => unknown> = {
  "GET /api/book": (_p, _q, upTo) => overview(upTo),
  "GET /api/jobs": () => ({ jobs: [] }),
  "GET /api/outings": () => ({
    outings: visits.toReversed().map((v) => ({
      ...outingOf(v),
      stops: v.stops.map((s: Loose, i: number) => ({ id: `${v.id}-${i}`, outingId: v.id, plantId: s.plant, from: s.from, to: s.to })),
      photoCount: photos.filter((p) => p.visit === v.id).length,
      lookCount: 13,
    })),
  }),
  "GET /api/year": (_p, _q, upTo) => ({
    year: 2022,
    upTo,
    rings: plants.map((plant) => ({
      plantId: plant.id,
      nick: plant.nick,
      ...(({ word, settled, headline }) => ({ word, settled, standing: headline }))(publicStanding(plant.id, upTo)),
      marks: visits
        .filter((v) => v.date <= upTo)
        .map((v) => {
          const at = stageAt(plant.id, v.id);
          return {
            outingId: v.id,
            date: v.date,
            stageId: at?.stage ?? null,
            stageName: at?.stage ? byId(stages, at.stage).name : "",
            kind: at?.stage ? "seen" : plant.id === "P6" ? "nothing-left" : "not-reached",
            why: at?.why ?? "",
            photoCount: photos.filter((p) => p.plant === plant.id && p.visit === v.id).length,
            lookCount: observations.filter((o) => o.plant === plant.id && o.visit === v.id).length,
          };
        }),
      happenings: happenings(plant.id).filter((h) => h.date <= upTo),
    })),
    outings: visits.map((v) => ({ outingId: v.id, date: v.date, goal: v.goal })),
    stages,
    due: plants.flatMap((plant) =>
      checks(plant.id, upTo)
        .slice(0, 1)
        .map((c) => ({
          plantId: plant.id,
          nick: plant.nick,
          sentence: `${c.title}: ${c.how}. It ${c.why}.`,
          when: c.lost ?? c.when,
          tool: c.tool,
          lost: c.lost !== null,
        })),
    ),
    summary: empty
      ? []
      : [
          "Nine outings, 118 looks, 345 measured values and 199 photographs.",
          "The fen plant was not reached on 19 June: the boards were under water.",
        ],
  }),
  "GET /api/plants": (_p, _q, upTo) => ({
    plants: plants.map((plant) => ({
      plant: plantOf(plant),
      spotName: byId(spots, plant.spot).name,
      standing: publicStanding(plant.id, upTo),
      photoCount: photos.filter((p) => p.plant === plant.id).length,
      lookCount: observations.filter((o) => o.plant === plant.id && o.date <= upTo).length,
      outingCount: 9,
      coverPhotoId: photos.find((p) => p.plant === plant.id && p.view === "habit")?.sha ?? null,
      lastDate: upTo,
    })),
  }),
  "GET /api/plants/{plantId}": ({ plantId }, _q, upTo) => {
    const plant = byId(plants, plantId);
    if (plant === undefined) return null;
    const looks = observations.filter((o) => o.plant === plantId && o.date <= upTo);
    return {
      plant: plantOf(plant),
      spot: byId(spots, plant.spot),
      permissions: permissions.map((p: Loose) => ({ ...p, expired: p.to < upTo })),
      cautions:
        plant.spot === "D"
          ? ["Sensitive spot: keep to the boards and publish no finer place than 0.01 degree.", "Water edge: go in pairs."]
          : ["Wet bank after rain."],
      standing: publicStanding(plantId, upTo),
      board: {
        stages,
        rows: characters
          .toSorted((a, b) => partOrder.indexOf(a.part) - partOrder.indexOf(b.part))
          .map((c) => ({
            characterId: c.id,
            part: c.part,
            name: c.name,
            tool: c.tool,
            group: c.group,
            disturbs: c.disturbs,
            applies: c.id !== "stalk_len",
            cells: stages.map((s: Loose) => cellOf(plantId, upTo, c, s)),
          })),
      },
      conflicts:
        plantId === "P1" && upTo >= "2022-07-06"
          ? [
              {
                characterId: "glands",
                sentence:
                  "Two looks disagree on gland-tipped hairs: ×10 by R.O. saw none on 6 July, ×20 by T.M.W. saw a few at the calyx on 27 July. Both stand until you decide.",
                lookIds: looks.filter((o) => o.character === "glands").map((o) => o.id),
              },
            ]
          : [],
      looks: looks.map(lookOf),
      readings: measurements.filter((m) => m.plant === plantId && m.date <= upTo).map(readingOf),
      stageRecords: demo.stagesSeen
        .filter((s: Loose) => s.plant === plantId && dateOf(s.visit) <= upTo)
        .map((s: Loose) => ({
          id: `${s.plant}-${s.visit}`,
          plantId,
          outingId: s.visit,
          date: dateOf(s.visit),
          stageId: s.stage,
          answer: s.stage ? "yes" : "not-looked",
          sharePercent: s.openFlowersPercent ?? null,
          why: s.why ?? "",
        })),
      outings: visits.filter((v) => v.date <= upTo).map(outingOf),
      happenings: happenings(plantId).filter((h) => h.date <= upTo),
      slips: slipsOf(plantId, upTo),
      vouchers: demo.vouchers
        .filter((v: Loose) => v.plant === plantId && dateOf(v.visit) <= upTo)
        .map((v: Loose) => ({
          id: "VO1",
          number: v.number,
          plantId,
          date: dateOf(v.visit),
          stemsInPatch: v.stemsInPatch,
          stemsTaken: v.stemsTaken,
          parts: v.parts,
          kept: v.kept,
        })),
      photoIds: photos.filter((p) => p.plant === plantId && dateOf(p.visit) <= upTo).map((p) => p.sha),
      missingViews: [
        { viewId: "stem_cut", name: "cross-section of a fallen stem", stageId: "S5", stageName: "full flower" },
        { viewId: "winter", name: "runners, buds or rosettes", stageId: "S7", stageName: "ripe, shedding" },
      ],
    };
  },
  "GET /api/plants/{plantId}/case": ({ plantId }, _q, upTo) => {
    const plant = byId(plants, plantId);
    if (plant === undefined) return null;
    const { left, ...rest } = standing(plantId, upTo);
    const found = findings(plantId, upTo);
    const ranked = taxa
      .map((taxon) => ({ taxon, groups: groupsAgainst(plantId, upTo, taxon.id) }))
      .sort((a, b) => sumOf(a.groups) - sumOf(b.groups));
    const weightSum = ranked.reduce((sum, r) => sum + Math.exp(-sumOf(r.groups) / 2), 0) + 0.02;
    const leader = left.length === 0 ? null : (ranked[0]?.taxon ?? null);
    const stands = leader === null ? [] : found.filter((f) => f.character.weight > 1 && !against(f, leader.id));
    const seenGroups = new Set<string>();
    const oneEach = stands.filter((f) => !seenGroups.has(f.character.group) && Boolean(seenGroups.add(f.character.group)));
    const witnessesAgainst = leader === null ? [] : [...groupsAgainst(plantId, upTo, leader.id).values()];
    return {
      plantId,
      nick: plant.nick,
      upTo,
      notice,
      standing: rest,
      leader: leader === null ? null : taxonName(leader.id),
      runnerUp: leader === null || ranked[1] === undefined ? null : taxonName(ranked[1].taxon.id),
      stands: oneEach.map((f, i) => witness(f, 9 - i)),
      standsAgainst: witnessesAgainst.map((f) => witness(f, -3)),
      rivals: ranked
        .filter((r) => r.taxon.id !== leader?.id)
        .map(({ taxon, groups }) => ({
          ...taxonName(taxon.id),
          left: left.includes(taxon),
          inRange: taxon.expectedInCounty,
          sentence:
            groups.size === 0
              ? "nothing speaks against it"
              : `${left.includes(taxon) ? "spoken against" : "out"} by ${[...groups.values()].map((f) => f.character.name.toLowerCase()).join(", ")}`,
          witnessCount: groups.size,
          againstSum: sumOf(groups),
          probability: Math.exp(-sumOf(groups) / 2) / weightSum,
          against: [...groups.values()].map((f) => witness(f, -f.character.weight)),
          ifRight:
            groups.size === 0
              ? "Nothing would have to be wrong."
              : `All of these would have to be wrong: ${[...groups.values()].map((f) => `${f.character.name.toLowerCase()} (${textOf(f)})`).join("; ")}.`,
        })),
      noneOfThese: 0.02 / weightSum,
      decide: checks(plantId, upTo),
      probability: {
        leader: leader === null ? null : 1 / weightSum,
        typicality: leader === null ? null : 0.41,
        withoutPrior: leader === null ? null : 1 / weightSum,
        sentence: "The chance follows from the table and the looks alone; the prior did nothing.",
      },
      robustness: {
        leastWrong: left.length === 1 ? 1 : 0,
        sentence: "One look would have to be wrong for the answer to change: capsule length.",
        characterIds: ["capsule_len"],
      },
      disagreement:
        plantId === "P6"
          ? "The visible rule leaves two, square-stalked and short-fruited; the probabilities lean to square-stalked with 0.86. The rule stands: nothing decides between them."
          : null,
      hybrid: {
        pairs:
          left.length === 0
            ? (demo.expected.hybridPairs["P5"] as Loose[]).map((h, i) => ({
                parents: h.pair.map(taxonName),
                againstSum: h.againstSum,
                known: i < 2,
                sentence: [
                  { text: short(byId(taxa, h.pair[0]).name), italic: true },
                  { text: " × ", italic: false },
                  { text: short(byId(taxa, h.pair[1]).name), italic: true },
                  { text: `: ${h.againstSum} speak against the two together.`, italic: false },
                ],
              }))
            : [],
        signs: left.length === 0 ? ["Well-filled seeds in four capsules: 14, 8, 17 and 11 %."] : [],
        checkAgain:
          left.length === 0
            ? [
                { characterId: "seed_face", sentence: "Seed surface: ridged or even, ×20." },
                { characterId: "glands", sentence: "Gland-tipped hairs on stem and capsule, ×20, five flowers." },
              ]
            : [],
      },
      rule: {
        text: demo.rules.left,
        groupsSeen: seenGroups.size,
        outings: visits.filter((v) => v.date <= upTo).length,
        wanting: rest.word === "cf" ? ["a second independent witness against square-stalked willowherb"] : [],
      },
      slips: slipsOf(plantId, upTo).map((s) => ({
        ...s,
        nameSpans: s.name
          .split(" x ")
          .flatMap((part: string, i: number) => [...(i === 0 ? [] : [{ text: " × ", italic: false }]), { text: part, italic: true }]),
      })),
    };
  },
  "GET /api/tables": () => ({
    tables: empty
      ? []
      : [{ id: "willowherbs", title: "Willowherbs of the demo", notice, taxonCount: 10, characterCount: 28, scoreCount: 280 }],
  }),
  "GET /api/tables/{tableId}": () => ({
    id: "willowherbs",
    title: "Willowherbs of the demo",
    notice,
    stages,
    characters: characters.map((c) => ({
      ...c,
      answer: c.states
        ? { kind: "states", states: c.states }
        : c.kind === "derived" || c.kind === "ratio"
          ? { kind: "ratio", numerator: "leaf_len", denominator: "leaf_wid" }
          : { kind: "measure", unit: c.unit ?? "mm" },
      onlyIf: null,
    })),
    taxa: taxa.map((t) => ({ id: t.id, name: t.name, authorship: t.author, family: t.family, vernacular: t.names })),
    scores: [],
  }),
  "GET /api/tables/{tableId}/apart": (_p, query) => {
    const ids: string[] = String(query.taxa).split(",");
    return {
      taxa: ids.map(taxonName),
      rows: characters
        .map((c) => {
          const values: Loose[] = ids.map((id) => demo.values[id][c.id]);
          const texts = values.map((v) =>
            v === undefined
              ? "not scored"
              : v.notApplicable
                ? "not applicable"
                : v.range
                  ? `(${v.range[0]}–)${v.range[1]}–${v.range[2]}(–${v.range[3]})`
                  : `${v.usual.map((s: string) => stateName(c, s)).join(" or ")}${v.rarely ? `, rarely ${v.rarely.map((s: string) => stateName(c, s)).join(" or ")}` : ""}`,
          );
          const ranges = values.map((v) => (v?.range ? { min: v.range[0], low: v.range[1], high: v.range[2], max: v.range[3] } : null));
          const [a, b] = values;
          const pair = `${[ids[0], ids[1]].join("|")}`;
          const sure = (demo.expected.separates[pair] ?? demo.expected.separates[[ids[1], ids[0]].join("|")] ?? []).includes(c.id);
          const usual = a?.usual && b?.usual && !a.usual.some((s: string) => b.usual.includes(s));
          return {
            characterId: c.id,
            part: c.part,
            name: c.name,
            tool: c.tool,
            difference: a === undefined || b === undefined ? "silent" : sure ? "sure" : usual ? "usual" : "none",
            cells: texts.map((text, i) => ({ text, range: ranges[i] })),
            unit: c.unit ?? "",
            seenIn: c.seenIn,
          };
        })
        .sort(
          (x, y) => ["sure", "usual", "none", "silent"].indexOf(x.difference) - ["sure", "usual", "none", "silent"].indexOf(y.difference),
        ),
      notSeparated: [],
    };
  },
  "GET /api/sheets": () => ({
    sheets: empty
      ? []
      : photos.map((p) => ({
          id: p.sha,
          fileName: p.file,
          taken: p.takenTrue,
          outingId: p.visit,
          plantId: p.plant,
          placedBy: p.plant ? "clock" : "nobody",
          stageId: p.stage,
          viewId: p.view,
          part: byId(demo.views, p.view)?.name ?? "",
          widthPx: 2000,
          heightPx: 1500,
          leftOut: false,
          hasAlt: true,
        })),
  }),
  "GET /api/sheets/{photoId}": ({ photoId }) => {
    const p = photos.find((one) => one.sha === photoId);
    if (p === undefined) return null;
    const view = byId(demo.views, p.view)?.name ?? "no view given";
    return {
      id: p.sha,
      fileName: p.file,
      format: "jpeg",
      bytes: 1000,
      widthPx: 2000,
      heightPx: 1500,
      orientation: 1,
      takenCamera: p.takenCamera,
      broughtAt: "2022-11-07T10:00:00Z",
      outingId: p.visit,
      plantId: p.plant,
      placedBy: "clock",
      stageId: p.stage,
      viewId: p.view,
      caption: `${byId(plants, p.plant)?.nick ?? "A sheet"}: ${view}`,
      altText: `Drawing in place of a photograph: ${view}`,
      credit: "invented",
      licence: "CC0",
    };
  },
};

/** A flat drawing in place of a photograph: a stem with leaves, its tint by stage. */
const drawing = (photoId: string): string => {
  const p = photos.find((one) => one.sha === photoId);
  const seed = Number.parseInt(photoId.slice(0, 6), 16);
  const tint =
    ["#8f8a6c", "#7f9a63", "#6f9457", "#8da26a", "#7d9c62", "#799662", "#8a9463", "#94805a", "#857b6a"][
      Number(String(p?.stage ?? "S4").slice(1))
    ] ?? "#7d9c62";
  const leaves = Array.from({ length: 7 }, (_, i) => {
    const y = 660 - i * 88;
    const w = 150 - i * 13 + (seed % 17);
    return `<path d="M400 ${y}q${w / 2}-${50 + (i % 3) * 8} ${w}-18q-${w / 2} 40-${w} 18M400 ${y}q-${w / 2}-${50 + (i % 3) * 8}-${w}-18q${w / 2} 40 ${w} 18" fill="${tint}" stroke="#26331f" stroke-width="2.4"/>`;
  }).join("");
  const flower = ["S4", "S5"].includes(p?.stage)
    ? `<g fill="#c878a4" stroke="#5b2644" stroke-width="2"><circle cx="372" cy="96" r="19"/><circle cx="428" cy="96" r="19"/><circle cx="400" cy="68" r="19"/><circle cx="400" cy="124" r="19"/></g>`
    : "";
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 800 600" width="800" height="600"><rect width="800" height="600" fill="hsl(${70 + (seed % 40)} 16% ${58 + (seed % 14)}%)"/><g transform="rotate(${(seed % 13) - 6} 400 600) translate(${(seed % 120) - 60} -30) scale(1 .95)"><path d="M400 720V110" stroke="#4b5a33" stroke-width="9"/>${leaves}${flower}</g><rect x="610" y="500" width="150" height="34" fill="#f7f4ea" stroke="#333"/><path d="M620 517h130" stroke="#222" stroke-width="3" stroke-dasharray="13 13"/></svg>`;
};

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".json": "application/json",
};

createServer((request, response) => {
  const url = new URL(request.url ?? "/", "http://local");
  const send = (status: number, type: string, body: string | Buffer): void => {
    response.writeHead(status, { "content-type": type, "content-security-policy": policy, "x-content-type-options": "nosniff" });
    response.end(body);
  };
  const problem = (status: number, code: string, detail: string, more: object = {}): void =>
    send(
      status,
      "application/problem+json",
      JSON.stringify({ type: "about:blank", title: "This cannot be done", status, code, detail, ...more }),
    );
  if (url.pathname.startsWith("/image/")) return send(200, "image/svg+xml", drawing(url.pathname.split("/")[2] ?? ""));
  if (url.pathname.startsWith("/api/")) {
    const method = request.method ?? "GET";
    for (const [key, make] of Object.entries(replies)) {
      const [verb, path] = key.split(" ") as [string, string];
      const match = new RegExp(`^${path.replace(/\{(\w+)\}/g, "(?<$1>[^/]+)")}$`).exec(url.pathname);
      if (verb !== method || match === null) continue;
      const params = Object.fromEntries(Object.entries(match.groups ?? {}).map(([n, v]) => [n, decodeURIComponent(v as string)]));
      const reply = make(params, Object.fromEntries(url.searchParams), url.searchParams.get("upTo") ?? "2022-11-06");
      if (reply === null)
        return problem(404, "unknown", `There is no ${Object.values(params).join(", ")} in this book.`, {
          remedy: "Open the list of plants.",
        });
      const schema = (api as Loose)[key].reply;
      return send(200, "application/json", JSON.stringify(schema.parse(reply)));
    }
    if (method === "PUT" && url.pathname.startsWith("/api/slips/"))
      return problem(409, "slip-against-the-case", "The name stands against the case: three independent witnesses speak against it.", {
        kept: "The slip is still in the form.",
        remedy: "Say your own reason, or write the name with a question mark.",
      });
    return problem(404, "no-route", `${method} ${url.pathname} is not made here.`);
  }
  const file = normalize(join(web, url.pathname));
  const isFile = file.startsWith(web) && extname(file) !== "" && existsSync(file);
  return send(
    200,
    isFile ? (types[extname(file)] ?? "application/octet-stream") : "text/html; charset=utf-8",
    readFileSync(isFile ? file : join(web, "index.html")),
  );
}).listen(port, "127.0.0.1", () => console.log(`mock on http://127.0.0.1:${port}/`));
