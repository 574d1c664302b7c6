/**
 * A species account drafted from evidence: plain data in, an account with all its sections out, every sentence with what it
 * rests on. Pure; the same input gives the same account.
 */
import {
  abbreviatedGenus,
  accountSections,
  compareParts,
  describeFindings,
  describeTaxon,
  difference,
  joined,
  median,
  nameParts,
  nameText,
  sampleNotation,
  scoreWords,
  stateNames,
  unitOfCharacter,
  writeFloraRange,
  type AccountSection,
  type Character,
  type CharacterFinding,
  type CharacterId,
  type NameSpan,
  type PooledReading,
  type ProseWords,
  type ScoreValue,
  type StateId,
  type Taxon,
  type TaxonId,
} from "../engine/index.js";
import { dateWords, type Say } from "../words/index.js";
import type { AccountInput, AccountPhoto, AccountPlant, PublicLook, PublicReading } from "./account-input.js";
import type {
  AccountModel,
  DescriptionPart,
  EvidenceEntry,
  Figure,
  Line,
  Mark,
  MeasureRow,
  PlantBlock,
  RivalBlock,
  StageRow,
  Step,
} from "./account-model.js";
import { markedName, spansOf, unmarked } from "./spans.js";

const line = (text: string, marks: readonly Mark[] = []): Line => ({ spans: spansOf(text), marks });
const timesSign = (text: string): string => text.replace(/(^|\s)x(?=\d)/g, "$1\u00D7");
const unique = <T>(items: readonly T[]): readonly T[] => [...new Set(items)];

/** The joining words of descriptions, spoken in the account's language. */
export const proseWords = (say: Say): ProseWords => ({
  or: (first, second) => say("prose.or", { first, second }),
  rarely: (usual, rarely) => say("prose.rarely", { usual, rarely }),
  onlyRarely: (rarely) => say("prose.onlyRarely", { rarely }),
  sentence: (character, finding) => say("prose.sentence", { character, finding }),
  absent: (n, share) => (n === null || share === null ? say("prose.absent") : say("prose.absentOf", { n, share: Math.ceil(share * 100) })),
  betweenTwo: (states) => say("prose.betweenTwo", { states }),
  notApplicable: say("prose.notApplicable"),
  measured: (range, n, stems) => say("prose.measured", { range, n, stems: stems ?? 0 }),
});

/** What the sections share: who speaks, the table by id, numbers of evidence and sources. */
interface Frame {
  readonly input: AccountInput;
  readonly say: Say;
  readonly words: ProseWords;
  readonly characters: ReadonlyMap<string, Character>;
  readonly taxa: ReadonlyMap<string, Taxon>;
  readonly numberOf: ReadonlyMap<string, number>;
  readonly figureOf: ReadonlyMap<string, number>;
  readonly sourceNumber: ReadonlyMap<string, number>;
}

/** "E. obscurum", not to be broken after the initial. */
const shortName = (taxon: Taxon): readonly NameSpan[] =>
  nameParts(abbreviatedGenus(taxon.name)).map((span) => ({ ...span, text: span.text.replace(/^(\u00D7?\p{Lu}\.) /u, "$1\u00A0") }));
const capital = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);
/** With a full stop, unless it ends with a mark already. */
const ended = (text: string): string => (/[.!?\u2026]$/u.test(text) || text === "" ? text : `${text}.`);
const vernacularOf = (taxon: Taxon, language: string): string =>
  taxon.vernacular[language] ?? taxon.vernacular[language.split("-")[0] ?? ""] ?? "";

const figuresOf = (input: AccountInput, say: Say): readonly Figure[] => {
  const dates = dateWords(input.book.language);
  const plantNumber = new Map(input.plants.map((plant, i) => [plant.id, i + 1]));
  return input.photos.map((photo: AccountPhoto, i) => ({
    number: i + 1,
    id: photo.id,
    files: photo.files,
    alt: photo.altText !== "" ? photo.altText : altDraft(photo, say),
    altMissing: photo.altText === "",
    caption: ended(capital(photo.caption !== "" ? photo.caption : altDraft(photo, say))),
    date: photo.date,
    dateText: photo.date === null ? "" : dates.day(photo.date),
    scaleText: say(photo.hasScale ? "evidence.scale" : "evidence.noScale"),
    credit: photo.credit,
    licence: photo.licence,
    plantNumber: photo.plantId === null ? null : (plantNumber.get(photo.plantId) ?? null),
    part: photo.part,
    stageId: photo.stageId,
  }));
};

