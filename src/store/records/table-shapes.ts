/**
 * How a reference table lies in rows: one row for the table, one for each stage, character, taxon, source, score and
 * hybrid of it. Ids of these are unique within their table only, so every key begins with `table_id`.
 */
import { character, hybridPair, score, source, stage, taxon } from "../../engine/index.js";
import type { ReferenceTable, Score } from "../../engine/index.js";
import { z } from "zod";
import { tableId } from "../../engine/index.js";
import { flag, json, number, numberOrNull, text } from "./field.js";
import type { Field } from "./field.js";
import type { Shape } from "./record-shapes.js";

type ListName = "stages" | "characters" | "taxa" | "sources" | "scores" | "knownHybrids";
export type TablePart = { readonly [N in ListName]: Shape<ReferenceTable[N][number]> & { readonly key: readonly string[] } };

const tableMeta = z.object({
  id: tableId,
  title: z.string().min(1).max(200),
  notice: z.string().max(600),
});
export const tableMetaShape: Shape<z.infer<typeof tableMeta>> = {
  table: "reference_table",
  schema: tableMeta,
  fields: { id: text("id"), title: text("title"), notice: text("notice") },
};

const scoreValueField: Field<Score["value"]> = {
  columns: ["kind", "usual_state_ids", "rare_state_ids", "min", "low", "high", "max"],
  write: (value) => ({
    kind: value.kind,
    usual_state_ids: value.kind === "states" ? JSON.stringify(value.usual) : null,
    rare_state_ids: value.kind === "states" ? JSON.stringify(value.rarely) : null,
    min: value.kind === "range" ? value.min : null,
    low: value.kind === "range" ? value.low : null,
    high: value.kind === "range" ? value.high : null,
    max: value.kind === "range" ? value.max : null,
  }),
  read: (row) => {
    switch (row["kind"]) {
      case "states":
        return { kind: "states", usual: json("usual_state_ids").read(row), rarely: json("rare_state_ids").read(row) };
      case "range":
        return { kind: "range", min: row["min"], low: row["low"], high: row["high"], max: row["max"] };
      default:
        return { kind: row["kind"] };
    }
  },
};

export const tableParts: TablePart = {
  stages: {
    table: "table_stage",
    key: ["table_id", "id"],
    schema: stage,
    fields: {
      id: text("id"),
      name: text("name"),
      bbch: json("bbch_codes"),
      looksLike: text("looks_like"),
      usualMonths: text("usual_months"),
    },
  },
  characters: {
    table: "table_character",
    key: ["table_id", "id"],
    schema: character,
    fields: {
      id: text("id"),
      part: text("part"),
      name: text("name"),
      answer: json("answer"),
      seenIn: json("seen_in_stage_ids"),
      tool: text("tool"),
      weight: number("weight"),
      group: text("witness_group"),
      onlyIf: json("only_if"),
      role: text("role"),
      errors: json("usual_errors"),
      disturbs: flag("disturbs"),
      misreading: numberOrNull("misreading_chance"),
      note: text("note"),
    },
  },
  taxa: {
    table: "table_taxon",
    key: ["table_id", "id"],
    schema: taxon,
    fields: {
      id: text("id"),
      name: text("name"),
      authorship: text("authorship"),
      family: text("family"),
      rank: text("taxon_rank"),
      synonyms: json("synonyms"),
      vernacular: json("vernacular"),
      status: text("status"),
      flowerMonths: text("flower_months"),
      band: text("band"),
      inOneLine: text("in_one_line"),
      expectedInCounty: flag("expected_in_county"),
      cautions: json("cautions"),
    },
  },
  sources: {
    table: "table_source",
    key: ["table_id", "id"],
    schema: source,
    fields: { id: text("id"), citation: text("citation"), licence: text("licence") },
  },
  scores: {
    table: "table_score",
    // Several sources may score one cell, side by side; the key needs a text where there is no source.
    key: ["table_id", "taxon_id", "character_id", "source_key"],
    schema: score,
    fields: {
      taxonId: text("taxon_id"),
      characterId: text("character_id"),
      value: scoreValueField,
      sourceId: {
        columns: ["source_id", "source_key"],
        write: (id) => ({ source_id: id, source_key: id ?? "" }),
        read: (row) => row["source_id"],
      },
      page: text("page"),
      words: text("source_words"),
    },
  },
  knownHybrids: {
    table: "table_hybrid",
    key: ["table_id", "parent_a_id", "parent_b_id"],
    schema: hybridPair,
    fields: {
      parents: {
        columns: ["parent_a_id", "parent_b_id"],
        write: ([a, b]) => ({ parent_a_id: a, parent_b_id: b }),
        read: (row) => [row["parent_a_id"], row["parent_b_id"]],
      },
      note: text("note"),
    },
  },
};

/** Parents before children: the order in which rows are put; they are removed in the opposite order. */
export const partOrderOfTable: readonly ListName[] = ["stages", "characters", "taxa", "sources", "scores", "knownHybrids"];
