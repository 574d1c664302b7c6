/** What was done, newest first, and the check of the whole book. */
import { useState } from "react";
import { say } from "../../../words/index.js";
import { useApi, useSend } from "../../api.js";
import { Loading, ProblemNote } from "../../parts/index.js";

const when = new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short" });

export const HistoryPart = () => {
  const [limit, setLimit] = useState(50);
  const history = useApi("GET /api/history", { query: { limit } });
  if (history.error !== null) return <ProblemNote problem={history.error} again={() => void history.refetch()} />;
  if (history.data === undefined) return <Loading />;
  const { edits } = history.data;
  return (
    <section aria-labelledby="history-title">
      <h2 id="history-title">{say("shelf.history")}</h2>
      <p>{say("shelf.history-lead")}</p>
      {edits.length === 0 && <p className="side">{say("shelf.history-none")}</p>}
      <ol className="work-list">
        {edits.map((edit) => (
          <li key={edit.id} className={edit.state === "undone" ? "undone" : ""}>
            <span>
              {edit.label}
              {edit.state === "undone" ? ` (${say("shelf.undone")})` : ""}
            </span>
            <span className="side work-num">
              {when.format(new Date(edit.at))}
              {edit.by === "" ? "" : ` · ${edit.by}`} · {say("shelf.rows", { count: edit.rowCount })}
            </span>
          </li>
        ))}
      </ol>
      {edits.length === limit && limit < 500 && (
        <button type="button" onClick={() => setLimit(500)}>
          {say("shelf.more-history")}
        </button>
      )}
    </section>
  );
};

export const ProofPart = ({ folder }: { readonly folder: string }) => {
  const proof = useSend("POST /api/proof");
  const report = proof.data;
  return (
    <section aria-labelledby="proof-title">
      <h2 id="proof-title">{say("shelf.proof")}</h2>
      <p>{say("shelf.proof-lead")}</p>
      <p>
        {say("shelf.folder")} <code>{folder}</code>
      </p>
      <button type="button" className="main" disabled={proof.isPending} onClick={() => proof.mutate({})}>
        {say(proof.isPending ? "shelf.proof-running" : "shelf.proof-run")}
      </button>
      <ProblemNote problem={proof.error} />
      {report !== undefined && (
        <div role="status" className={report.clean ? "notice" : "notice notice-conflict"}>
          <p>
            <b>{say(report.clean ? "shelf.proof-clean" : "shelf.proof-found", { count: report.findings.length })}</b>{" "}
            {say("shelf.proof-counts", { originals: report.originalsChecked, records: report.recordsChecked })}
          </p>
          <ul className="work-list">
            {report.findings.map((finding) => (
              <li key={`${finding.code} ${finding.text}`}>
                <span>
                  {finding.text} {finding.path !== undefined && <code>{finding.path}</code>}
                </span>
              </li>
            ))}
          </ul>
          {!report.clean && <p>{say("shelf.proof-remedy")}</p>}
        </div>
      )}
    </section>
  );
};
