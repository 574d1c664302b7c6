import type { Slip } from "../../engine/index.js";
import type { Spans } from "../../contract/index.js";
import { say } from "../../words/index.js";
import { mediumDate } from "./dates.js";
import { Name } from "./name.js";

/** A name whose parts were not set: all of it in italics, the qualifier upright. */
const BareName = ({ slip }: { readonly slip: Slip }) => (
  <>
    {slip.qualifier === "" || slip.qualifier === "?" ? "" : `${slip.qualifier} `}
    <i className="name">{slip.name}</i>
    {slip.qualifier === "?" ? "?" : ""}
  </>
);

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
            {slip.nameSpans === undefined ? <BareName slip={slip} /> : <Name spans={slip.nameSpans} />}
          </span>{" "}
          <span className="side">{say(`web.slip.role.${slip.role}`, { by: slip.by })}</span>
          {slip.overturned ? <b className="slip-word"> {say("web.slip.overturned")}</b> : null}
          <br />“{slip.why}”
        </span>
      </li>
    ))}
  </ul>
);