/** What can be said of a photograph nobody has described: its view and stage. */
export const altDraft = (photo: Pick<AccountPhoto, "viewName" | "stageName">, say: Say): string => {
  const known = [photo.viewName, photo.stageName].filter((text) => text !== "");
  if (known.length === 0) return say("evidence.noAlt");
  return known.length === 1 ? (known[0] ?? "") : say("evidence.photoOf", { view: known[0], stage: known[1] });
};

type Observation = { readonly kind: "look"; readonly of: PublicLook } | { readonly kind: "reading"; readonly of: PublicReading };

/** Looks and readings of a plant in the order of their days. */
const observationsOf = (plant: AccountPlant): readonly Observation[] =>
  [
    ...plant.looks.filter((look) => look.status !== "not-looked").map((of): Observation => ({ kind: "look", of })),
    ...plant.readings.map((of): Observation => ({ kind: "reading", of })),
  ].sort((a, b) => (a.of.date < b.of.date ? -1 : a.of.date > b.of.date ? 1 : 0));

const foundOfLook = (look: PublicLook, character: Character | undefined, say: Say, words: ProseWords): string => {
  if (look.status === "not-there") return say("evidence.notThere");
  if (look.status === "could-not-tell") return say("evidence.couldNotTell");
  if (look.status === "not-looked") return say("evidence.notLooked");
  const states = joined(character === undefined ? look.states : stateNames(character, look.states), words.or);
  return look.sure === "between-two" ? `${states} (${say("evidence.betweenTwo")})` : states;
};

const entriesOf = (frame: Frame, plant: AccountPlant, plantNumber: number): readonly EvidenceEntry[] => {
  const { say, words, characters, numberOf, figureOf } = frame;
  const dates = dateWords(frame.input.book.language);
  return observationsOf(plant).map((observation): EvidenceEntry => {
    const { of } = observation;
    const character = characters.get(of.characterId);
    const shared = {
      number: numberOf.get(`${observation.kind}:${of.id}`) ?? 0,
      kind: observation.kind,
      id: of.id,
      plantNumber,
      characterId: of.characterId,
      character: character?.name ?? of.characterId,
      date: of.date,
      dateText: dates.day(of.date),
      note: ended(of.note),
      leftOut: of.leaveOut === null ? null : ended(say("evidence.leftOut", { why: of.leaveOut })),
      figures: of.photoIds.flatMap((id) => figureOf.get(id) ?? []),
    };
    const by = of.by === "" ? "" : say("evidence.by", { by: of.by });
    const how = (...parts: readonly string[]): string => ended([...parts, by].filter((part) => part !== "").join(", "));
    if (observation.kind === "look") {
      const look = observation.of;
      return {
        ...shared,
        found: ended(foundOfLook(look, character, say, words)),
        how: how(
          look.lens === null ? say("evidence.nakedEye") : say("evidence.lens", { lens: timesSign(look.lens) }),
          look.n === null ? "" : say("evidence.n", { n: look.n }),
        ),
        values: null,
        unit: null,
        n: look.n,
        stems: null,
      };
    }
    const reading = observation.of;
    return {
      ...shared,
      found: ended(`${reading.values.join(", ")}${reading.unit === "" ? "" : ` ${reading.unit}`}`),
      how: how(
        reading.method,
        reading.plusMinus === null ? "" : say("evidence.plusMinus", { error: String(reading.plusMinus), unit: reading.unit }).trim(),
        say("evidence.n", { n: reading.values.length }),
        reading.stems === null ? "" : say("evidence.stems", { stems: reading.stems }),
      ),
      values: reading.values,
      unit: reading.unit,
      n: reading.values.length,
      stems: reading.stems,
    };
  });
};

/** Readings that count, pooled by character over all plants; the stems of different days and plants are added up. */
const poolReadings = (plants: readonly AccountPlant[]): readonly PooledReading[] => {
  const pools = new Map<string, PooledReading>();
  for (const plant of plants) {
    const ofPlant = new Map<string, PooledReading>();
    for (const reading of plant.readings) {
      if (reading.leaveOut !== null) continue;
      const key = `${reading.characterId}|${reading.unit}`;
      const known = ofPlant.get(key);
      ofPlant.set(key, {
        characterId: reading.characterId,
        unit: reading.unit,
        values: [...(known?.values ?? []), ...reading.values],
        // Marked stems are met again on another day: of one plant the largest number counts, not the sum.
        stems:
          known === undefined
            ? reading.stems
            : known.stems === null || reading.stems === null
              ? null
              : Math.max(known.stems, reading.stems),
        plusMinus: known === undefined ? reading.plusMinus : larger(known.plusMinus, reading.plusMinus),
        readingIds: [...(known?.readingIds ?? []), reading.id],
      });
    }
    for (const [key, pool] of ofPlant) {
      const known = pools.get(key);
      pools.set(
        key,
        known === undefined
          ? pool
          : {
              ...pool,
              values: [...known.values, ...pool.values],
              stems: known.stems === null || pool.stems === null ? null : known.stems + pool.stems,
              plusMinus: larger(known.plusMinus, pool.plusMinus),
              readingIds: [...known.readingIds, ...pool.readingIds],
            },
      );
    }
  }
  return [...pools.values()];
};
const larger = (a: number | null, b: number | null): number | null => (a === null ? b : b === null ? a : Math.max(a, b));

