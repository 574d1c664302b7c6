/**
 * What a species account is made from: plain data that may be seen by anyone. Places are coarsened and the dates of
 * sensitive plants cut to the month before they come here; nothing finer ever enters this layer.
 */
import type {
  Account,
  CharacterFinding,
  Look,
  Person,
  PhotoId,
  PlantId,
  PublicPlace,
  Reading,
  ReferenceTable,
  ResultWord,
  Slip,
  SpotId,
  Stage,
  StageRecord,
  TaxonId,
  Voucher,
  Witness,
} from "../engine/index.js";

/** A date as it may be shown: `2022-07-06`, or `2022-07` where the place is sensitive. */
export type PublicDate = string;
type WithPublicDate<T> = Omit<T, "date" | "outingId" | "plantId"> & { readonly date: PublicDate };

export type PublicLook = WithPublicDate<Look>;
export type PublicReading = WithPublicDate<Reading>;
export type PublicStageRecord = WithPublicDate<StageRecord>;
export type PublicVoucher = WithPublicDate<Voucher>;
export type PublicSlip = Omit<Slip, "on" | "plantId"> & { readonly on: PublicDate };

export interface PublicSpot {
  readonly id: SpotId;
  /** "" where even the name would give the place away. */
  readonly name: string;
  readonly setting: string;
  readonly place: PublicPlace;
  readonly sensitive: boolean;
}

/** What the account says of a case: the word, what was found, what speaks against each rival. */
export interface AccountCase {
  readonly word: ResultWord;
  /** The taxa the word is about. */
  readonly taxonIds: readonly TaxonId[];
  readonly settled: boolean;
  /** Of the dates in findings none is printed. */
  readonly findings: readonly CharacterFinding[];
  /** Every taxon that had to be excluded or is still possible, the account's own left aside. */
  readonly rivals: readonly { readonly taxonId: TaxonId; readonly left: boolean; readonly against: readonly Witness[] }[];
}

export interface AccountPlant {
  readonly id: PlantId;
  /** "" where the place is sensitive: nicknames tell of places. */
  readonly nick: string;
  readonly marks: string;
  readonly stemCount: number | null;
  readonly spot: PublicSpot;
  readonly caseFile: AccountCase;
  /** Every day the plant was visited, ascending, with or without a finding. */
  readonly visits: readonly PublicDate[];
  readonly looks: readonly PublicLook[];
  readonly readings: readonly PublicReading[];
  readonly stageRecords: readonly PublicStageRecord[];
  readonly slips: readonly PublicSlip[];
  readonly vouchers: readonly PublicVoucher[];
}

/** One file of a photograph as it will lie in the folder. */
export interface PhotoFile {
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface AccountPhoto {
  readonly id: PhotoId;
  readonly plantId: PlantId | null;
  /** Ascending by width; the last is the largest. At least one. */
  readonly files: readonly PhotoFile[];
  readonly date: PublicDate | null;
  readonly viewName: string;
  readonly part: string;
  readonly stageId: string | null;
  readonly stageName: string;
  readonly hasScale: boolean;
  readonly caption: string;
  readonly altText: string;
  readonly credit: string;
  readonly licence: string;
}

export interface AccountInput {
  readonly book: { readonly title: string; readonly notice: string; readonly illustrative: boolean; readonly language: string };
  readonly table: ReferenceTable;
  readonly taxonId: TaxonId;
  /** What a person wrote over the draft; null when nothing was written. */
  readonly account: Account | null;
  readonly stages: readonly Stage[];
  readonly people: readonly Person[];
  readonly plants: readonly AccountPlant[];
  /** Days on which any of the plants was visited. Not to be had from their visits, which may be cut to months. */
  readonly dayCount: number;
  /** In the order they should appear. */
  readonly photos: readonly AccountPhoto[];
}
