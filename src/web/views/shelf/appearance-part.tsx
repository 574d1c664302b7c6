/** How the page looks in this browser: paper, night, field; and how large its letters are. */
import { useState } from "react";
import { say } from "../../../words/index.js";
import { chooseLook, chooseType, looks, storedLook, storedType, types } from "../../parts/look.js";

const RadioRow = <T extends string>(props: {
  readonly legend: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly wordOf: (option: T) => string;
  readonly onChoose: (value: T) => void;
}) => (
  <fieldset className="people appearance">
    <legend>{props.legend}</legend>
    <div className="work-row">
      {props.options.map((option) => (
        <label key={option} className="work-check">
          <input type="radio" name={props.legend} checked={props.value === option} onChange={() => props.onChoose(option)} />
          {props.wordOf(option)}
        </label>
      ))}
    </div>
  </fieldset>
);

export const AppearancePart = () => {
  const [look, setLook] = useState(storedLook);
  const [type, setType] = useState(storedType);
  return (
    <section aria-labelledby="appearance-title">
      <h2 id="appearance-title">{say("shelf.appearance")}</h2>
      <p>{say("shelf.appearance-lead")}</p>
      <RadioRow
        legend={say("web.look.label")}
        value={look}
        options={looks}
        wordOf={(one) => say(`shelf.look.${one}`)}
        onChoose={(one) => {
          setLook(one);
          chooseLook(one);
        }}
      />
      <RadioRow
        legend={say("shelf.type")}
        value={type}
        options={types}
        wordOf={(one) => say(`shelf.type.${one}`)}
        onChoose={(one) => {
          setType(one);
          chooseType(one);
        }}
      />
    </section>
  );
};
