/** The case of a plant in words. */
import {
  buildCase,
  meet,
  type CaseFile,
  type CharacterFinding,
  type CharacterId,
  type IsoDate,
  type ReferenceTable,
  type RivalStanding,
  type ScoreLookup,
  scoreLookup,
  type SettledRule,
  type TaxonId,
  type View,
  type Witness,
  caseByRule,
  nameParts,
  partOfPhoto,
} from "../engine/index.js";
import type { CaseView, CheckLine, RivalLine, WitnessLine } from "../contract/index.js";
import { listSpans, listText, say, saySpans, spansText } from "../words/index.js";
import {
  characterList,
  findingDetail,
  findingText,
  lostText,
  scoreText,
  standingOf,
  tableWords,
  wantingTexts,
  type TableWords,
} from "./case-words.js";
import { checkHow, checkWhen, checkWhy } from "./check-words.js";
import { readPlantFile, type PlantFile } from "./plant-evidence.js";
import { readingDay, type Workbench } from "./workbench.js";

/** "0.93"; never 0 or 1, which nobody can know. */
export const chanceText = (probability: number): string => {
  if (probability > 0.995) return "> 0.99";
  return probability < 0.005 ? "< 0.01" : probability.toFixed(2);
};

interface Telling {
  readonly words: TableWords;
  readonly scores: ScoreLookup;
  readonly findings: ReadonlyMap<CharacterId, CharacterFinding>;
  readonly photosOf: (ids: readonly CharacterId[]) => WitnessLine["photoIds"];
}

const findingsOf = (telling: Telling, ids: readonly CharacterId[]): readonly CharacterFinding[] =>
  ids.flatMap((id) => telling.findings.get(id) ?? []);

/** One witness in a line: what was found, where it comes from, what it speaks together with. */
const witnessLine = (telling: Telling, taxonId: TaxonId | null, witness: Witness): WitnessLine => {
  const { words } = telling;
  const [first, ...others] = findingsOf(telling, witness.characterIds);
  const parts = first === undefined ? [] : [findingDetail(first)];
  if (others.length > 0)
    parts.push(
      say("detail.together", {
        others: characterList(
          words,
          others.map((finding) => finding.characterId),
        ),
      }),
    );
  if (witness.meeting === "fits-rarely") parts.push(say("detail.rarely"));
  if (witness.meeting === "against" && taxonId !== null && first !== undefined) {
    parts.push(say("detail.expected", { expected: scoreText(words, first.characterId, telling.scores(taxonId, first.characterId)) }));
  }
  const all = findingsOf(telling, witness.characterIds);
  return {
    group: witness.group,
    title:
      first === undefined
        ? witness.group
        : say("witness.line", {
            character: words.character(first.characterId)?.name ?? first.characterId,
            finding: findingText(words, first),
          }),
    detail: parts.join("; "),
    decibans: witness.decibans,
    characterIds: [...witness.characterIds],
    // A ratio rests on the same series as the lengths it is made of: each is linked once.
    lookIds: [...new Set(all.flatMap((finding) => finding.lookIds))],
    readingIds: [...new Set(all.flatMap((finding) => finding.readingIds))],
    photoIds: telling.photosOf(witness.characterIds),
  };
};

const rivalLine = (telling: Telling, rival: RivalStanding): RivalLine => {
  const { words } = telling;
  const speaking = rival.against.flatMap((witness) => witness.characterIds[0] ?? []);
  const named = characterList(words, speaking);
  const sentence = (): string => {
    if (!rival.left) return say("rival.out", { witnesses: named });
    if (speaking.length > 0) return say("rival.left-against", { characters: named });
    return rival.onlyRarely.length > 0
      ? say("rival.left-rarely", { characters: characterList(words, rival.onlyRarely) })
      : say("rival.left");
  };
  const name = words.taxonName(rival.taxonId);
  return {
    ...name,
    left: rival.left,
    inRange: rival.inRange,
    sentence: rival.inRange ? sentence() : `${sentence()}; ${say("rival.out-of-range")}`,
    witnessCount: rival.against.length,
    againstSum: rival.againstSum,
    probability: rival.probability,
    against: rival.against.map((witness) => witnessLine(telling, rival.taxonId, witness)),
    ifRight: speaking.length === 0 ? say("rival.if-right-left") : say("rival.if-right", { characters: named, count: speaking.length }),
  };
};

