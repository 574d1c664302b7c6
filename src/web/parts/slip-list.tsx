import type { Slip } from "../../engine/index.js";
import type { Spans } from "../../contract/index.js";
import { say } from "../../words/index.js";
import { mediumDate } from "./dates.js";
import { Name } from "./name.js";

/** The slips of a plant, oldest first; an overturned one stays, with its reason. */
export const SlipList = ({ slips }: { readonly slips: readonly (Slip & { readonly nameSpans?: Spans })[] }) => (
  <ul className="bare ruled slips">
    {slips.map((slip) => (
      <li key={slip.id}>
        <time className="side" dateTime={slip.on}>
          {mediumDate(slip.on)}
        </time>
        <span>
          <span className={slip.overturned ? "slip-overturned" : ""}>
            {slip.qualifier === "cf." || slip.qualifier === "aff." ? `${slip.qualifier} ` : ""}
            {slip.nameSpans === undefined ? <i className="name">{slip.name}</i> : <Name spans={slip.nameSpans} />}
            {slip.qualifier === "?" ? "?" : ""}
          </span>{" "}
          <span className="side">{say(`web.slip.role.${slip.role}`, { by: slip.by })}</span>
          {slip.overturned ? <b className="slip-word"> {say("web.slip.overturned")}</b> : null}
          <br />“{slip.why}”
        </span>
      </li>
    ))}
  </ul>
);
