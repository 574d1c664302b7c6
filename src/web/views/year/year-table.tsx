import type { YearView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { longDate, shortDate } from "../../parts/dates.js";
import { Name } from "../../parts/name.js";
import { To } from "../../parts/to.js";
import { markSentence } from "./dial.js";

/** The same year to be read as a table: outings down, plants across. `reachable` is false while the dial stands for it. */
export const YearTable = ({ year, reachable }: { readonly year: YearView; readonly reachable: boolean }) => (
  <div
    className={reachable ? "scroll" : ""}
    {...(reachable ? { tabIndex: 0, role: "region", "aria-label": say("web.year.table.region") } : {})}
  >
    <table className="plain year-table">
      <caption className="caption">{say("web.year.table.caption", { year: String(year.year), date: longDate(year.upTo) })}</caption>
      <thead>
        <tr>
          <th scope="col">{say("web.year.table.outing")}</th>
          {year.rings.map((ring) => (
            <th scope="col" key={ring.plantId}>
              {ring.nick}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {year.outings.map((outing) => (
          <tr key={outing.outingId}>
            <th scope="row">
              {shortDate(outing.date)}
              <br />
              <span className="side">{outing.goal}</span>
            </th>
            {year.rings.map((ring) => {
              const mark = ring.marks.find((one) => one.outingId === outing.outingId);
              if (mark === undefined) return <td key={ring.plantId}>{say("web.year.table.nothing")}</td>;
              const text = mark.stageId === null ? (mark.why === "" ? say(`web.year.kind.${mark.kind}`) : mark.why) : mark.stageName;
              return (
                <td key={ring.plantId}>
                  {reachable ? (
                    <To href={`/plants/${ring.plantId}`} query={{ upTo: mark.date }} aria-label={markSentence(ring, mark)}>
                      {text}
                    </To>
                  ) : (
                    text
                  )}
                  {mark.kind === "unsure" ? "?" : ""}
                </td>
              );
            })}
          </tr>
        ))}
        <tr>
          <th scope="row">{say("web.year.standing")}</th>
          {year.rings.map((ring) => (
            <td key={ring.plantId}>
              <Name spans={ring.standing} />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  </div>
);
