/** A character from its column: what the `#` rows say of it, else what its heading and cells show. */
import { unitOf } from "../../measurement/length-unit.js";
import { splitList, type CharacterRow } from "./layout.js";
import { stateWords } from "./cell.js";

/** "leaf length (mm)" -> id, name and unit. */
export const readHeading = (heading: string): { readonly id: string; readonly name: string; readonly unit: string } => {
  const [, name = heading, unit = ""] = /^(.*?)\s*\(([^()]{1,12})\)$/u.exec(heading) ?? [];
  const id = name
    .trim()
    .normalize("NFKD")
    .replaceAll(/[^A-Za-z0-9._-]+/gu, "_")
    .replaceAll(/^[^A-Za-z0-9]+|_+$/gu, "");
  return { id, name: name.trim(), unit };
};

/** What the `#` rows say of one column. */
export type Columns = ReadonlyMap<CharacterRow, string>;

const statesFrom = (columns: Columns, cells: readonly string[]): unknown[] => {
  const listed = splitList(columns.get("#states") ?? "");
  if (listed.length > 0) {
    return listed.map((entry) => {
      const [id = "", name = "", plain = ""] = entry.split(/(?<!\\)~/u).map((text) => text.trim().replaceAll("\\~", "~"));
      return { id: id.replaceAll(/[^A-Za-z0-9._:-]+/gu, "_"), name: name === "" ? id : name, plain };
    });
  }
  const words = cells.flatMap((cell) => {
    const { usual, rarely } = stateWords(cell);
    return [...usual, ...rarely];
  });
  const distinct = [...new Set(words)].filter((word) => word !== "?" && !/^n\/?a\.?$/iu.test(word));
  return distinct.map((word) => ({
    id: word
      .normalize("NFKD")
      .replaceAll(/[^A-Za-z0-9._:-]+/gu, "_")
      .replaceAll(/^[^A-Za-z0-9]+|_+$/gu, ""),
    name: word,
  }));
};

const answerFrom = (columns: Columns, cells: readonly string[], headingUnit: string): unknown => {
  const filled = cells.filter((cell) => cell !== "" && cell !== "?" && !/^n\/?a\.?$/iu.test(cell));
  const kind = columns.get("#kind") ?? "";
  const minN = columns.get("#min n") ?? "";
  const counted = minN === "" ? {} : { minN: Number(minN) };
  const ratio = /^ratio (\S+) \/ (\S+)$/u.exec(kind);
  if (ratio !== null) return { kind: "ratio", numerator: ratio[1], denominator: ratio[2], ...counted };
  if (kind === "count") return { kind: "count", ...counted };
  const numeric =
    filled.length > 0 &&
    filled.every((cell) => /^[\d(.,~]/u.test(cell) && /^[-\d().,\s\u2010-\u2015a-zA-Z%\u00B5]+$/u.test(cell) && /\d/u.test(cell));
  // A heading that names a unit says that its column is measured, whatever a cell holds.
  if (kind === "measure" || (kind === "" && (numeric || unitOf(headingUnit) !== null)))
    return { kind: "measure", unit: columns.get("#unit") || headingUnit, ...counted };
  if (kind !== "" && kind !== "states" && kind !== "ordered states") return { kind };
  const absence = columns.get("#absence") ?? "";
  return {
    kind: "states",
    ordered: kind === "ordered states",
    states: statesFrom(columns, filled),
    absence: absence === "" ? null : absence,
  };
};

/** "yes", "no"; `otherwise` when nothing is said. */
export const yes = (text: string, otherwise: boolean): boolean => (text === "" ? otherwise : /^(yes|y|true|1)$/iu.test(text));

/** Not yet validated: the schema of a character decides. @param cells of the taxa, top to bottom */
export const characterFrom = (heading: string, columns: Columns, cells: readonly string[]): unknown => {
  const { id, name, unit } = readHeading(heading);
  const said = (row: CharacterRow): string => columns.get(row) ?? "";
  const optional = (key: string, text: string, value: unknown): Record<string, unknown> => (text === "" ? {} : { [key]: value });
  const onlyIf = /^([^:]+):(.*)$/u.exec(said("#only if"));
  return {
    id,
    name: said("#name") || name,
    part: said("#part") || "whole plant",
    answer: answerFrom(columns, cells, unit),
    group: said("#group") || said("#name") || name || id,
    ...optional("seenIn", said("#seen in"), splitList(said("#seen in"))),
    ...optional("tool", said("#tool"), said("#tool")),
    ...optional("weight", said("#weight"), Number(said("#weight"))),
    ...(onlyIf === null ? {} : { onlyIf: { character: onlyIf[1]?.trim(), states: splitList(onlyIf[2]?.trim() ?? "") } }),
    ...optional("role", said("#role"), said("#role")),
    ...optional("errors", said("#errors"), splitList(said("#errors"))),
    ...optional("disturbs", said("#disturbs"), yes(said("#disturbs"), false)),
    ...optional("misreading", said("#misreading"), Number(said("#misreading"))),
    ...optional("note", said("#note"), said("#note")),
  };
};
