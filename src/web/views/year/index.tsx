import { useState } from "react";
import { useApi } from "../../api.js";
import { say } from "../../../words/index.js";
import { longDate } from "../../parts/dates.js";
import { EmptyState } from "../../parts/empty-state.js";
import { Figure } from "../../parts/figure.js";
import { Loading } from "../../parts/loading.js";
import { Name } from "../../parts/name.js";
import { ProblemNote } from "../../parts/problem-note.js";
import { ResultWordMark } from "../../parts/result-word.js";
import { To } from "../../parts/to.js";
import { useTitle } from "../../parts/use-title.js";
import { useUpTo } from "../../parts/use-up-to.js";
import { Dial } from "./dial.js";
import { DueList } from "./due-list.js";
import { Legend } from "./legend.js";
import { YearTable } from "./year-table.js";
import "./year.css";

/** The front page: what is due, how each plant stands, and the year as a dial or a table. */
export const Place = () => {
  const { query, choose } = useUpTo();
  const { data: year, error, refetch } = useApi("GET /api/year", { query });
  const { data: book } = useApi("GET /api/book", {});
  const [asTable, setAsTable] = useState(false);
  useTitle(say("web.place.year"));
  if (year === undefined) return error === null ? <Loading /> : <ProblemNote problem={error} again={() => void refetch()} />;
  if (year.rings.length === 0)
    return (
      <EmptyState title={say("web.year.empty.title")} text={say("web.year.empty.text")}>
        <To href="/begin" className="button main">
          {say("web.year.empty.begin")}
        </To>
        <To href="/begin" query={{ with: "invented-year" }} className="button">
          {say("web.year.empty.invented")}
        </To>
      </EmptyState>
    );
  const unsorted = book?.counts.unsorted ?? 0;
  return (
    <div className="year">
      <div className="year-prose">
        <h1>{say("web.year.title", { year: String(year.year) })}</h1>
        <p className="side">{say("web.year.as-of", { date: longDate(year.upTo) })}</p>
        <DueList due={year.due} />
        <section aria-labelledby="standing-head">
          <h2 className="column-head" id="standing-head">
            {say("web.year.standing")}
          </h2>
          <ul className="bare ruled standing">
            {year.rings.map((ring) => (
              <li key={ring.plantId}>
                <To href={`/plants/${ring.plantId}`}>{ring.nick}</To>
                <span>
                  <ResultWordMark word={ring.word} settled={ring.settled} beside={ring.standing} />
                  <Name spans={ring.standing} />
                </span>
              </li>
            ))}
          </ul>
        </section>
        {year.summary.length === 0 ? null : <p className="side year-summary">{year.summary.join(" ")}</p>}
        <p className="buttons no-print">
          <To href="/outing" className="button main">
            {say("web.year.do.outing")}
          </To>
          <To href="/bring" className="button">
            {say("web.year.do.bring")}
          </To>
          {unsorted === 0 ? null : (
            <To href="/sorting" className="button">
              {say("web.year.do.sort", { count: unsorted })}
            </To>
          )}
        </p>
      </div>
      <div className="year-drawn">
        <p className="year-toggle no-print">
          <button type="button" className="quiet" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
            {say(asTable ? "web.year.as-dial" : "web.year.as-table")}
          </button>
        </p>
        {asTable ? null : (
          <Figure caption={<Legend stages={year.stages} />} className="year-figure">
            <Dial year={year} onDay={choose} />
          </Figure>
        )}
        <div className={asTable ? "" : "hidden-until-print"}>
          <YearTable year={year} reachable={asTable} />
        </div>
      </div>
    </div>
  );
};
