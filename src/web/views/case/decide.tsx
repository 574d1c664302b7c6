import type { CaseView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";

/** What would decide: the check, how, with what, when; and what is lost for this year. */
export const Decide = ({ checks }: { readonly checks: CaseView["decide"] }) => (
  <ul className="bare ruled decide">
    {checks.map((check) => (
      <li key={check.characterId} className={check.lost === null ? "" : "decide-lost"}>
        <b>{check.title}</b>
        {check.how === "" ? null : <span className="decide-line">{check.how}</span>}
        <span className="decide-line">{check.why}</span>
        <span className="side decide-line">
          {check.when}
          {check.tool === "computed" ? "" : ` · ${say("web.case.tool", { tool: check.tool })}`}
          {check.disturbs ? ` · ${say("web.case.disturbs")}` : ""}
        </span>
        {check.lost === null ? null : <b className="decide-line decide-why">{check.lost}</b>}
      </li>
    ))}
  </ul>
);
