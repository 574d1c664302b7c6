import { useCallback } from "react";
import { useApi } from "../api.js";
import { say } from "../../words/index.js";
import { mediumDate } from "./dates.js";
import { useKeys } from "./keyboard.js";
import { useUpTo } from "./use-up-to.js";

/** "as of 21 August 2022": reads the book as it stood on a day; steps from outing to outing; keeps the day in the address. */
export const ReadingDay = ({ bookDay }: { readonly bookDay: string }) => {
  const { upTo, choose } = useUpTo();
  const { data } = useApi("GET /api/outings", {});
  const day = upTo ?? bookDay;
  const dates = [...new Set(data?.outings.map((outing) => String(outing.date)))].sort();
  const previous = dates.findLast((date) => date < day);
  const next = dates.find((date) => date > day);
  useKeys(
    useCallback(
      (event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return false;
        const wanted = event.key === "[" ? previous : event.key === "]" ? next : undefined;
        if (wanted !== undefined) choose(wanted);
        return wanted !== undefined;
      },
      [choose, next, previous],
    ),
  );
  const step = (date: string | undefined, word: "previous" | "next", sign: string) => {
    const label = date === undefined ? say(`web.day.${word}`) : say(`web.day.${word}.on`, { date: mediumDate(date) });
    return (
      <button
        type="button"
        className="quiet"
        disabled={date === undefined}
        aria-label={label}
        title={label}
        onClick={() => choose(date ?? null)}
      >
        {sign}
      </button>
    );
  };
  return (
    <form className="reading-day" aria-label={say("web.day.label")} onSubmit={(event) => event.preventDefault()}>
      <span aria-hidden="true">{say("web.day.as-of")}</span>
      {step(previous, "previous", "‹")}
      <input
        type="date"
        aria-label={say("web.day.pick")}
        value={day}
        onChange={(event) => {
          if (event.target.value !== "") choose(event.target.value);
        }}
      />
      {step(next, "next", "›")}
      {upTo === undefined ? null : (
        <button type="button" className="quiet" onClick={() => choose(null)}>
          {say("web.day.whole")}
        </button>
      )}
    </form>
  );
};