/** Findings of several plants as one: states seen on any of them; measured values come from the pool. */
const mergeFindings = (plants: readonly AccountPlant[]): readonly CharacterFinding[] => {
  const merged = new Map<string, CharacterFinding>();
  for (const plant of plants) {
    for (const finding of plant.caseFile.findings) {
      const known = merged.get(finding.characterId);
      if (known === undefined) {
        merged.set(finding.characterId, finding);
        continue;
      }
      const statesOf = (f: CharacterFinding): readonly StateId[] => (f.finding.kind === "states" ? f.finding.states : []);
      const states = unique([...statesOf(known), ...statesOf(finding)]);
      merged.set(finding.characterId, {
        ...known,
        finding:
          known.finding.kind === "measured" || states.length === 0
            ? known.finding
            : { kind: "states", states, betweenTwo: [known, finding].some((f) => f.finding.kind === "states" && f.finding.betweenTwo) },
        lookIds: unique([...known.lookIds, ...finding.lookIds]),
        readingIds: unique([...known.readingIds, ...finding.readingIds]),
      });
    }
  }
  return [...merged.values()];
};

const marksOf = (frame: Frame, refs: readonly { readonly kind: "source" | "look" | "reading"; readonly id: string }[]): readonly Mark[] =>
  refs
    .flatMap((ref): Mark[] => {
      const number = ref.kind === "source" ? frame.sourceNumber.get(ref.id) : frame.numberOf.get(`${ref.kind}:${ref.id}`);
      return number === undefined ? [] : [{ kind: ref.kind === "source" ? "source" : "evidence", number }];
    })
    .sort((a, b) => a.number - b.number);

const describe = (frame: Frame, findings: readonly CharacterFinding[], pooled: readonly PooledReading[]): readonly DescriptionPart[] => {
  const { table, taxonId } = frame.input;
  const floras = describeTaxon(table, taxonId, frame.words);
  const ours = describeFindings(table, { findings, pooled }, frame.words);
  const parts = unique([...floras, ...ours].map((part) => part.part)).toSorted(compareParts);
  const lines = (described: typeof floras, part: string): readonly Line[] =>
    (described.find((d) => d.part === part)?.sentences ?? []).map((s) => line(unmarked(s.text), marksOf(frame, s.evidence)));
  return parts.map((part) => ({ part, floras: lines(floras, part), ours: lines(ours, part) }));
};

/** Values computed organ by organ (ratios), where one plant has them; those of several plants are not pooled. */
const computedRows = (frame: Frame, findings: readonly CharacterFinding[], pooled: readonly PooledReading[]): readonly MeasureRow[] =>
  findings.flatMap((finding): MeasureRow[] => {
    const character = frame.characters.get(finding.characterId);
    const { finding: found } = finding;
    if (found.kind !== "measured" || character === undefined || pooled.some((pool) => pool.characterId === finding.characterId)) return [];
    const { unit, min, max, n, stems } = found;
    const write = (low: number, high: number): string => writeFloraRange({ min: null, low, high, max: null }, { unit, decimals: 1 });
    return [
      {
        characterId: finding.characterId,
        character: character.name,
        ours: write(min, max),
        n,
        stems,
        median: write(found.median, found.median),
        basis: "extremes",
        floras: florasRange(frame, character),
        marks: marksOf(
          frame,
          finding.readingIds.map((id) => ({ kind: "reading" as const, id })),
        ),
      },
    ];
  });

const florasRange = (frame: Frame, character: Character): string | null => {
  const { table, taxonId } = frame.input;
  const value = table.scores.find((s) => s.taxonId === taxonId && s.characterId === character.id)?.value;
  return value?.kind === "range" ? writeFloraRange(value, { unit: unitOfCharacter(character) }) : null;
};

