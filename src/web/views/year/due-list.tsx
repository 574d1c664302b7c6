import type { YearView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { To } from "../../parts/to.js";

/** What is due, in prose; what can no longer be seen this year stands after it. */
export const DueList = ({ due }: { readonly due: YearView["due"] }) => {
  const [open, lost] = [due.filter((line) => !line.lost), due.filter((line) => line.lost)];
  const list = (lines: YearView["due"]) => (
    <ul className="bare ruled due">
      {lines.map((line) => (
        <li key={`${line.plantId} ${line.sentence}`}>
          <To href={`/plants/${line.plantId}/case`}>{line.nick}</To>
          <span>
            {line.sentence}{" "}
            <span className="side">
              {line.lost || line.tool === "" ? line.when : say("web.year.due.when", { when: line.when, tool: line.tool })}
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
  return (
    <>
      <section aria-labelledby="due-head">
        <h2 className="column-head" id="due-head">
          {say("web.year.due")}
        </h2>
        {open.length === 0 ? <p>{say("web.year.due.nothing")}</p> : list(open)}
      </section>
      {lost.length === 0 ? null : (
        <section aria-labelledby="lost-head">
          <h2 className="column-head" id="lost-head">
            {say("web.year.lost")}
          </h2>
          {list(lost)}
        </section>
      )}
    </>
  );
};
