/** What is said of an outing as a whole: the day, the times, who, the weather, what it was for. */
import { useState } from "react";
import type { IsoDate, Outing, OutingId, Person } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { newId } from "../../work/new-id.js";
import { TextField } from "../../work/text-field.js";

const today = (): string => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

export const OutingForm = ({
  outing,
  people,
  onKeep,
  word,
}: {
  readonly outing?: Outing;
  readonly people: readonly Person[];
  readonly onKeep: (outing: Outing) => void;
  readonly word: string;
}) => {
  const [date, setDate] = useState<string>(outing?.date ?? today());
  const [start, setStart] = useState(outing?.start ?? "");
  const [end, setEnd] = useState(outing?.end ?? "");
  const [weather, setWeather] = useState(outing?.weather ?? "");
  const [who, setWho] = useState<readonly string[]>(outing?.people ?? []);
  const [others, setOthers] = useState((outing?.people ?? []).filter((one) => !people.some(({ initials }) => initials === one)).join(", "));
  const [goal, setGoal] = useState(outing?.goal ?? "");
  const [note, setNote] = useState(outing?.note ?? "");
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        const known = people.map(({ initials }) => initials).filter((one) => who.includes(one));
        const more = others
          .split(/[,;]/)
          .map((one) => one.trim())
          .filter((one) => one !== "");
        onKeep({
          cameraShiftS: null,
          ...outing,
          id: outing?.id ?? newId<OutingId>("outing"),
          date: date as IsoDate,
          start: start === "" ? null : start,
          end: end === "" ? null : end,
          weather,
          people: [...known, ...more],
          goal,
          note,
        });
      }}
    >
      <TextField label={say("outing.date")} type="date" required value={date} onChange={setDate} />
      <TextField label={say("outing.start")} type="time" value={start} onChange={setStart} />
      <TextField label={say("outing.end")} type="time" value={end} onChange={setEnd} />
      <TextField label={say("outing.weather")} value={weather} onChange={setWeather} maxLength={200} />
      <fieldset className="people work-wide">
        <legend>{say("outing.people")}</legend>
        <div className="work-row">
          {people.map(({ id, initials, role }) => (
            <label key={id} className="work-check" title={role}>
              <input
                type="checkbox"
                checked={who.includes(initials)}
                onChange={(event) => setWho((now) => (event.target.checked ? [...now, initials] : now.filter((one) => one !== initials)))}
              />
              {initials}
            </label>
          ))}
          <TextField label={say("outing.others")} help={say("outing.others-help")} value={others} onChange={setOthers} />
        </div>
      </fieldset>
      <div className="work-wide">
        <TextField label={say("outing.goal")} help={say("outing.goal-help")} value={goal} onChange={setGoal} maxLength={400} />
      </div>
      <div className="work-wide">
        <TextField label={say("outing.note")} rows={2} value={note} onChange={setNote} />
      </div>
      <div>
        <button type="submit" className="main">
          {word}
        </button>
      </div>
    </form>
  );
};