const measure = (frame: Frame, findings: readonly CharacterFinding[], pooled: readonly PooledReading[]): readonly MeasureRow[] => {
  const order = new Map<string, number>(frame.input.table.characters.map((character, i) => [character.id, i]));
  const rows = pooled.map((pool): MeasureRow => {
    const character = frame.characters.get(pool.characterId);
    const sample = sampleNotation(pool.values, { unit: pool.unit, error: pool.plusMinus });
    const middle = median(pool.values);
    return {
      characterId: pool.characterId,
      character: character?.name ?? pool.characterId,
      ours: sample.text,
      n: sample.n,
      stems: pool.stems,
      median: writeMiddle(middle, pool),
      basis: sample.basis,
      floras: character === undefined ? null : florasRange(frame, character),
      marks: marksOf(
        frame,
        pool.readingIds.map((id) => ({ kind: "reading" as const, id })),
      ),
    };
  });
  return [...rows, ...computedRows(frame, findings, pooled)].toSorted(
    (a, b) => (order.get(a.characterId) ?? 0) - (order.get(b.characterId) ?? 0),
  );
};
const writeMiddle = (middle: number, pool: PooledReading): string =>
  sampleNotation([middle], { unit: pool.unit, error: pool.plusMinus }).text;

/** The strongest independent witnesses, as few as exclude every rival twice, three to five, in the order of the seasons. */
const stepsOf = (frame: Frame, findings: readonly CharacterFinding[], figures: readonly Figure[]): readonly Step[] => {
  const { input, say, words, characters, taxa } = frame;
  const excluded = new Map<string, { characterId: CharacterId; weight: number; rivals: Set<TaxonId> }>();
  for (const plant of input.plants) {
    for (const rival of plant.caseFile.rivals) {
      if (rival.taxonId === input.taxonId) continue;
      for (const witness of rival.against) {
        const [first] = witness.characterIds;
        if (first === undefined) continue;
        const known = excluded.get(witness.group) ?? { characterId: first, weight: witness.weight, rivals: new Set<TaxonId>() };
        known.rivals.add(rival.taxonId);
        if (witness.weight > known.weight) {
          known.characterId = first;
          known.weight = witness.weight;
        }
        excluded.set(witness.group, known);
      }
    }
  }
  const chosen: { characterId: CharacterId; rivals: ReadonlySet<TaxonId> }[] = [];
  const timesOut = new Map<TaxonId, number>();
  const rest = new Map(excluded);
  while (chosen.length < 5 && rest.size > 0) {
    const worth = (candidate: { weight: number; rivals: ReadonlySet<TaxonId> }): number =>
      [...candidate.rivals].filter((rival) => (timesOut.get(rival) ?? 0) < 2).length * candidate.weight;
    const [group, best] = [...rest].reduce((a, b) => (worth(b[1]) > worth(a[1]) ? b : a));
    if (worth(best) === 0 && chosen.length >= 3) break;
    rest.delete(group);
    chosen.push(best);
    best.rivals.forEach((rival) => timesOut.set(rival, (timesOut.get(rival) ?? 0) + 1));
  }
  const daysOf = (id: CharacterId): readonly string[] => {
    const finding = findings.find((f) => f.characterId === id);
    const ids = new Set<string>([...(finding?.lookIds ?? []), ...(finding?.readingIds ?? [])]);
    return input.plants
      .flatMap((plant) => [...plant.looks, ...plant.readings].filter((evidence) => ids.has(evidence.id)).map((evidence) => evidence.date))
      .toSorted();
  };
  // The season in which it was found, whatever the year.
  const season = (id: CharacterId): string => daysOf(id)[0]?.slice(5) ?? "99";
  const usedFigures = new Set<number>();
  return chosen
    .toSorted((a, b) => (season(a.characterId) < season(b.characterId) ? -1 : season(a.characterId) > season(b.characterId) ? 1 : 0))
    .flatMap(({ characterId, rivals }): Step[] => {
      const character = characters.get(characterId);
      const finding = findings.find((f) => f.characterId === characterId);
      if (character === undefined || finding === undefined) return [];
      const described = describeFindings(
        { ...input.table, characters: [character] },
        { findings: [finding], pooled: poolReadings(input.plants) },
        words,
      );
      const sentence = described[0]?.sentences[0];
      if (sentence === undefined) return [];
      // As the character lists them: winter organs go from autumn through the turn of the year.
      const stageNames = character.seenIn.flatMap((id) => input.table.stages.find((stage) => stage.id === id)?.name ?? []);
      const [from, to] = [stageNames[0] ?? "", stageNames.at(-1) ?? ""];
      const states = finding.finding.kind === "states" ? finding.finding.states : [];
      const plain = character.answer.kind === "states" ? (character.answer.states.find((s) => s.id === states[0])?.plain ?? "") : "";
      const rivalNames = [...rivals].flatMap((id) => {
        const taxon = taxa.get(id);
        return taxon === undefined ? [] : [markedName(shortName(taxon))];
      });
      const days = daysOf(characterId);
      const fitting = figures.filter(
        (f) =>
          !usedFigures.has(f.number) && f.part === character.part && (f.stageId === null || character.seenIn.some((s) => s === f.stageId)),
      );
      const figure = fitting.find((f) => days.includes(f.date ?? "")) ?? fitting[0];
      if (figure !== undefined) usedFigures.add(figure.number);
      return [
        {
          stages: from === to ? from : `${from} \u2013 ${to}`,
          line: line(unmarked(sentence.text), marksOf(frame, sentence.evidence)),
          plain: ended(capital(plain)),
          tool: say("steps.with", { tool: say(`pageTool.${character.tool}`) }),
          excludes:
            rivalNames.length === 0
              ? null
              : line(say("steps.excludes", { taxa: joined(rivalNames, (first, second) => say("prose.and", { first, second })) })),
          error: character.errors[0] === undefined ? "" : say("steps.error", { error: timesSign(character.errors[0]) }),
          figure: figure?.number ?? null,
        },
      ];
    });
};

