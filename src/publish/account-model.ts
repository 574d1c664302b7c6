/** A species account, finished in content and not yet in form: every line with what stands behind it. */
import type { AccountSection, CharacterId, NameSpan, PhotoId, PublicPlace, TaxonId } from "../engine/index.js";
import type { PhotoFile, PublicDate } from "./account-input.js";

/** A way to what stands behind a line: an entry of the evidence, a source, a figure. Numbers count from 1. */
export interface Mark {
  readonly kind: "evidence" | "source" | "figure";
  readonly number: number;
}
/** A sentence: spans that know whether they are italic (names), and its marks. */
export interface Line {
  readonly spans: readonly NameSpan[];
  readonly marks: readonly Mark[];
}

export interface EvidenceEntry {
  readonly number: number;
  readonly kind: "look" | "reading";
  readonly id: string;
  readonly plantNumber: number;
  readonly characterId: CharacterId;
  readonly character: string;
  readonly date: PublicDate;
  readonly dateText: string;
  /** "four lines"; "53, 56, 47 mm". */
  readonly found: string;
  /** "×20, n = 5, by T.M.W." */
  readonly how: string;
  readonly note: string;
  /** A sentence why it does not count; null = it counts. */
  readonly leftOut: string | null;
  readonly values: readonly number[] | null;
  readonly unit: string | null;
  readonly n: number | null;
  readonly stems: number | null;
  readonly figures: readonly number[];
}

export interface Figure {
  readonly number: number;
  readonly id: PhotoId;
  readonly files: readonly PhotoFile[];
  readonly alt: string;
  readonly altMissing: boolean;
  readonly caption: string;
  readonly date: PublicDate | null;
  readonly dateText: string;
  readonly scaleText: string;
  readonly credit: string;
  readonly licence: string;
  readonly plantNumber: number | null;
  readonly part: string;
  readonly stageId: string | null;
}

export interface Step {
  readonly stages: string;
  readonly line: Line;
  readonly plain: string;
  readonly tool: string;
  readonly excludes: Line | null;
  readonly error: string;
  readonly figure: number | null;
}

export interface DescriptionPart {
  readonly part: string;
  readonly floras: readonly Line[];
  readonly ours: readonly Line[];
}

export interface MeasureRow {
  readonly characterId: CharacterId;
  readonly character: string;
  /** Notation with unit. */
  readonly ours: string;
  readonly n: number;
  readonly stems: number | null;
  readonly median: string;
  readonly basis: "quantiles" | "extremes";
  readonly floras: string | null;
  readonly marks: readonly Mark[];
}

export interface RivalBlock {
  readonly taxonId: TaxonId;
  readonly name: readonly NameSpan[];
  readonly vernacular: string;
  readonly standing: string;
  /** Still possible by our evidence. */
  readonly left: boolean;
  /** "sure": the two never share a state; "usual": only the rare states of one meet the other. */
  readonly differences: readonly {
    readonly character: string;
    readonly how: "sure" | "usual";
    readonly here: string;
    readonly there: string;
  }[];
}

export interface StageRow {
  readonly stage: string;
  readonly dates: readonly PublicDate[];
  readonly datesText: string;
  readonly began: string;
  /** For the drawing: the last visit before, null when none. */
  readonly lastWithout: PublicDate | null;
  readonly visits: number;
}

export interface PlantBlock {
  readonly number: number;
  readonly title: string;
  readonly facts: readonly string[];
  readonly result: Line;
  readonly settled: boolean;
  readonly entries: readonly EvidenceEntry[];
  readonly slips: readonly { readonly name: readonly NameSpan[]; readonly text: string; readonly overturned: boolean }[];
  readonly vouchers: readonly string[];
}

export interface AccountModel {
  readonly language: string;
  readonly bookTitle: string;
  readonly taxonId: TaxonId;
  readonly name: readonly NameSpan[];
  readonly nameText: string;
  readonly bareName: string;
  readonly authorship: string;
  readonly rank: string;
  readonly family: string;
  readonly vernacular: string;
  readonly otherVernacular: readonly { readonly language: string; readonly name: string }[];
  readonly notices: readonly string[];
  readonly settled: boolean;
  readonly titles: Readonly<Record<AccountSection, string>>;
  /** What a person wrote; it stands in place of the drafted sentences, never of the data. */
  readonly edited: Readonly<Partial<Record<AccountSection, string>>>;
  readonly leadFigure: number | null;
  readonly inOneLine: readonly Line[];
  readonly steps: readonly Step[];
  readonly description: readonly DescriptionPart[];
  readonly measures: readonly MeasureRow[];
  readonly rivals: readonly RivalBlock[];
  readonly year: { readonly rows: readonly StageRow[]; readonly caption: string };
  readonly setting: readonly Line[];
  readonly places: readonly { readonly plantNumber: number; readonly place: PublicPlace; readonly name: string }[];
  readonly cautions: readonly string[];
  readonly plants: readonly PlantBlock[];
  readonly figures: readonly Figure[];
  readonly sources: readonly { readonly number: number; readonly citation: string; readonly licence: string }[];
  readonly sourceNotes: readonly string[];
  readonly credits: readonly string[];
  readonly author: string;
  readonly licence: string;
  /** Photographs whose description nobody has written. */
  readonly missingAlt: readonly PhotoId[];
}
