/** Sentences of the case: one place makes them, so that screen, page and command line say the same. */
import {
  nameParts,
  nameText,
  sampleNotation,
  type CaseByRule,
  type Character,
  type CharacterFinding,
  type CharacterId,
  type Happening,
  type IsoDate,
  type NextCheck,
  type ReferenceTable,
  type ScoreValue,
  type StateId,
  type Taxon,
  type TaxonId,
  type Tool,
  writeFloraRange,
} from "../engine/index.js";
import type { Spans, Standing, TaxonName } from "../contract/index.js";
import { dateWords, listSpans, listText, say, saySpans, type Span } from "../words/index.js";

const days = dateWords("en");

/** Words may be changed by whoever is handed a reply; what the catalogue gives may not. */
const own = (spans: readonly Span[]): Spans => spans.map(({ text, italic }) => ({ text, italic }));

/** What speaks of a table's taxa and characters by name. */
export interface TableWords {
  readonly taxon: (id: TaxonId) => Taxon | undefined;
  readonly character: (id: CharacterId) => Character | undefined;
  /** "short-fruited willowherb", or the scientific name where it has no vernacular one. */
  readonly shortTaxon: (id: TaxonId) => readonly Span[];
  /** "short-fruited willowherb, Epilobium obscurum Schreb." */
  readonly fullTaxon: (id: TaxonId) => readonly Span[];
  readonly taxonName: (id: TaxonId) => TaxonName;
  readonly characterName: (id: CharacterId) => string;
  readonly stateNames: (character: CharacterId, states: readonly StateId[], joined: "or" | "and") => string;
}

/** Looks up names once for many sentences. */
export const tableWords = (table: ReferenceTable, language = "en"): TableWords => {
  const taxa = new Map(table.taxa.map((taxon) => [taxon.id, taxon]));
  const characters = new Map(table.characters.map((character) => [character.id, character]));
  const scientific = (id: TaxonId, authorship: boolean): readonly Span[] => {
    const taxon = taxa.get(id);
    return taxon === undefined ? [{ text: id, italic: false }] : nameParts(taxon.name, authorship ? taxon.authorship : "");
  };
  const vernacular = (id: TaxonId): string => taxa.get(id)?.vernacular[language] ?? "";
  const lower = (text: string): string => (/^[A-Z][a-z]/u.test(text) ? text[0]?.toLowerCase() + text.slice(1) : text);
  return {
    taxon: (id) => taxa.get(id),
    character: (id) => characters.get(id),
    shortTaxon: (id) => (vernacular(id) === "" ? scientific(id, false) : [{ text: vernacular(id), italic: false }]),
    fullTaxon: (id) => {
      const name = scientific(id, true);
      return vernacular(id) === "" ? name : [{ text: `${vernacular(id)}, `, italic: false }, ...name];
    },
    taxonName: (id) => ({
      taxonId: id,
      name: own(scientific(id, true)),
      plain: nameText(scientific(id, false)),
      vernacular: vernacular(id),
    }),
    characterName: (id) => lower(characters.get(id)?.name ?? id),
    stateNames: (character, states, joined) => {
      const answer = characters.get(character)?.answer;
      const names = states.map(
        (state) => (answer?.kind === "states" ? answer.states.find((s) => s.id === state)?.name : undefined) ?? state,
      );
      return listText(names, joined, language);
    },
  };
};

/** "20 July" */
export const shortDay = (date: string): string => days.dayOfYear(date);

export const toolText = (tool: Tool): string => say(`tool.${tool}`);

/** Ratios are printed to one decimal: the error of neither length is theirs. */
export const RATIO_ERROR = 0.1;