const rivalsOf = (frame: Frame): readonly RivalBlock[] => {
  const { input, say, characters, taxa, words } = frame;
  const { table, taxonId } = input;
  const scoreOf = (taxon: TaxonId, character: Character): ScoreValue =>
    table.scores.find((s) => s.taxonId === taxon && s.characterId === character.id)?.value ?? { kind: "unknown" };
  const ids = unique(input.plants.flatMap((plant) => plant.caseFile.rivals.map((rival) => rival.taxonId))).filter((id) => id !== taxonId);
  return ids.flatMap((id): RivalBlock[] => {
    const taxon = taxa.get(id);
    if (taxon === undefined) return [];
    const standings = input.plants.flatMap((plant) => plant.caseFile.rivals.filter((rival) => rival.taxonId === id));
    const left = standings.some((standing) => standing.left);
    // Of several plants the one with the fewest witnesses counts: an account is as strong as its weakest plant.
    const fewest = Math.min(...standings.map((standing) => standing.against.length));
    const witnesses = standings.flatMap((standing) => standing.against).toSorted((a, b) => b.weight - a.weight);
    const deciding = unique(witnesses.flatMap((witness) => witness.characterIds.slice(0, 1)));
    const own = table.characters.filter((character) => character.weight >= 2).map((character) => character.id);
    const differences = unique([...deciding, ...own])
      .flatMap((characterId) => {
        const character = characters.get(characterId);
        if (character === undefined) return [];
        const [here, there] = [scoreOf(taxonId, character), scoreOf(id, character)];
        const how = difference(here, there);
        const [hereText, thereText] = [scoreWords(character, here, words), scoreWords(character, there, words)];
        if (how === "none" || how === "silent" || hereText === null || thereText === null) return [];
        return [{ character: character.name, how, here: hereText, there: thereText }];
      })
      .toSorted((a, b) => Number(a.how === "usual") - Number(b.how === "usual"))
      .slice(0, 3);
    return [
      {
        taxonId: id,
        name: nameParts(taxon.name, taxon.authorship),
        vernacular: vernacularOf(taxon, input.book.language),
        standing: `${say("rivals.against", { count: fewest })}.${left ? ` ${say("rivals.left")}` : ""}`,
        left,
        differences,
      },
    ];
  });
};

