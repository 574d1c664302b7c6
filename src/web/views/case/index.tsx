import { useCallback } from "react";
import { useParams, useSearchParams } from "wouter";
import type { CaseView } from "../../../contract/index.js";
import { useApi } from "../../api.js";
import { say } from "../../../words/index.js";
import { longDate } from "../../parts/dates.js";
import { Loading } from "../../parts/loading.js";
import { Name } from "../../parts/name.js";
import { Notice } from "../../parts/notice.js";
import { PhotoViewer } from "../../parts/photo-viewer.js";
import { ProblemNote } from "../../parts/problem-note.js";
import { ResultWordMark } from "../../parts/result-word.js";
import { SlipList } from "../../parts/slip-list.js";
import { To } from "../../parts/to.js";
import { useSheetWords } from "../../parts/use-sheet-words.js";
import { useTitle } from "../../parts/use-title.js";
import { useUpTo } from "../../parts/use-up-to.js";
import { Decide } from "./decide.js";
import { Hybrid } from "./hybrid.js";
import { Numbers } from "./numbers.js";
import { Rivals } from "./rivals.js";
import { SlipForm } from "./slip-form.js";
import { WitnessList } from "./witness-list.js";
import "./case.css";

/** All photographs the case rests on, each once, in the order of its lines. */
const photosOf = (view: CaseView): readonly string[] => [
  ...new Set(
    [...view.stands, ...view.standsAgainst, ...view.rivals.flatMap((rival) => rival.against)].flatMap((line) => line.photoIds.map(String)),
  ),
];

/** The case of a plant, as in a court file: the result in words, what stands, what stands against, rivals, what would decide. */
export const Place = () => {
  const { plantId = "" } = useParams();
  const { query } = useUpTo();
  const { data: view, error, refetch } = useApi("GET /api/plants/{plantId}/case", { params: { plantId }, query });
  const { data: page } = useApi("GET /api/plants/{plantId}", { params: { plantId }, query });
  const tableId = page?.plant.tableId ?? "";
  const { data: table } = useApi("GET /api/tables/{tableId}", { params: { tableId } }, { enabled: page !== undefined });
  const { describe } = useSheetWords();
  const [search, setSearch] = useSearchParams();
  useTitle(say("web.case.title", { plant: view?.nick ?? "" }));
  const put = useCallback(
    (name: string, value: string | null) => {
      setSearch(
        (now) => {
          const next = new URLSearchParams(now);
          if (value === null) next.delete(name);
          else next.set(name, value);
          return next;
        },
        { replace: true },
      );
    },
    [setSearch],
  );
  const showPhoto = useCallback((photo: string | null) => put("photo", photo), [put]);

  if (view === undefined) return error === null ? <Loading /> : <ProblemNote problem={error} again={() => void refetch()} />;
  const writing = search.get("slip") === "new";
  const rivalsApart = [view.leader, view.runnerUp].flatMap((taxon) => (taxon === null ? [] : [taxon.taxonId]));
  // The explanation usually says it already.
  const wanting = view.rule.wanting.filter((text) => !view.standing.explanation.includes(text));
  const nothing = view.stands.length + view.standsAgainst.length + view.rivals.reduce((sum, rival) => sum + rival.against.length, 0) === 0;
  return (
    <>
      <header className="case-head">
        <p className="side">
          <To href={`/plants/${plantId}`}>{view.nick}</To> · {say("web.case.upto", { date: longDate(view.upTo) })}
        </p>
        <h1>
          <Name spans={view.standing.headline} />
        </h1>
        <p className="case-explained">
          <ResultWordMark word={view.standing.word} settled={view.standing.settled} beside={view.standing.headline} />
          {view.standing.explanation}
        </p>
        {wanting.length === 0 ? null : (
          <p>
            <b>{say("web.case.wanting")}</b> {wanting.join("; ")}
          </p>
        )}
        {view.disagreement === null ? null : <Notice kind="conflict">{view.disagreement}</Notice>}
      </header>

      {nothing ? <p>{say("web.case.empty")}</p> : null}
      {view.standing.word === "hybrid-question" || view.hybrid.pairs.length > 0 ? <Hybrid view={view} /> : null}

      <div className={view.leader === null ? "case-columns case-leaderless" : "case-columns"}>
        {view.leader === null ? null : (
          <section aria-labelledby="stands-head">
            <h2 className="column-head stands" id="stands-head">
              {say("web.case.stands")}
            </h2>
            <p className="side">
              {say("web.case.stands.for")} <Name spans={view.leader.name} />
            </p>
            {view.stands.length === 0 ? (
              <p>{say("web.case.stands.none")}</p>
            ) : (
              <WitnessList plantId={plantId} lines={view.stands} onPhoto={showPhoto} />
            )}
          </section>
        )}
        <section aria-label={say(view.leader === null ? "web.case.rivals.all" : "web.case.against")}>
          {view.leader === null ? null : (
            <>
              <h2 className="column-head against">{say("web.case.against")}</h2>
              {view.standsAgainst.length === 0 ? (
                <p>{say("web.case.against.none")}</p>
              ) : (
                <WitnessList plantId={plantId} lines={view.standsAgainst} onPhoto={showPhoto} />
              )}
            </>
          )}
          <h2 className={view.leader === null ? "column-head" : "column-head rivals-head"}>
            {say(view.leader === null ? "web.case.rivals.all" : "web.case.rivals")}
          </h2>
          <Rivals view={view} onPhoto={showPhoto} />
          {rivalsApart.length < 2 || tableId === "" ? null : (
            <p className="proofs no-print">
              <To href={`/species/${tableId}/apart`} query={{ taxa: rivalsApart.join(",") }} className="proof">
                {say("web.case.apart")}
              </To>
            </p>
          )}
        </section>
        <section aria-labelledby="decide-head">
          <h2 className="column-head" id="decide-head">
            {say("web.case.decide")}
          </h2>
          {view.decide.length === 0 ? (
            <p>{say(view.standing.settled ? "web.case.decide.settled" : "web.case.decide.none")}</p>
          ) : (
            <Decide checks={view.decide} />
          )}
        </section>
      </div>

      <details className="case-numbers">
        <summary>{say("web.case.numbers")}</summary>
        <Numbers view={view} />
      </details>

      <section aria-labelledby="slips-head" className="case-slips">
        <h2 id="slips-head">{say("web.slips.title")}</h2>
        {view.slips.length === 0 ? <p>{say("web.slips.none")}</p> : <SlipList slips={view.slips} />}
        {writing ? (
          <SlipForm view={view} table={table} onDone={() => put("slip", null)} />
        ) : (
          <p className="no-print">
            <button type="button" onClick={() => put("slip", "new")}>
              {say("web.slip.write")}
            </button>
          </p>
        )}
      </section>
      {view.notice === "" ? null : <p className="side">{view.notice}</p>}
      <PhotoViewer photoIds={photosOf(view)} shown={search.get("photo")} onShow={showPhoto} describe={describe} />
    </>
  );
};
