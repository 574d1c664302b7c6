/** Reference tables: take one that comes with Stipule, bring one as CSV (all or nothing, with a report by row), remove one. */
import { useQueryClient } from "@tanstack/react-query";
import { useRef, useState } from "react";
import type { TableReport } from "../../contract/index.js";
import type { TableId } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call, useApi } from "../api.js";
import { ProblemNote, To } from "../parts/index.js";
import { TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

const idFrom = (text: string): string =>
  text
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60) || "table";

const Findings = ({ title, findings }: { readonly title: string; readonly findings: TableReport["problems"] }) =>
  findings.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a scrolling box must be reachable by keyboard */}
      <div className="bring-refused table-findings" tabIndex={0} role="region" aria-label={title}>
        <ul className="work-list">
          {findings.slice(0, 300).map((finding, i) => (
            // oxlint-disable-next-line react/no-array-index-key -- two findings may be the same at one place
            <li key={`${finding.where} ${i}`}>
              <span>
                <b className="work-num">{finding.where}</b>
                {finding.value === undefined ? "" : ` “${finding.value}”`}: {finding.text}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </>
  );

const CsvImport = () => {
  const client = useQueryClient();
  const file = useRef<HTMLInputElement>(null);
  const [csv, setCsv] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [title, setTitle] = useState("");
  const [report, setReport] = useState<TableReport | null>(null);
  const [problem, setProblem] = useState<unknown>(null);
  const [over, setOver] = useState(false);

  const send = async (text: string, name: string, keep: boolean): Promise<void> => {
    setProblem(null);
    try {
      const reply = await call("POST /api/tables", { body: { csv: text, tableId: idFrom(name) as TableId, title: name, keep } });
      setReport(reply);
      if (reply.edit !== null) await client.invalidateQueries();
    } catch (error) {
      setProblem(error);
    }
  };
  const take = (list: FileList | null): void => {
    const first = list?.[0];
    if (first === undefined) return;
    void first.text().then((text) => {
      const name = first.name.replace(/\.[^.]+$/, "");
      setCsv({ name: first.name, text });
      setTitle(name);
      return send(text, name, false);
    });
  };
  return (
    <div>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- dropping is an extra: the buttons inside do the same */}
      <div
        className={over ? "csv-drop over" : "csv-drop"}
        role="group"
        aria-label={say("table.drop")}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          take(event.dataTransfer.files);
        }}
      >
        <p>{say("table.drop")}</p>
        <button type="button" onClick={() => file.current?.click()}>
          {say("table.choose")}
        </button>
        <input
          ref={file}
          type="file"
          accept=".csv,text/csv"
          hidden
          aria-label={say("table.choose")}
          onChange={(event) => take(event.target.files)}
        />
      </div>
      <ProblemNote problem={problem} />
      {csv !== null && report !== null && (
        <div role="status">
          <p>
            {report.accepted
              ? say(report.edit === null ? "table.can" : "table.taken", {
                  file: csv.name,
                  taxa: report.table?.taxonCount ?? 0,
                  characters: report.table?.characterCount ?? 0,
                  scores: report.table?.scoreCount ?? 0,
                })
              : say("table.refused", { file: csv.name, count: report.problems.length })}
          </p>
          <Findings title={say("table.problems")} findings={report.problems} />
          <Findings title={say("table.remarks")} findings={report.remarks} />
          {report.accepted && report.edit === null && (
            <div className="work-row end">
              <TextField label={say("table.title")} value={title} onChange={setTitle} maxLength={200} required />
              <button type="button" className="main" disabled={title.trim() === ""} onClick={() => void send(csv.text, title.trim(), true)}>
                {say("table.take-in")}
              </button>
            </div>
          )}
        </div>
      )}
    </div>
  );
};

export const TablesEditor = ({ keeper }: { readonly keeper: Keeper }) => {
  const tables = useApi("GET /api/tables", {});
  const starters = useApi("GET /api/starter-tables", {});
  return (
    <>
      {tables.data?.tables.length === 0 && <p className="side">{say("table.none")}</p>}
      <ul className="work-list">
        {(tables.data?.tables ?? []).map((table) => (
          <li key={table.id}>
            <div>
              <To href={`/species/${encodeURIComponent(table.id)}`}>{table.title}</To>
              <br />
              <span className="side">
                {say("table.counts", { taxa: table.taxonCount, characters: table.characterCount, scores: table.scoreCount })}
                {table.notice === "" ? "" : ` · ${table.notice}`}
              </span>
            </div>
            <button
              type="button"
              className="quiet"
              aria-label={say("work.remove-what", { name: table.title })}
              onClick={() =>
                void keeper.keep(say("work.removed-what", { name: table.title }), async () =>
                  call("DELETE /api/tables/{tableId}", { params: { tableId: table.id } }),
                )
              }
            >
              {say("work.remove")}
            </button>
          </li>
        ))}
      </ul>
      <ProblemNote problem={tables.error ?? starters.error} />
      {(starters.data?.tables ?? []).some(({ inBook }) => !inBook) && (
        <>
          <h3>{say("table.starters")}</h3>
          <ul className="work-list">
            {(starters.data?.tables ?? [])
              .filter(({ inBook }) => !inBook)
              .map(({ key, title, notice }) => (
                <li key={key}>
                  <div>
                    {title}
                    {notice !== "" && (
                      <>
                        <br />
                        <span className="side">{notice}</span>
                      </>
                    )}
                  </div>
                  <button
                    type="button"
                    onClick={() => void keeper.keep(title, async () => call("POST /api/starter-tables/{key}", { params: { key } }))}
                  >
                    {say("table.take")}
                  </button>
                </li>
              ))}
          </ul>
        </>
      )}
      <h3>{say("table.own")}</h3>
      <p className="side">{say("table.own-help")}</p>
      <CsvImport />
    </>
  );
};