/** What was found, in words: "four lines", "43–56 mm, n = 12". */
export const findingText = (words: TableWords, { characterId, finding }: CharacterFinding): string => {
  switch (finding.kind) {
    case "states":
      return say(finding.betweenTwo ? "finding.between" : "finding.states", {
        states: words.stateNames(characterId, finding.states, finding.betweenTwo ? "or" : "and"),
      });
    case "absent": {
      const states = words.stateNames(characterId, finding.states, "and");
      return finding.n === null || finding.upperShare === null
        ? say("finding.absent", { states })
        : say("finding.absent-n", { states, n: finding.n, share: `${String(Math.round(finding.upperShare * 100))} %` });
    }
    case "measured": {
      const ratio = words.character(characterId)?.answer.kind === "ratio";
      const { text } = sampleNotation(finding.values, { unit: finding.unit, error: ratio ? RATIO_ERROR : finding.plusMinus });
      const notation = `${text}, n\u00A0=\u00A0${String(finding.n)}`;
      return say(finding.speaks ? "finding.measured" : "finding.too-few", { notation });
    }
  }
};

/** Where a finding comes from: "lens ×20, 5 looked at, 6 July". */
export const findingDetail = ({ finding, lens, n, dates }: CharacterFinding): string => {
  const parts: string[] = [];
  if (finding.kind === "measured") {
    if (finding.stems !== null) parts.push(say("detail.stems", { n: finding.stems }));
  } else {
    parts.push(lens === null ? say("detail.eye") : lens.replace("x", "×"));
    if (n !== null) parts.push(say("detail.looked", { n }));
  }
  return [...parts, listText(dates.map(shortDay), "and")].join(", ");
};

/** What a table says of a taxon in one character: "four lines, rarely two strong lines", "(30–)40–60(–70) mm". */
export const scoreText = (words: TableWords, characterId: CharacterId, score: ScoreValue): string => {
  switch (score.kind) {
    case "unknown":
      return say("apart.unknown");
    case "not-applicable":
      return say("apart.not-applicable");
    case "states": {
      const usual = words.stateNames(characterId, score.usual, "or");
      const rarely = words.stateNames(characterId, score.rarely, "or");
      if (score.rarely.length === 0) return usual;
      return score.usual.length === 0 ? say("apart.only-rarely", { rarely }) : say("apart.rarely", { usual, rarely });
    }
    case "range": {
      const answer = words.character(characterId)?.answer;
      return writeFloraRange(score, { unit: answer?.kind === "measure" ? answer.unit : "" });
    }
  }
};

/** "mown on 20 July" */
const lossText = (kind: Happening["kind"], on: IsoDate): string => say(`lost.${kind}`, { date: shortDay(on) });

/** "Not this year: mown on 20 July. Next year before 18 July." null = nothing is lost. */
export const lostText = (lost: NextCheck["lostThisYear"], as: "check" | "why"): string | null => {
  if (lost === null) return null;
  const what = lossText(lost.kind, lost.on);
  return lost.nextYearBefore === null
    ? say(as === "check" ? "check.lost" : "why.lost", { what })
    : say(as === "check" ? "check.lost-next" : "why.lost-next", { what, date: shortDay(lost.nextYearBefore) });
};

/** The names of characters as a list: "stigma, glands and capsule length". */
export const characterList = (words: TableWords, ids: readonly CharacterId[], joined: "and" | "or" = "and"): string =>
  listText(ids.map(words.characterName), joined);

const headline = (words: TableWords, table: ReferenceTable, rule: CaseByRule): readonly Span[] => {
  const taxa = rule.taxonIds;
  const [first] = taxa;
  const count = table.taxa.length;
  if (rule.findings.length === 0 && rule.outcome.groupsSeen === 0) return saySpans("standing.no-looks");
  switch (rule.word) {
    case "species":
      return first === undefined ? [] : saySpans("standing.species", { taxon: words.fullTaxon(first) });
    case "cf":
      return first === undefined ? [] : saySpans("standing.cf", { taxon: words.fullTaxon(first) });
    case "one-of-two":
      return saySpans("standing.one-of-two", { taxa: listSpans(taxa.map(words.shortTaxon), "or") });
    case "hybrid-question":
      return saySpans("standing.hybrid-question", { count, taxa: listSpans(taxa.map(words.shortTaxon), "and") });
    case "genus-only":
    case "not-enough-evidence": {
      if (taxa.length === 0) return saySpans("standing.none-fits", { count });
      if (taxa.length <= 5)
        return saySpans("standing.some-left", { count: taxa.length, taxa: listSpans(taxa.map(words.shortTaxon), "or") });
      if (rule.word === "not-enough-evidence") return saySpans("standing.not-enough-evidence", { count: taxa.length });
      const genus = (first === undefined ? undefined : words.taxon(first))?.name.split(" ")[0] ?? "";
      return saySpans("standing.genus-only", { genus: [{ text: genus, italic: true }], count: taxa.length });
    }
  }
};

