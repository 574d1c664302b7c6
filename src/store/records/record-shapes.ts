/** For each kind of record: its SQL table, its schema, and the column of each field. Units stand in the column names. */
import {
  account,
  bookInfo,
  followedPlant,
  happening,
  look,
  outing,
  permission,
  person,
  photo,
  reading,
  slip,
  spot,
  stage,
  stageRecord,
  stop,
  view,
  voucher,
} from "../../engine/index.js";
import type { BookContent, BookInfo } from "../../engine/index.js";
import type { z } from "zod";
import type { RecordKind, RecordOf } from "./record-kinds.js";
import type { FieldMap } from "./field.js";
import { flag, json, number, numberOrNull, reference, referenceOrNull, references, text, textOrNull } from "./field.js";

export interface Shape<R> {
  readonly table: string;
  readonly schema: z.ZodType<R>;
  readonly fields: FieldMap<R>;
}

const personShape: Shape<RecordOf["person"]> = {
  table: "person",
  schema: person,
  fields: { id: text("id"), initials: text("initials"), role: text("role") },
};

const stageShape: Shape<RecordOf["stage"]> = {
  table: "stage",
  schema: stage,
  fields: {
    id: text("id"),
    name: text("name"),
    bbch: json("bbch_codes"),
    looksLike: text("looks_like"),
    usualMonths: text("usual_months"),
  },
};

const viewShape: Shape<RecordOf["view"]> = {
  table: "view",
  schema: view,
  fields: {
    id: text("id"),
    name: text("name"),
    part: text("part"),
    scaleWanted: flag("scale_wanted"),
    stages: references("stage_ids", "stage"),
  },
};

const spotShape: Shape<RecordOf["spot"]> = {
  table: "spot",
  schema: spot,
  fields: {
    id: text("id"),
    name: text("name"),
    setting: text("setting"),
    lat: numberOrNull("lat_degrees"),
    lon: numberOrNull("lon_degrees"),
    uncertaintyM: numberOrNull("uncertainty_m"),
    elevationM: numberOrNull("elevation_m"),
    shade: text("shade"),
    access: text("access"),
    note: text("note"),
    zone: text("zone"),
    publishAs: text("publish_as"),
    sensitiveBecause: text("sensitive_because"),
  },
};

const permissionShape: Shape<RecordOf["permission"]> = {
  table: "permission",
  schema: permission,
  fields: {
    id: text("id"),
    from: text("from_date"),
    to: text("to_date"),
    by: text("by_whom"),
    allows: text("allows"),
    forbids: text("forbids"),
    spotIds: references("spot_ids", "spot"),
  },
};

const plantShape: Shape<RecordOf["plant"]> = {
  table: "plant",
  schema: followedPlant,
  fields: {
    id: text("id"),
    nick: text("nick"),
    spotId: reference("spot_id", "spot"),
    marks: text("marks"),
    stemCount: numberOrNull("stem_count"),
    markedStemCount: numberOrNull("marked_stem_count"),
    tableId: reference("table_id", "table"),
    // Not references: a table may be replaced by a later edition, and what was set here must outlive that.
    rivalIds: json("rival_ids"),
    note: text("note"),
  },
};

const happeningShape: Shape<RecordOf["happening"]> = {
  table: "happening",
  schema: happening,
  fields: {
    id: text("id"),
    plantId: reference("plant_id", "plant"),
    date: text("date"),
    kind: text("kind"),
    endsYear: flag("ends_year"),
    note: text("note"),
  },
};

const outingShape: Shape<RecordOf["outing"]> = {
  table: "outing",
  schema: outing,
  fields: {
    id: text("id"),
    date: text("date"),
    start: textOrNull("start_time"),
    end: textOrNull("end_time"),
    weather: text("weather"),
    people: json("people"),
    goal: text("goal"),
    note: text("note"),
    cameraShiftS: numberOrNull("camera_shift_s"),
  },
};

const stopShape: Shape<RecordOf["stop"]> = {
  table: "stop",
  schema: stop,
  fields: {
    id: text("id"),
    outingId: reference("outing_id", "outing"),
    plantId: reference("plant_id", "plant"),
    from: text("from_time"),
    to: text("to_time"),
  },
};

const stageRecordShape: Shape<RecordOf["stageRecord"]> = {
  table: "stage_record",
  schema: stageRecord,
  fields: {
    id: text("id"),
    plantId: reference("plant_id", "plant"),
    outingId: reference("outing_id", "outing"),
    date: text("date"),
    stageId: referenceOrNull("stage_id", "stage"),
    answer: text("answer"),
    sharePercent: numberOrNull("share_percent"),
    why: text("why"),
  },
};

const lookShape: Shape<RecordOf["look"]> = {
  table: "look",
  schema: look,
  fields: {
    id: text("id"),
    plantId: reference("plant_id", "plant"),
    outingId: reference("outing_id", "outing"),
    // No reference to the table's character: evidence is kept when a later edition of the table drops the character.
    characterId: text("character_id"),
    date: text("date"),
    status: text("status"),
    states: json("state_ids"),
    sure: text("sure"),
    lens: textOrNull("lens"),
    n: numberOrNull("n"),
    by: text("by_whom"),
    note: text("note"),
    leaveOut: textOrNull("leave_out"),
    photoIds: references("photo_ids", "photo"),
  },
};

