/** The leaves laid over the trays: find a choice by typing, and why sheets are left out. */
import { useState } from "react";
import { say } from "../../../words/index.js";
import { Dialog } from "../../parts/index.js";
import { TextField } from "../../work/text-field.js";
import type { Choice, RowKind } from "./keys.js";

export const FindDialog = (props: {
  readonly row: RowKind;
  readonly choices: readonly Choice[];
  readonly onChoose: (choice: Choice) => void;
  readonly onClose: () => void;
}) => {
  const [text, setText] = useState("");
  const words = text.toLowerCase().split(/\s+/);
  const fitting = props.choices.filter(({ label }) => words.every((word) => label.toLowerCase().includes(word)));
  return (
    <Dialog open title={say(`sort.find.${props.row}`)} onClose={props.onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          const first = fitting[0];
          if (first !== undefined) props.onChoose(first);
        }}
      >
        <TextField first label={say("sort.find-type")} help={say("sort.find-help")} value={text} onChange={setText} />
        <ul className="find-list">
          {fitting.map((choice, i) => (
            <li key={choice.value}>
              <button type="button" className={i === 0 ? "first" : ""} onClick={() => props.onChoose(choice)}>
                {choice.label}
              </button>
            </li>
          ))}
        </ul>
        {fitting.length === 0 && <p>{say("sort.find-none", { text })}</p>}
      </form>
    </Dialog>
  );
};

export const ReasonDialog = (props: {
  readonly count: number;
  readonly reasons: readonly string[];
  readonly title: string;
  readonly onReason: (reason: string) => void;
  readonly onClose: () => void;
}) => {
  const [own, setOwn] = useState("");
  return (
    <Dialog open title={props.title} onClose={props.onClose}>
      {/* oxlint-disable-next-line jsx-a11y/no-static-element-interactions -- the digits are a shortcut for the buttons inside */}
      <div
        onKeyDown={(event) => {
          const reason = event.target instanceof HTMLInputElement ? undefined : props.reasons[Number(event.key) - 1];
          if (reason !== undefined) props.onReason(reason);
        }}
      >
        <p>{say("work.leave-out-lead")}</p>
        <ul className="find-list">
          {props.reasons.map((reason, i) => (
            <li key={reason}>
              <button type="button" autoFocus={i === 0} onClick={() => props.onReason(reason)}>
                <kbd>{i + 1}</kbd> {reason}
              </button>
            </li>
          ))}
        </ul>
        <form
          className="work-row end"
          onSubmit={(event) => {
            event.preventDefault();
            if (own.trim() !== "") props.onReason(own.trim());
          }}
        >
          <TextField label={say("work.own-reason")} value={own} onChange={setOwn} maxLength={400} />
          <button type="submit">{say("work.leave-out")}</button>
        </form>
      </div>
    </Dialog>
  );
};
