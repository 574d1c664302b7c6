/** The year: each plant's ring of stages, what is due, how everything stands. */
import type { IsoDate, ResultWord } from "../engine/index.js";
import type { YearView } from "../contract/index.js";
import { listText, say } from "../words/index.js";
import { lostText, standingOf, tableWords, toolText } from "./case-words.js";
import { checkWhen, checkWhy } from "./check-words.js";
import { readBookFile, ruleCaseOf, stagesOf, type BookFile, type PlantFile } from "./plant-evidence.js";
import { ruleChecks } from "./rule-checks.js";
import { readingDay, type Workbench } from "./workbench.js";

type Mark = YearView["rings"][number]["marks"][number];

/** How many checks of one plant stand on the front page; more would be a list of everything. */
const DUE_PER_PLANT = 2;

const marksOf = (book: BookFile, file: PlantFile, day: IsoDate): Mark[] =>
  book.outings
    .filter((outing) => outing.date <= day)
    .flatMap((outing): Mark[] => {
      const record = file.stageRecords.filter((r) => r.outingId === outing.id).at(-1);
      const visited = file.outings.some((o) => o.id === outing.id);
      if (record === undefined && !visited) return [];
      const stage = stagesOf(book, file).find((s) => s.id === record?.stageId);
      // What ended one year's growth says nothing of the next year's; only death does.
      const gone = file.happenings.some(
        ({ endsYear, kind, date }) =>
          date <= outing.date && (kind === "died" || (endsYear && date.slice(0, 4) === outing.date.slice(0, 4))),
      );
      const kind = stage !== undefined ? (record?.answer === "unsure" ? "unsure" : "seen") : gone ? "nothing-left" : "not-reached";
      return [
        {
          outingId: outing.id,
          date: outing.date,
          stageId: stage?.id ?? null,
          stageName: stage?.name ?? "",
          kind,
          why: record?.why ?? "",
          photoCount: file.photos.filter((photo) => photo.outingId === outing.id).length,
          lookCount: [...file.looks, ...file.readings].filter((piece) => piece.outingId === outing.id).length,
        },
      ];
    });

const summaryOf = (standings: readonly { readonly nick: string; readonly word: ResultWord; readonly settled: boolean }[]): string[] => {
  if (standings.length === 0) return [say("year.summary-none")];
  const settled = standings.filter((s) => s.settled);
  const hybrid = standings.filter((s) => s.word === "hybrid-question");
  const open = standings.filter((s) => !s.settled && s.word !== "hybrid-question");
  const sentence = (key: "year.summary-settled" | "year.summary-hybrid" | "year.summary-open", group: typeof settled): string[] =>
    group.length === 0
      ? []
      : [
          say(key, {
            count: group.length,
            plants: listText(
              group.map((s) => s.nick),
              "and",
            ),
          }),
        ];
  return [...sentence("year.summary-settled", settled), ...sentence("year.summary-hybrid", hybrid), ...sentence("year.summary-open", open)];
};

export const yearView = async (workbench: Workbench, upTo: IsoDate | undefined): Promise<YearView> => {
  const day = await readingDay(workbench, upTo);
  const book = await readBookFile(workbench.store);
  const year = Number(day.slice(0, 4));
  const inYear: BookFile = { ...book, outings: book.outings.filter((outing) => outing.date.startsWith(String(year))) };
  const plants = book.plants.map((file) => {
    const rule = ruleCaseOf(book, file, day);
    return { file, rule, checks: ruleChecks(file, rule, day), words: tableWords(file.table) };
  });
  return {
    year,
    upTo: day,
    rings: plants.map(({ file, rule, checks }) => {
      const standing = standingOf(file.table, rule, checks);
      return {
        plantId: file.plant.id,
        nick: file.plant.nick,
        word: standing.word,
        settled: standing.settled,
        standing: standing.headline,
        marks: marksOf(inYear, file, day),
        happenings: file.happenings.filter((happening) => happening.date.startsWith(String(year)) && happening.date <= day),
      };
    }),
    outings: inYear.outings.map((outing) => ({ outingId: outing.id, date: outing.date, goal: outing.goal })),
    stages: [...(book.plants[0] === undefined ? book.stages : stagesOf(book, book.plants[0]))],
    due: plants.flatMap(({ file, checks, words }) =>
      checks.slice(0, DUE_PER_PLANT).map((check) => ({
        plantId: file.plant.id,
        nick: file.plant.nick,
        sentence: say("year.due", {
          character: words.character(check.characterId)?.name ?? check.characterId,
          why: checkWhy(words, check),
        }),
        when: lostText(check.lostThisYear, "check") ?? checkWhen(file.table, check, day),
        tool: toolText(check.tool),
        lost: check.lostThisYear !== null,
      })),
    ),
    summary: summaryOf(plants.map(({ file, rule }) => ({ nick: file.plant.nick, word: rule.word, settled: rule.outcome.settled }))),
  };
};
