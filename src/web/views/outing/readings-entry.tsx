/** A series of readings: typed or tapped with blanks between, read while it is typed, doubtful values asked about at once. */
import { useState } from "react";
import { readingSeries, type Character, type Reading, type ReferenceTable } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { TextField } from "../../work/text-field.js";
import { expectedOf, questionInWords } from "./series-question.js";

const pad = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0"] as const;

export interface KeptSeries {
  readonly values: readonly number[];
  readonly stems: number | null;
  /** Doubtful values were looked at again and are right. */
  readonly confirmed: boolean;
}

export interface ReadingsEntryProps {
  readonly character: Character;
  readonly table: ReferenceTable;
  /** Sends the series; `asks`: what the server wants answered before it keeps it. */
  readonly onKeep: (series: KeptSeries) => Promise<{ readonly kept: boolean; readonly asks: readonly string[] }>;
  readonly kept: readonly Reading[];
}

export const ReadingsEntry = ({ character, table, onKeep, kept }: ReadingsEntryProps) => {
  const [text, setText] = useState("");
  const [stems, setStems] = useState("");
  const [serverAsks, setServerAsks] = useState<readonly string[]>([]);
  const unit = character.answer.kind === "measure" ? character.answer.unit : "";
  const wanted = character.answer.kind === "states" ? 0 : character.answer.minN;
  const read = text.trim() === "" ? null : readingSeries(text, { unit, expected: expectedOf(table, character.id) });
  const asks = read?.ok === true ? read.value.questions.map((question) => ({ question, text: questionInWords(question, unit) })) : [];
  const stemCount = /^\d+$/.test(stems.trim()) ? Number(stems) : null;
  const keep = (confirmed: boolean): void => {
    const values = read?.ok === true ? read.value.values : [];
    if (values.length === 0) return;
    void onKeep({ values, stems: stemCount, confirmed }).then((outcome) => {
      setServerAsks(outcome.asks);
      // Whoever has begun the next value while this one travelled keeps what is typed.
      if (outcome.kept) setText((now) => (now === text ? "" : now));
    });
  };
  const counted = kept.filter(({ leaveOut }) => leaveOut === null).reduce((n, { values }) => n + values.length, 0);
  return (
    <form
      className="readings"
      onSubmit={(event) => {
        event.preventDefault();
        if (asks.length === 0) keep(false);
      }}
    >
      <TextField
        label={unit === "" ? say("outing.readings-count") : say("outing.readings", { unit })}
        help={say("outing.readings-help", { wanted, unit: unit === "" ? say("outing.number") : unit })}
        value={text}
        onChange={setText}
        inputMode="text"
        problem={read?.ok === false ? read.problem.text : undefined}
      />
      <div className="pad" role="group" aria-label={say("outing.pad")}>
        {pad.map((key) => (
          <button type="button" key={key} onClick={() => setText((now) => now + key)}>
            {key}
          </button>
        ))}
        <button type="button" aria-label={say("outing.pad.back")} onClick={() => setText((now) => now.slice(0, -1))}>
          ⌫
        </button>
        <button type="button" className="pad-next" onClick={() => setText((now) => (now === "" || now.endsWith(" ") ? now : `${now} `))}>
          {say("outing.pad.next")}
        </button>
      </div>
      <p className="work-num readings-read" role="status">
        {read?.ok === true ? say("outing.read", { values: read.value.values.join("  "), unit, count: read.value.values.length }) : ""}
      </p>
      {asks.length > 0 && read?.ok === true && (
        <div className="notice asks" role="alert">
          <ul>
            {asks.map(({ question, text: sentence }) => (
              <li key={sentence}>
                {sentence}{" "}
                {question.kind === "another-unit" && question.perhapsUnit !== null && (
                  <button
                    type="button"
                    onClick={() =>
                      setText(
                        read.value.values
                          .map((value, i) =>
                            question.indices.includes(i) ? String(Math.round(value * question.factor * 1000) / 1000) : String(value),
                          )
                          .join(" "),
                      )
                    }
                  >
                    {say("outing.ask.yes-unit", {
                      unit: question.perhapsUnit,
                      become: question.values.map((v) => Math.round(v * question.factor * 100) / 100).join(", "),
                      own: unit,
                    })}
                  </button>
                )}
              </li>
            ))}
          </ul>
          <button type="button" onClick={() => keep(true)}>
            {say("outing.ask.right")}
          </button>
        </div>
      )}
      {serverAsks.length > 0 && (
        <div className="notice asks" role="alert">
          <ul>
            {serverAsks.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ul>
          <button type="button" onClick={() => keep(true)}>
            {say("outing.ask.right")}
          </button>
        </div>
      )}
      <div className="work-row end">
        <TextField label={say("outing.stems")} value={stems} onChange={setStems} inputMode="numeric" />
        <button type="submit" className="main" disabled={read?.ok !== true || asks.length > 0}>
          {say("outing.keep-series")}
        </button>
      </div>
      <p className="side">{say("outing.readings-far", { counted, wanted })}</p>
    </form>
  );
};
