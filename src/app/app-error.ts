/**
 * The three ways a use case says no. Each carries what its reader needs: a stable `code`, what is safe in spite of it
 * (`kept`), what to do (`remedy`). The message is a sentence for people.
 */

import type { RecordKind } from "../store/index.js";
import { say } from "../words/index.js";

/** One field that was not accepted: where (JSON Pointer, RFC 6901), the value as it stood, what is wrong with it. */
export interface FieldFault {
  readonly pointer: string;
  readonly value?: string;
  readonly detail: string;
}

/** One question to be answered before a write is accepted. */
export interface OpenQuestion {
  readonly code: string;
  readonly text: string;
}

interface Facts {
  readonly code: string;
  readonly detail: string;
  readonly kept?: string;
  readonly remedy?: string;
}

/** The book holds nothing under this id. The caller shows what there is, or goes back. */
export class NotInBook extends Error {
  readonly code = "not-in-book";
  readonly kind: string;
  readonly id: string;
  constructor(kind: string, id: string, detail: string) {
    super(detail);
    this.name = "NotInBook";
    this.kind = kind;
    this.id = id;
  }
}

/** A {@link NotInBook} with its sentence. */
export const notInBook = (kind: RecordKind | "table" | "taxon" | "job", id: string): NotInBook =>
  new NotInBook(kind, id, say("refused.not-in-book", { kind: say(`kind.${kind}`), id }));

/** The write was not accepted; nothing of it is kept. The caller shows `errors` at their fields and keeps the user's input. */
export class Refused extends Error {
  readonly code: string;
  readonly kept: string | undefined;
  readonly remedy: string | undefined;
  readonly errors: readonly FieldFault[];
  constructor(facts: Facts, errors: readonly FieldFault[] = []) {
    super(facts.detail);
    this.name = "Refused";
    this.code = facts.code;
    this.kept = facts.kept;
    this.remedy = facts.remedy;
    this.errors = errors;
  }
}

/** The write waits for answers. The caller asks them and sends again with `confirmed`. */
export class Unanswered extends Error {
  readonly code = "questions-first";
  readonly remedy: string;
  readonly questions: readonly OpenQuestion[];
  constructor(detail: string, remedy: string, questions: readonly OpenQuestion[]) {
    super(detail);
    this.name = "Unanswered";
    this.remedy = remedy;
    this.questions = questions;
  }
}

/** A tagged error says in kebab-case what happened; the codes of Node and SQLite are in capitals. */
export const isTaggedError = (
  error: unknown,
): error is Error & { readonly code: string; readonly kept?: string; readonly remedy?: string } =>
  error instanceof Error && "code" in error && typeof error.code === "string" && /^[a-z]+(-[a-z0-9]+)*$/.test(error.code);
