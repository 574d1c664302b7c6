import type { Spans, Standing } from "../../contract/index.js";
import { say } from "../../words/index.js";

export interface ResultWordMarkProps {
  readonly word: Standing["word"];
  readonly settled: boolean;
  /** The sentence it stands with; where that begins with the word, the mark stands alone. */
  readonly beside?: Spans;
}

/** The result word of a determination with a small drawn mark; a full disc means settled. */
export const ResultWordMark = ({ word, settled, beside = [] }: ResultWordMarkProps) => {
  const shown = settled ? "species" : word === "species" ? "cf" : word;
  const text = say(`web.word.${shown}`);
  const sentence = beside.map((span) => span.text).join("");
  const said = sentence.toLowerCase().startsWith(text.toLowerCase());
  return (
    <b className={`result-word result-${shown}${said ? " result-alone" : ""}`}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        <circle cx="6" cy="6" r="5" className="result-rim" />
        {shown === "species" ? <circle cx="6" cy="6" r="5" className="result-fill" /> : null}
        {shown === "cf" ? <path d="M6 1A5 5 0 1 1 1 6H6Z" className="result-fill" /> : null}
        {shown === "one-of-two" ? <path d="M6 1A5 5 0 0 1 6 11Z" className="result-fill" /> : null}
        {shown === "hybrid-question" ? <path d="M3 3L9 9M9 3L3 9" className="result-cross" /> : null}
      </svg>
      {said ? null : text}
    </b>
  );
};
