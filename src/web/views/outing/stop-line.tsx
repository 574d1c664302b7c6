/** When one stood at a plant on this outing: the stop by the phone's clock, which later puts the photographs there. */
import { useState } from "react";
import type { LocalTime, Outing, PlantId, Stop, StopId } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { call } from "../../api.js";
import { TextField } from "../../work/text-field.js";
import type { Keeper } from "../../work/use-keeper.js";

const now = (): string => new Date().toTimeString().slice(0, 5);

export const StopLine = ({
  outing,
  plantId,
  stop,
  nick,
  keeper,
}: {
  readonly outing: Outing;
  readonly plantId: PlantId;
  readonly stop: Stop | undefined;
  readonly nick: string;
  readonly keeper: Keeper;
}) => {
  const [from, setFrom] = useState(stop?.from.slice(11, 16) ?? "");
  const [to, setTo] = useState(stop?.to.slice(11, 16) ?? "");
  const keep = (first: string, last: string): void => {
    if (first === "" || last === "") return;
    const id = stop?.id ?? (`stop-${outing.id}-${plantId}` as StopId);
    const at = (time: string, known: string | undefined, second: string): LocalTime =>
      (known?.slice(11, 16) === time ? known : `${outing.date}T${time}:${second}`) as LocalTime;
    const body = { id, outingId: outing.id, plantId, from: at(first, stop?.from, "00"), to: at(last, stop?.to, "59") };
    void keeper.keep(say("outing.stop-kept", { nick, from: first, to: last }), async () =>
      call("PUT /api/stops/{id}", { params: { id }, body }),
    );
  };
  return (
    <details className="stop-line">
      <summary>
        {stop === undefined ? say("outing.stop-none") : say("outing.stop-is", { from: stop.from.slice(11, 16), to: stop.to.slice(11, 16) })}
      </summary>
      <p className="side">{say("outing.stop-help")}</p>
      <div className="work-row end">
        <TextField label={say("outing.start")} type="time" value={from} onChange={setFrom} />
        <TextField label={say("outing.end")} type="time" value={to} onChange={setTo} />
        <button
          type="button"
          onClick={() => {
            const first = from === "" ? now() : from;
            const last = to === "" || from === "" ? now() : to;
            setFrom(first);
            setTo(last);
            keep(first, last);
          }}
        >
          {say(from === "" ? "outing.stop-now" : "outing.stop-keep")}
        </button>
      </div>
    </details>
  );
};