/** What is wanting for "settled", one sentence each. */
export const wantingTexts = (words: TableWords, rule: CaseByRule): readonly string[] =>
  rule.outcome.wanting.map((want) => {
    switch (want.kind) {
      case "rivals-out-by-one-witness": {
        const behind = want.taxonIds.flatMap(
          (id) => rule.weighed.find((taxon) => taxon.taxonId === id)?.against.flatMap((w) => w.characterIds[0] ?? []) ?? [],
        );
        const taxa = listText(
          want.taxonIds.map((id) =>
            words
              .shortTaxon(id)
              .map((span) => span.text)
              .join(""),
          ),
          "and",
        );
        return say("why.rivals-thin", { taxa, witnesses: characterList(words, [...new Set(behind)]) });
      }
      case "too-few-groups":
        return say("why.too-few-groups", { seen: want.seen, needed: want.needed });
      case "too-few-outings":
        return say("why.too-few-outings", { seen: want.seen, needed: want.needed });
      case "no-deciding-part":
        return say("why.no-deciding-part", { parts: listText(want.parts, "or") });
    }
  });

const explanation = (words: TableWords, table: ReferenceTable, rule: CaseByRule, checks: readonly NextCheck[]): string => {
  if (rule.findings.length === 0) return say("why.no-looks");
  const lost =
    checks.length > 0 && checks.every((check) => check.lostThisYear !== null) ? lostText(checks[0]?.lostThisYear ?? null, "why") : null;
  const decide =
    checks.length === 0
      ? say("why.nothing-decides")
      : say("why.to-decide", {
          checks: characterList(
            words,
            checks.slice(0, 3).map((check) => check.characterId),
            "or",
          ),
        });
  switch (rule.word) {
    case "species": {
      const witnesses = Math.min(...rule.weighed.filter((t) => !t.left && rule.rivals.includes(t.taxonId)).map((t) => t.against.length));
      return say("why.species", { witnesses: Number.isFinite(witnesses) ? witnesses : 0, outings: rule.outcome.outingsWithEvidence });
    }
    case "cf":
      return [...wantingTexts(words, rule), ...(lost === null ? [] : [lost])].join(" ");
    case "hybrid-question":
      return say("why.hybrid");
    case "one-of-two":
    case "genus-only":
    case "not-enough-evidence":
      if (rule.taxonIds.length === 0 && table.taxa.length > 0) return say("why.none-fits");
      return [decide, ...(lost === null ? [] : [lost])].join(" ");
  }
};

/** An author's abbreviation may end a sentence with its own full stop; a second one goes. */
const withoutSecondStop = (spans: readonly Span[]): readonly Span[] => {
  const last = spans.at(-1);
  return last?.text === "." && spans.at(-2)?.text.endsWith(".") === true ? spans.slice(0, -1) : spans;
};

/** How a plant stands: the result word, its headline and why. */
export const standingOf = (table: ReferenceTable, rule: CaseByRule, checks: readonly NextCheck[]): Standing => {
  const words = tableWords(table);
  return {
    word: rule.word,
    settled: rule.outcome.settled,
    headline: own(withoutSecondStop(headline(words, table, rule))),
    explanation: explanation(words, table, rule, checks),
  };
};
