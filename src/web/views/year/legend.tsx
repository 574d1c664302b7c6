import { useId } from "react";
import type { YearView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { stageLetters } from "../../parts/stage-letters.js";
import { Hatches, hatchOf } from "./hatches.js";

/** What tints, hatches and letters of the dial mean. */
export const Legend = ({ stages }: { readonly stages: YearView["stages"] }) => {
  const id = useId().replaceAll(/[^\w-]/g, "");
  const letters = stageLetters(stages.map((stage) => stage.name));
  return (
    <>
      <svg width="0" height="0" aria-hidden="true" className="legend-defs">
        <Hatches id={id} />
      </svg>
      <ul className="legend" aria-label={say("web.year.legend")}>
        {stages.map((stage, index) => (
          <li key={stage.id}>
            <svg viewBox="0 0 34 18" aria-hidden="true">
              <rect width="34" height="18" className={`dial-stage stage-fill-${index % 9}`} />
              <rect width="34" height="18" className="dial-hatch" fill={`url(#${id}-${hatchOf(index)})`} />
              <text x="17" y="13.2" className={`dial-letters stage-halo-${index % 9}`}>
                {letters[index]}
              </text>
            </svg>
            {stage.name}
          </li>
        ))}
        <li>
          <svg viewBox="0 0 34 18" aria-hidden="true">
            <rect width="34" height="18" className="dial-none" fill={`url(#${id}-none)`} />
          </svg>
          {say("web.year.legend.none")}
        </li>
        <li>
          <svg viewBox="0 0 34 18" aria-hidden="true">
            <circle cx="17" cy="9" r="6" className="dial-outing" />
          </svg>
          {say("web.year.legend.outing")}
        </li>
        <li>
          <svg viewBox="0 0 34 18" aria-hidden="true">
            <path d="M11 3l12 12m0-12l-12 12" className="dial-happening" />
          </svg>
          {say("web.year.legend.happening")}
        </li>
        <li>
          <svg viewBox="0 0 34 18" aria-hidden="true">
            <path d="M4 9H30" className="dial-needle" />
          </svg>
          {say("web.year.legend.needle")}
        </li>
      </ul>
    </>
  );
};
