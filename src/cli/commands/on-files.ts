/** Single computations on plain files and plain words, so that anyone can check them on data of their own. */
import { parse } from "csv-parse/sync";
import {
  clockShift,
  gowerDistances,
  gowerPairIndex,
  localTime,
  nameHtml,
  nameParts,
  nameText,
  publicPlace,
  publicPlaceClass,
  quantile,
  readingSeries,
  sampleNotation,
  unitOf,
  type GowerColumn,
} from "../../engine/index.js";
import { say } from "../../words/index.js";
import { readChoice } from "../find.js";
import { readText } from "../read-text.js";
import { runPlain } from "../run-verb.js";
import { UsageError } from "../terminal.js";
import type { AddVerb } from "../verbs.js";

/** Rows of a CSV file by their column names. @throws {UsageError} */
const rowsOf = async (path: string): Promise<readonly Readonly<Record<string, string>>[]> => {
  const text = await readText(path);
  if (text.includes("\uFFFD")) throw new UsageError(say("usage.encoding", { path }));
  try {
    return parse(text, { columns: true, bom: true, trim: true, skip_empty_lines: true });
  } catch (error) {
    throw new UsageError(say("usage.csv", { path, why: error instanceof Error ? error.message : String(error) }));
  }
};

const missing = (text: string | undefined): boolean => text === undefined || text === "" || text === "NA" || text === "?";

/** A column of plain data: numbers where every cell is one, else names. */
const columnOf = (cells: readonly (string | undefined)[], kind: string | undefined): GowerColumn => {
  const numeric = cells.every((cell) => missing(cell) || Number.isFinite(Number(cell)));
  if (kind === "nominal" || (kind === undefined && !numeric))
    return { kind: "nominal", values: cells.map((cell) => (missing(cell) ? null : (cell ?? null))) };
  const values = cells.map((cell) => (missing(cell) ? null : Number(cell)));
  if (values.some((value) => Number.isNaN(value))) throw new UsageError(say("usage.gower-number"));
  const kinds = ["numeric", "ordinal", "symmetric-binary", "asymmetric-binary"] as const;
  return { kind: kind === undefined ? "numeric" : readChoice(kind, kinds), values };
};

const addGower: AddVerb = (program, terminal) => {
  program
    .command("gower")
    .description(say("cli.gower"))
    .argument("<file>")
    .option("--kinds <list>", say("cli.option.kinds"))
    .action(async (path: string, options: { readonly kinds?: string }, command) => {
      await runPlain(terminal, command, async () => {
        const rows = await rowsOf(path);
        const [id = "", ...names] = Object.keys(rows[0] ?? {});
        const kinds = new Map(
          (options.kinds ?? "")
            .split(",")
            .filter((text) => text !== "")
            .map((text) => text.split("=", 2) as [string, string]),
        );
        const distances = gowerDistances(
          names.map((name) =>
            columnOf(
              rows.map((row) => row[name]),
              kinds.get(name),
            ),
          ),
        );
        const pairs = rows.flatMap((row, i) =>
          rows.slice(i + 1).map((other, k) => ({
            a: row[id] ?? "",
            b: other[id] ?? "",
            distance: distances[gowerPairIndex(rows.length, i, i + 1 + k)] ?? Number.NaN,
          })),
        );
        return { data: { pairs }, lines: pairs.map(({ a, b, distance }) => `${a}\t${b}\t${distance.toFixed(6)}`) };
      });
    });
};

const addNotation: AddVerb = (program, terminal) => {
  program
    .command("notation")
    .description(say("cli.notation"))
    .argument("<values...>")
    .option("--unit <unit>", say("cli.option.unit"), "mm")
    .action(async (texts: readonly string[], options: { readonly unit: string }, command) => {
      await runPlain(terminal, command, () => {
        const unit = unitOf(options.unit) ?? "";
        const series = readingSeries(texts.join(" "), { unit });
        if (!series.ok) throw new UsageError(series.problem.text);
        const { values } = series.value;
        const notation = sampleNotation(values, { unit });
        const deciles = { p10: quantile(values, 0.1), median: quantile(values, 0.5), p90: quantile(values, 0.9) };
        return Promise.resolve({
          data: { ...notation, ...deciles, unit, questions: series.value.questions },
          lines: [`${notation.text}, n = ${String(notation.n)}`],
        });
      });
    });
};

const addName: AddVerb = (program, terminal) => {
  program
    .command("name")
    .description(say("cli.name"))
    .argument("<names...>")
    .action(async (names: readonly string[], _options: unknown, command) => {
      await runPlain(terminal, command, () => {
        const set = names.map((name) => ({
          given: name,
          spans: nameParts(name),
          text: nameText(nameParts(name)),
          html: nameHtml(nameParts(name)),
        }));
        return Promise.resolve({ data: { names: set }, lines: set.map(({ html }) => html) });
      });
    });
};

const addShift: AddVerb = (program, terminal) => {
  program
    .command("shift")
    .description(say("cli.shift"))
    .requiredOption("--photos <file>", say("cli.option.photos-file"))
    .requiredOption("--stops <file>", say("cli.option.stops-file"))
    .action(async (options: { readonly photos: string; readonly stops: string }, command) => {
      await runPlain(terminal, command, async () => {
        const time = (text: string | undefined, where: string) => {
          const parsed = localTime.safeParse(text);
          if (!parsed.success) throw new UsageError(say("usage.time", { text: text ?? "", where }));
          return parsed.data;
        };
        const photos = (await rowsOf(options.photos)).map((row, i) => time(row["taken"], `${options.photos}, ${String(i + 2)}`));
        const stops = (await rowsOf(options.stops)).map((row, i) => ({
          from: time(row["from"], `${options.stops}, ${String(i + 2)}`),
          to: time(row["to"], `${options.stops}, ${String(i + 2)}`),
        }));
        const shift = clockShift(photos, stops);
        return { data: shift, lines: [JSON.stringify(shift)] };
      });
    });
};

const addPublicPlace: AddVerb = (program, terminal) => {
  program
    .command("coarsen")
    .description(say("cli.coarsen"))
    .argument("<lat>")
    .argument("<lon>")
    .requiredOption("--as <class>", publicPlaceClass.options.join(", "))
    .action(async (lat: string, lon: string, options: { readonly as: string }, command) => {
      await runPlain(terminal, command, () => {
        const [north, east] = [Number(lat), Number(lon)];
        if (!(Math.abs(north) <= 90 && Math.abs(east) <= 180)) throw new UsageError(say("usage.place", { text: `${lat} ${lon}` }));
        const place = publicPlace({ lat: north, lon: east, uncertaintyM: null }, readChoice(options.as, publicPlaceClass.options));
        return Promise.resolve({ data: place, lines: [JSON.stringify(place)] });
      });
    });
};

export const addOnFiles: AddVerb = (program, terminal) => {
  for (const add of [addGower, addNotation, addName, addShift, addPublicPlace]) add(program, terminal);
};
