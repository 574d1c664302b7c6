/** The strip of time: the day's photographs above the stops of the walk, so that one sees which fall between them. */
import type { Outing, Stop } from "../../../engine/index.js";
import type { SheetRow } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { longDate } from "../../parts/index.js";

const secondsIn = (time: string): number =>
  Number(time.slice(11, 13)) * 3600 + Number(time.slice(14, 16)) * 60 + Number(time.slice(17, 19));
const clock = (seconds: number): string =>
  `${String(Math.floor(seconds / 3600)).padStart(2, "0")}:${String(Math.floor((seconds % 3600) / 60)).padStart(2, "0")}`;

export interface TimeStripProps {
  readonly day: string;
  readonly sheets: readonly SheetRow[];
  readonly outing: (Outing & { readonly stops: readonly Stop[] }) | undefined;
  readonly nickOf: (plantId: string) => string;
  readonly here: SheetRow | undefined;
  readonly onStop: (plantId: string) => void;
}

export const TimeStrip = ({ day, sheets, outing, nickOf, here, onStop }: TimeStripProps) => {
  const taken = sheets.flatMap((sheet) => (sheet.taken?.slice(0, 10) === day ? [{ sheet, at: secondsIn(sheet.taken) }] : []));
  const stops = (outing?.stops ?? []).map((stop) => ({ stop, from: secondsIn(stop.from), to: secondsIn(stop.to) }));
  const all = [...taken.map(({ at }) => at), ...stops.flatMap(({ from, to }) => [from, to])];
  if (all.length === 0) return null;
  const first = Math.min(...all) - 60;
  const last = Math.max(...all) + 60;
  const share = (at: number): string => `${((at - first) / (last - first)) * 100}%`;
  const span = last - first;
  const every = [300, 600, 900, 1800, 3600, 7200].find((step) => span / step <= 10) ?? 14_400;
  const hours = Array.from(
    { length: Math.floor(last / every) - Math.ceil(first / every) + 1 },
    (_, i) => (Math.ceil(first / every) + i) * every,
  );
  const between = taken.filter(({ at }) => !stops.some(({ from, to }) => at >= from && at <= to)).length;
  return (
    <div className="strip">
      <p className="hidden-words">{say("sort.strip", { day: longDate(day), count: taken.length, stops: stops.length, between })}</p>
      <div className="strip-track" aria-hidden="true">
        {taken.map(({ sheet, at }) => (
          <i
            key={sheet.id}
            className={sheet.id === here?.id ? "here" : sheet.plantId === null ? "loose" : ""}
            style={{ left: share(at) }}
          />
        ))}
      </div>
      <div className="strip-stops">
        {stops.map(({ stop, from, to }) => (
          <button
            type="button"
            key={stop.id}
            style={{ left: share(from), width: `calc(${share(to)} - ${share(from)})` }}
            title={`${nickOf(stop.plantId)}, ${clock(from)}\u2013${clock(to)}`}
            aria-label={say("sort.stop", { nick: nickOf(stop.plantId), from: clock(from), to: clock(to) })}
            onClick={() => onStop(stop.plantId)}
          >
            <span>{nickOf(stop.plantId)}</span>
          </button>
        ))}
      </div>
      <div className="strip-hours" aria-hidden="true">
        {hours.map((at) => (
          <span key={at} style={{ left: share(at) }}>
            {clock(at)}
          </span>
        ))}
      </div>
    </div>
  );
};