const ruleText = (rule: SettledRule): string =>
  say("rule.text", {
    witnesses: rule.witnessesPerRival,
    groups: rule.groupsSeen,
    outings: rule.outings,
    parts: listText(rule.oneFromParts, "or"),
    outAt: rule.outAt,
  });

const robustText = (words: TableWords, { leastWrong, characterIds }: CaseFile["robustness"], speaks: boolean): string => {
  if (!speaks) return say("robust.none");
  return leastWrong === null ? say("robust.never") : say("robust.some", { n: leastWrong, characters: characterList(words, characterIds) });
};

const disagreementText = (words: TableWords, disagreement: CaseFile["disagreement"]): string | null => {
  if (disagreement === null) return null;
  const { ruleSays, probabilitySays, probability } = disagreement;
  const rule = ruleSays.length === 0 ? say("disagree.rule-none") : spansText(listSpans(ruleSays.map(words.shortTaxon), "or"));
  const p = chanceText(probability);
  return probabilitySays === "none-of-these"
    ? say("disagree.none", { rule, p })
    : say("disagree.taxon", { rule, p, taxon: spansText(words.shortTaxon(probabilitySays)) });
};

const hybridView = (telling: Telling, table: ReferenceTable, file: CaseFile): CaseView["hybrid"] => ({
  pairs: file.hybridPairs.slice(0, 5).map(({ parents, againstSum, known }) => ({
    parents: parents.map(telling.words.taxonName),
    againstSum,
    known,
    sentence: saySpans("hybrid.pair", {
      a: telling.words.shortTaxon(parents[0]),
      b: telling.words.shortTaxon(parents[1]),
      sum: againstSum,
      known: known ? "yes" : "no",
    }).map(({ text, italic }) => ({ text, italic })),
  })),
  signs: file.hybridSigns.map(({ characterId, values, median }) =>
    say("hybrid.sign", {
      character: telling.words.character(characterId)?.name ?? characterId,
      values: listText(values.map(String), "and"),
      unit: "%",
      median: String(median),
    }),
  ),
  checkAgain: file.checkAgain.flatMap((characterId) => {
    const finding = telling.findings.get(characterId);
    if (finding === undefined) return [];
    const against = table.taxa
      .filter((taxon) => meet(finding.finding, telling.scores(taxon.id, characterId)) === "against")
      .map((taxon) => taxon.id);
    return [
      {
        characterId,
        sentence: say("hybrid.check-again", {
          character: telling.words.character(characterId)?.name ?? characterId,
          finding: findingText(telling.words, finding),
          taxa: spansText(listSpans(against.map(telling.words.shortTaxon), "and")),
        }),
      },
    ];
  }),
});

const checkLines = (telling: Telling, table: ReferenceTable, file: CaseFile, day: IsoDate): CheckLine[] =>
  file.nextChecks.map((check) => ({
    characterId: check.characterId,
    title: telling.words.character(check.characterId)?.name ?? check.characterId,
    how: checkHow(telling.words, telling.scores, check),
    when: checkWhen(table, check, day),
    why: checkWhy(telling.words, check),
    from: check.from,
    to: check.to,
    tool: check.tool,
    disturbs: check.disturbs,
    pairs: check.pairs,
    score: check.score,
    bits: check.bits,
    lost: lostText(check.lostThisYear, "check"),
  }));

/** Photographs behind characters: those tied to their looks and readings, else those of the same part in the same stages. */
const photosBehind =
  (file: PlantFile, views: readonly View[], findings: ReadonlyMap<CharacterId, CharacterFinding>): Telling["photosOf"] =>
  (ids) => {
    const found = ids.flatMap((id) => findings.get(id) ?? []);
    const pieces = [
      ...file.looks.filter((look) => found.some((finding) => finding.lookIds.includes(look.id))),
      ...file.readings.filter((reading) => found.some((finding) => finding.readingIds.includes(reading.id))),
    ];
    const tied = pieces.flatMap((piece) => piece.photoIds);
    if (tied.length > 0) return [...new Set(tied)];
    const outings = new Set<string>(pieces.map((piece) => piece.outingId));
    const parts = new Set(file.table.characters.filter((character) => ids.includes(character.id)).map((character) => character.part));
    return file.photos
      .filter(
        (photo) =>
          photo.leaveOut === null && photo.outingId !== null && outings.has(photo.outingId) && parts.has(partOfPhoto(photo, views)),
      )
      .map((photo) => photo.id);
  };