const yearOf = (frame: Frame): { readonly rows: readonly StageRow[]; readonly caption: string } => {
  const { input, say } = frame;
  const dates = dateWords(input.book.language);
  const seen = input.plants.flatMap((plant) => plant.stageRecords.filter((r) => r.answer === "yes").map((record) => ({ plant, record })));
  const rows = input.stages.flatMap((stage): StageRow[] => {
    const ofStage = seen
      .filter(({ record }) => record.stageId === stage.id)
      .toSorted((a, b) => (a.record.date < b.record.date ? -1 : a.record.date > b.record.date ? 1 : 0));
    const [first] = ofStage;
    if (first === undefined) return [];
    const days = unique(ofStage.map(({ record }) => record.date));
    const lastWithout = first.plant.visits.filter((visit) => visit < first.record.date).at(-1) ?? null;
    const to = dates.dayOfYear(first.record.date);
    return [
      {
        stage: stage.name,
        dates: days,
        datesText: days.map(dates.dayOfYear).join(", "),
        began: lastWithout === null ? say("year.by", { to }) : say("year.between", { from: dates.dayOfYear(lastWithout), to }),
        lastWithout,
        visits: ofStage.length,
      },
    ];
  });
  const years = unique(seen.map(({ record }) => record.date.slice(0, 4))).toSorted();
  return { rows, caption: say("year.caption", { years: years.join(", "), visits: input.dayCount }) };
};

const uncertaintyText = (metres: number, say: Say): string =>
  metres < 1000
    ? say("setting.metres", { m: Math.ceil(metres / 10) * 10 })
    : say("setting.kilometres", { km: (Math.ceil(metres / 100) / 10).toString() });

/** What is said of a place: the coordinates as coarse as allowed and what was done to them. */
export const placeText = (
  spot: { readonly name: string; readonly place: AccountPlant["spot"]["place"]; readonly sensitive: boolean },
  say: Say,
): string => {
  const { place } = spot;
  const name = spot.name === "" ? "" : say("setting.placeNamed", { name: spot.name });
  if (place.kind === "withheld") return `${say("setting.withheld")} ${say("setting.withheldText")}`;
  if (place.kind === "unknown") return say("setting.unknown", { name });
  const at = { name, lat: place.latText, lon: place.lonText };
  const said =
    place.uncertaintyM === null
      ? say("setting.pointUnknown", at)
      : say("setting.point", { ...at, uncertainty: uncertaintyText(place.uncertaintyM, say) });
  const done = place.gridDegrees === null ? "" : ` ${say("setting.generalised", { grid: String(place.gridDegrees) })}`;
  return `${said}${done}${spot.sensitive ? ` ${say("setting.withheldText")}` : ""}`;
};

const plantTitle = (plant: AccountPlant, number: number, say: Say): string =>
  plant.nick === "" ? say("evidence.plant", { number }) : say("evidence.plantNamed", { number, nick: plant.nick });

/** "7-8" as "July\u2013August"; other texts as they are. */
const monthsText = (months: string, language: string): string => {
  const dates = dateWords(language);
  return months
    .replace(/\d+/g, (n) => (Number(n) >= 1 && Number(n) <= 12 ? dates.dayOfYear(`2021-${n.padStart(2, "0")}`) : n))
    .replace("-", "\u2013");
};

const settingOf = (frame: Frame, taxon: Taxon): readonly Line[] => {
  const { input, say } = frame;
  const settings = unique(input.plants.map((plant) => plant.spot.setting).filter((text) => text !== ""));
  return [
    ...(settings.length === 0 ? [] : [line(say("setting.found", { settings: settings.join("; ") }))]),
    ...(taxon.status === "" ? [] : [line(say("setting.status", { status: taxon.status }))]),
    ...(taxon.band === "" ? [] : [line(say("setting.band", { band: taxon.band }))]),
    ...(taxon.flowerMonths === "" ? [] : [line(say("setting.flowers", { months: monthsText(taxon.flowerMonths, input.book.language) }))]),
    ...input.plants.map((plant, i) =>
      line(say("setting.spot", { plant: plantTitle(plant, i + 1, say), spot: placeText(plant.spot, say) })),
    ),
  ].map(({ spans, marks }) => ({ spans: spans.map((span) => ({ ...span, text: unmarked(span.text) })), marks }));
};

const resultLine = (frame: Frame, plant: AccountPlant): Line => {
  const { caseFile } = plant;
  const names = caseFile.taxonIds.flatMap((id) => {
    const taxon = frame.taxa.get(id);
    return taxon === undefined ? [] : [markedName(nameParts(taxon.name))];
  });
  const joiner =
    caseFile.word === "hybrid-question"
      ? (a: string, b: string) => `${a} \u00D7 ${b}`
      : (first: string, second: string) => frame.say("prose.or", { first, second });
  const name = joined(names, joiner);
  if (caseFile.word === "species" && !caseFile.settled) return line(frame.say("result.species-open", { name }));
  return line(frame.say(`result.${caseFile.word}`, { name }));
};