const readingShape: Shape<RecordOf["reading"]> = {
  table: "reading",
  schema: reading,
  fields: {
    id: text("id"),
    plantId: reference("plant_id", "plant"),
    outingId: reference("outing_id", "outing"),
    characterId: text("character_id"),
    date: text("date"),
    unit: text("unit"),
    values: json("value_list"),
    stems: numberOrNull("stem_count"),
    method: text("method"),
    plusMinus: numberOrNull("plus_minus"),
    by: text("by_whom"),
    note: text("note"),
    leaveOut: textOrNull("leave_out"),
    photoIds: references("photo_ids", "photo"),
  },
};

const slipShape: Shape<RecordOf["slip"]> = {
  table: "slip",
  schema: slip,
  fields: {
    id: text("id"),
    plantId: reference("plant_id", "plant"),
    on: text("on_date"),
    by: text("by_whom"),
    name: text("name"),
    taxonIds: json("taxon_ids"),
    role: text("role"),
    qualifier: text("qualifier"),
    why: text("why"),
    overturned: flag("overturned"),
  },
};

const voucherShape: Shape<RecordOf["voucher"]> = {
  table: "voucher",
  schema: voucher,
  fields: {
    id: text("id"),
    number: text("number"),
    plantId: reference("plant_id", "plant"),
    date: text("date"),
    stemsInPatch: number("stems_in_patch"),
    stemsTaken: number("stems_taken"),
    parts: text("parts"),
    kept: text("kept"),
    refusedBecause: textOrNull("refused_because"),
  },
};

const photoShape: Shape<RecordOf["photo"]> = {
  table: "photo",
  schema: photo,
  fields: {
    id: text("id"),
    fileName: text("file_name"),
    format: text("format"),
    bytes: number("bytes"),
    widthPx: number("width_px"),
    heightPx: number("height_px"),
    orientation: number("orientation"),
    takenCamera: textOrNull("taken_camera"),
    takenOffset: textOrNull("taken_offset"),
    metadataNote: text("metadata_note"),
    lat: numberOrNull("lat_degrees"),
    lon: numberOrNull("lon_degrees"),
    altitudeM: numberOrNull("altitude_m"),
    camera: text("camera"),
    broughtAt: text("brought_at"),
    outingId: referenceOrNull("outing_id", "outing"),
    plantId: referenceOrNull("plant_id", "plant"),
    placedBy: text("placed_by"),
    stageId: referenceOrNull("stage_id", "stage"),
    viewId: referenceOrNull("view_id", "view"),
    part: text("part"),
    caption: text("caption"),
    altText: text("alt_text"),
    credit: text("credit"),
    licence: text("licence"),
    leaveOut: textOrNull("leave_out"),
    note: text("note"),
  },
};

const accountShape: Shape<RecordOf["account"]> = {
  table: "account",
  schema: account,
  fields: {
    id: text("id"),
    taxonId: text("taxon_id"),
    tableId: reference("table_id", "table"),
    plantIds: references("plant_ids", "plant"),
    author: text("author"),
    licence: text("licence"),
    edited: json("edited_sections"),
  },
};

export const recordShapes: { readonly [K in RecordKind]: Shape<RecordOf[K]> } = {
  person: personShape,
  stage: stageShape,
  view: viewShape,
  spot: spotShape,
  permission: permissionShape,
  plant: plantShape,
  happening: happeningShape,
  outing: outingShape,
  stop: stopShape,
  stageRecord: stageRecordShape,
  look: lookShape,
  reading: readingShape,
  slip: slipShape,
  voucher: voucherShape,
  photo: photoShape,
  account: accountShape,
};

/** The kinds in an order in which each refers only to those before it; "table" stands for the reference tables. */
export const dependencyOrder: readonly (RecordKind | "table")[] = [
  "person",
  "stage",
  "view",
  "spot",
  "permission",
  "table",
  "plant",
  "happening",
  "outing",
  "stop",
  "stageRecord",
  "photo",
  "look",
  "reading",
  "slip",
  "voucher",
  "account",
];

/** Under which name a kind's records lie in a book's content. */
export const contentKey = {
  person: "people",
  stage: "stages",
  view: "views",
  spot: "spots",
  permission: "permissions",
  plant: "plants",
  happening: "happenings",
  outing: "outings",
  stop: "stops",
  stageRecord: "stageRecords",
  look: "looks",
  reading: "readings",
  slip: "slips",
  voucher: "vouchers",
  photo: "photos",
  account: "accounts",
} as const satisfies { readonly [K in RecordKind]: keyof BookContent };

export const recordKinds = Object.keys(recordShapes) as readonly RecordKind[];

/** The one row of the book's own data; its key is always 1. */
export const bookShape: Shape<BookInfo> = {
  table: "book",
  schema: bookInfo,
  fields: {
    title: text("title"),
    notice: text("notice"),
    illustrative: flag("illustrative"),
    language: text("language"),
    zone: text("zone"),
    readAt: textOrNull("read_at"),
    settledRule: {
      columns: ["rule_out_at", "rule_witnesses_per_rival", "rule_groups_seen", "rule_outings", "rule_one_from_parts"],
      write: (rule) => ({
        rule_out_at: rule.outAt,
        rule_witnesses_per_rival: rule.witnessesPerRival,
        rule_groups_seen: rule.groupsSeen,
        rule_outings: rule.outings,
        rule_one_from_parts: JSON.stringify(rule.oneFromParts),
      }),
      read: (row) => ({
        outAt: row["rule_out_at"],
        witnessesPerRival: row["rule_witnesses_per_rival"],
        groupsSeen: row["rule_groups_seen"],
        outings: row["rule_outings"],
        oneFromParts: json("rule_one_from_parts").read(row),
      }),
    },
  },
};