/** The case as data of one plant up to a day. @throws {NotInBook} */
export const plantCase = async (workbench: Workbench, plantId: string, upTo: IsoDate | undefined) => {
  const day = await readingDay(workbench, upTo);
  const { book, file } = await readPlantFile(workbench.store, plantId);
  const input = {
    table: file.table,
    evidence: file,
    rivalIds: file.plant.rivalIds,
    happenings: file.happenings,
    rule: book.rule,
    upTo: day,
  };
  return { day, book, file, input, caseFile: buildCase(input) };
};

/** @throws {NotInBook} */
export const caseView = async (workbench: Workbench, plantId: string, upTo: IsoDate | undefined): Promise<CaseView> => {
  const { day, book, file, input, caseFile } = await plantCase(workbench, plantId, upTo);
  const { table } = file;
  const words = tableWords(table);
  const findings = new Map(caseFile.findings.map((finding) => [finding.characterId, finding]));
  const telling: Telling = { words, scores: scoreLookup(table), findings, photosOf: photosBehind(file, book.views, findings) };
  const rule = caseByRule(input);
  const speaks = rule.outcome.groupsSeen > 0;
  const leader = caseFile.rivals.find((rival) => rival.taxonId === caseFile.leader);
  return {
    plantId: file.plant.id,
    nick: file.plant.nick,
    upTo: day,
    notice: table.notice || book.notice,
    standing: standingOf(table, rule, caseFile.nextChecks),
    leader: caseFile.leader === null ? null : words.taxonName(caseFile.leader),
    runnerUp: caseFile.runnerUp === null ? null : words.taxonName(caseFile.runnerUp),
    stands: caseFile.stands.map((witness) => witnessLine(telling, caseFile.leader, witness)),
    standsAgainst: caseFile.standsAgainst.map((witness) => witnessLine(telling, caseFile.leader, witness)),
    rivals: caseFile.rivals.filter((rival) => rival.taxonId !== caseFile.leader).map((rival) => rivalLine(telling, rival)),
    noneOfThese: caseFile.noneOfThese,
    decide: checkLines(telling, table, caseFile, day),
    probability: {
      leader: leader?.probability ?? null,
      typicality: caseFile.typicality,
      withoutPrior: caseFile.leaderWithoutPrior,
      sentence:
        leader === undefined || !speaks
          ? say("probability.nothing")
          : say("probability.sentence", {
              leader: chanceText(leader.probability),
              taxon: spansText(words.shortTaxon(leader.taxonId)),
              none: chanceText(caseFile.noneOfThese),
            }),
    },
    robustness: {
      ...caseFile.robustness,
      characterIds: [...caseFile.robustness.characterIds],
      sentence: robustText(words, caseFile.robustness, speaks),
    },
    disagreement: disagreementText(words, caseFile.disagreement),
    hybrid: hybridView(telling, table, caseFile),
    rule: {
      text: ruleText(book.rule),
      groupsSeen: caseFile.rule.groupsSeen,
      outings: caseFile.rule.outingsWithEvidence,
      wanting: [...wantingTexts(words, rule)],
    },
    slips: file.slips
      .filter((slip) => slip.on <= day)
      .map((slip) => {
        const taxon = slip.taxonIds.length === 1 ? table.taxa.find((t) => t.id === slip.taxonIds[0]) : undefined;
        const authorship = taxon !== undefined && taxon.name === slip.name ? taxon.authorship : "";
        return { ...slip, nameSpans: nameParts(slip.name, authorship, slip.qualifier).map(({ text, italic }) => ({ text, italic })) };
      }),
  };
};