const plantBlock = (frame: Frame, plant: AccountPlant, number: number): PlantBlock => {
  const { say } = frame;
  const dates = dateWords(frame.input.book.language);
  const facts = [
    plant.marks !== "" ? plant.marks : plant.stemCount === null ? "" : say("evidence.stemCount", { count: plant.stemCount }),
    plant.spot.setting,
  ];
  return {
    number,
    title: plantTitle(plant, number, say),
    facts: facts.filter((fact) => fact !== ""),
    result: resultLine(frame, plant),
    settled: plant.caseFile.settled,
    entries: entriesOf(frame, plant, number),
    slips: plant.slips.map((slip) => ({
      name: nameParts(slip.name, "", slip.qualifier),
      text: say("evidence.slip", { role: `${slip.role}.`, by: slip.by, date: dates.day(slip.on), why: slip.why }),
      overturned: slip.overturned,
    })),
    vouchers: plant.vouchers
      .filter((voucher) => voucher.refusedBecause === null)
      .map((voucher) =>
        [
          say("evidence.voucher", { number: voucher.number, date: dates.day(voucher.date), parts: voucher.parts, kept: voucher.kept }),
          say("evidence.voucherTaken", { taken: voucher.stemsTaken, patch: voucher.stemsInPatch }),
        ].join(" "),
      ),
  };
};

const inOneLine = (frame: Frame, taxon: Taxon): readonly Line[] => {
  const { input, say } = frame;
  const dates = dateWords(input.book.language);
  const all = input.plants.flatMap(observationsOf);
  const days = unique(input.plants.flatMap((plant) => plant.visits)).toSorted();
  const [first, last] = [days[0], days.at(-1)];
  const readings = all.filter((observation) => observation.kind === "reading");
  const what =
    taxon.inOneLine === "" ? [] : [line(`${unmarked(taxon.inOneLine.charAt(0).toLocaleUpperCase() + taxon.inOneLine.slice(1))}.`)];
  if (first === undefined || last === undefined) return [...what, line(say("account.nothingYet"))];
  const span =
    first === last
      ? say("account.spanDay", { from: dates.day(first) })
      : say("account.spanDays", {
          from: first.slice(0, 4) === last.slice(0, 4) ? dates.dayOfYear(first) : dates.day(first),
          to: dates.day(last),
        });
  return [
    ...what,
    line(
      say("account.restsOn", {
        plants: input.plants.length,
        outings: input.dayCount,
        span,
        looks: all.length - readings.length,
        series: readings.length,
        values: readings.reduce((sum, { of }) => sum + ("values" in of ? of.values.length : 0), 0),
      }),
    ),
  ];
};

const cautionsOf = (frame: Frame, taxon: Taxon): readonly string[] => {
  const { input, say } = frame;
  const disturbed = unique(input.table.characters.filter((character) => character.disturbs).map((character) => character.part));
  return [
    ...taxon.cautions,
    say("cautions.study"),
    say("cautions.law"),
    ...(disturbed.length === 0
      ? []
      : [say("cautions.disturbs", { parts: joined(disturbed, (first, second) => say("prose.and", { first, second })) })]),
    ...(input.plants.some((plant) => plant.spot.sensitive) ? [say("cautions.sensitive")] : []),
  ];
};

const creditsOf = (frame: Frame): readonly string[] => {
  const { input, say } = frame;
  const observers = unique(input.plants.flatMap((plant) => [...plant.looks, ...plant.readings].map((o) => o.by).filter((by) => by !== "")));
  const people = observers.map((initials) => {
    const role = input.people.find((person) => person.initials === initials)?.role ?? "";
    return role === "" ? initials : `${initials} (${role})`;
  });
  const credits = unique(input.photos.filter((photo) => photo.credit !== "").map((photo) => JSON.stringify([photo.credit, photo.licence])));
  const author = input.account?.author ?? "";
  const licence = input.account?.licence ?? "";
  return [
    ...(author === "" ? [] : [say("credits.author", { author })]),
    ...(people.length === 0 ? [] : [say("credits.observers", { people: people.join("; ") })]),
    ...credits.map((both) => {
      const [credit, photoLicence] = JSON.parse(both) as [string, string];
      return say("credits.photos", { credit, licence: photoLicence === "" ? "none" : photoLicence });
    }),
    ...(input.photos.length > 0 && credits.length === 0 ? [say("credits.photosUnnamed")] : []),
    licence === "" ? say("credits.noLicence") : say("credits.licence", { licence }),
    say("credits.fonts"),
  ];
};

/**
 * The account of one taxon. Figures are numbered in the order in which they stand on the page.
 * @throws {RangeError} when the table does not hold the taxon.
 */
export const speciesAccount = (input: AccountInput, say: Say): AccountModel => {
  const draft = draftAccount(input, say);
  const placed = unique([draft.leadFigure, ...draft.steps.map((step) => step.figure)].filter((number) => number !== null));
  const first = placed.flatMap((number) => input.photos[number - 1] ?? []);
  return draftAccount({ ...input, photos: [...first, ...input.photos.filter((photo) => !first.includes(photo))] }, say);
};

const draftAccount = (input: AccountInput, say: Say): AccountModel => {
  const { table, taxonId, book } = input;
  const taxa = new Map<string, Taxon>(table.taxa.map((taxon) => [taxon.id, taxon]));
  const taxon = taxa.get(taxonId);
  if (taxon === undefined) throw new RangeError(`speciesAccount: the table ${table.id} holds no taxon ${taxonId}`);
  const keys = input.plants.flatMap((plant) => observationsOf(plant).map(({ kind, of }) => `${kind}:${of.id}`));
  const figures = figuresOf(input, say);
  const usedSources = unique(table.scores.filter((s) => s.taxonId === taxonId).flatMap((s) => s.sourceId ?? []));
  const sources = table.sources.filter((source) => usedSources.includes(source.id));
  const frame: Frame = {
    input,
    say,
    words: proseWords(say),
    characters: new Map(table.characters.map((character) => [character.id, character])),
    taxa,
    numberOf: new Map(keys.map((key, i) => [key, i + 1])),
    figureOf: new Map(figures.map((figure) => [figure.id, figure.number])),
    sourceNumber: new Map(sources.map((source, i) => [source.id, i + 1])),
  };
  const findings = mergeFindings(input.plants);
  const pooled = poolReadings(input.plants);
  const settled = input.plants.some((plant) => plant.caseFile.settled && plant.caseFile.taxonIds.includes(taxonId));
  const name = nameParts(taxon.name, taxon.authorship);
  const lead = figures.find((figure) => figure.part === "whole plant" && /flower/i.test(input.photos[figure.number - 1]?.stageName ?? ""));
  const edited = Object.fromEntries(Object.entries(input.account?.edited ?? {}).filter(([, text]) => (text ?? "").trim() !== ""));
  return {
    language: book.language,
    bookTitle: book.title,
    taxonId,
    name,
    nameText: nameText(name),
    bareName: nameText(nameParts(taxon.name)),
    authorship: taxon.authorship,
    rank: taxon.rank,
    family: taxon.family,
    vernacular: vernacularOf(taxon, book.language),
    otherVernacular: Object.entries(taxon.vernacular)
      .filter(([language]) => language !== book.language.split("-")[0])
      .map(([language, vernacular]) => ({ language, name: vernacular })),
    notices: unique([
      ...(book.illustrative ? [say("page.illustrative")] : []),
      ...[book.notice, table.notice].filter((notice) => notice !== ""),
      ...(settled ? [] : [say("page.notSettled")]),
    ]),
    settled,
    titles: Object.fromEntries(accountSections.map((id) => [id, say(`section.${id}`)])) as Record<AccountSection, string>,
    edited: edited as Partial<Record<AccountSection, string>>,
    leadFigure: (lead ?? figures.find((figure) => figure.part === "whole plant") ?? figures[0])?.number ?? null,
    inOneLine: inOneLine(frame, taxon),
    steps: stepsOf(
      frame,
      findings,
      figures.filter((figure) => figure.part !== "whole plant"),
    ),
    description: describe(frame, findings, pooled),
    measures: measure(frame, findings, pooled),
    rivals: rivalsOf(frame),
    year: yearOf(frame),
    setting: settingOf(frame, taxon),
    places: input.plants.map((plant, i) => ({ plantNumber: i + 1, place: plant.spot.place, name: plant.spot.name })),
    cautions: cautionsOf(frame, taxon),
    plants: input.plants.map((plant, i) => plantBlock(frame, plant, i + 1)),
    figures,
    sources: sources.map((source, i) => ({ number: i + 1, citation: source.citation, licence: source.licence })),
    sourceNotes: [
      say("sources.table", { title: table.title }) + ".",
      ...(sources.length === 0 ? [say("sources.none")] : []),
      ...(table.notice === "" ? [] : [say("sources.noticeOf", { notice: table.notice })]),
    ],
    credits: creditsOf(frame),
    author: input.account?.author ?? "",
    licence: input.account?.licence ?? "",
    missingAlt: figures.filter((figure) => figure.altMissing).map((figure) => figure.id),
  };
};
