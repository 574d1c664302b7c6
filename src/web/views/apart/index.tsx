import { useParams, useSearchParams } from "wouter";
import type { ApartView } from "../../../contract/index.js";
import { useApi } from "../../api.js";
import { say } from "../../../words/index.js";
import { Loading } from "../../parts/loading.js";
import { Name } from "../../parts/name.js";
import { Notice } from "../../parts/notice.js";
import { ProblemNote } from "../../parts/problem-note.js";
import { useTitle } from "../../parts/use-title.js";
import { axisOf, placeOn } from "./axis.js";
import "./apart.css";

type Row = ApartView["rows"][number];

/** A range on the row's axis: thin line for the extremes, thick for the usual. The numbers stand in the text beside. */
const RangeMark = ({
  range,
  axis,
}: {
  readonly range: NonNullable<Row["cells"][number]["range"]>;
  readonly axis: { readonly from: number; readonly to: number };
}) => {
  const x = (value: number): number => 1 + placeOn(axis, value) * 198;
  return (
    <svg className="range-mark" viewBox="0 0 200 14" preserveAspectRatio="none" aria-hidden="true">
      <path className="range-axis" d="M0 13.5H200" />
      <path className="range-whole" d={`M${x(range.min)} 7H${x(range.max)}M${x(range.min)} 4V10M${x(range.max)} 4V10`} />
      <rect className="range-usual" x={x(range.low)} y="3.5" width={Math.max(1.5, x(range.high) - x(range.low))} height="7" />
    </svg>
  );
};

/** Chooses which taxa stand side by side: two to six. */
const TaxaChoice = ({
  all,
  chosen,
  onChoose,
}: {
  readonly all: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
}) => (
  <fieldset className="taxa-choice no-print">
    <legend>{say("web.apart.choose")}</legend>
    {all.map((taxon) => {
      const is = chosen.includes(taxon.id);
      return (
        <label key={taxon.id}>
          <input
            type="checkbox"
            checked={is}
            disabled={(is && chosen.length <= 2) || (!is && chosen.length >= 6)}
            onChange={() => onChoose(is ? chosen.filter((id) => id !== taxon.id) : [...chosen, taxon.id])}
          />{" "}
          <i className="name">{taxon.name}</i>
        </label>
      );
    })}
  </fieldset>
);

/** Two to six taxa side by side, differences first; ranges of a character are drawn on one axis. */
export const Place = () => {
  const { tableId = "" } = useParams();
  const [search, setSearch] = useSearchParams();
  const asked = (search.get("taxa") ?? "").split(",").filter((id) => id !== "");
  const { data: table, error: tableError } = useApi("GET /api/tables/{tableId}", { params: { tableId } });
  const taxa = asked.length >= 2 ? asked.slice(0, 6) : (table?.taxa.slice(0, 2).map((taxon) => String(taxon.id)) ?? []);
  const {
    data: view,
    error,
    refetch,
  } = useApi("GET /api/tables/{tableId}/apart", { params: { tableId }, query: { taxa: taxa.join(",") } }, { enabled: taxa.length >= 2 });
  useTitle(say("web.apart.title"));
  if (view === undefined) {
    const problem = error ?? tableError;
    return problem === null ? <Loading /> : <ProblemNote problem={problem} again={() => void refetch()} />;
  }
  const stageName = (id: string): string => table?.stages.find((stage) => stage.id === id)?.name ?? id;
  const groups = (["sure", "usual", "none", "silent"] as const)
    .map((difference) => ({ difference, rows: view.rows.filter((row) => row.difference === difference) }))
    .filter((group) => group.rows.length > 0);
  return (
    <>
      <h1>{say("web.apart.title")}</h1>
      {table === undefined ? null : (
        <TaxaChoice
          all={table.taxa}
          chosen={taxa}
          onChoose={(ids) =>
            setSearch(
              (now) => {
                const next = new URLSearchParams(now);
                next.set("taxa", ids.join(","));
                return next;
              },
              { replace: true },
            )
          }
        />
      )}
      {table === undefined || table.notice === "" ? null : <p className="side">{table.notice}</p>}
      {view.notSeparated.map((pair) => (
        <Notice kind="conflict" key={`${pair.a} ${pair.b}`}>
          {pair.sentence}
        </Notice>
      ))}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a region that scrolls must be reachable by keyboard */}
      <section className="scroll" aria-label={say("web.apart.region")} tabIndex={0}>
        <table className="plain apart-table">
          <caption className="hidden-words">{say("web.apart.title")}</caption>
          <thead>
            <tr>
              <th scope="col">{say("web.board.character")}</th>
              {view.taxa.map((taxon) => (
                <th scope="col" key={taxon.taxonId} className="apart-taxon">
                  {taxon.vernacular === "" ? null : <span className="apart-vernacular">{taxon.vernacular}</span>}
                  <Name spans={taxon.name} />
                </th>
              ))}
            </tr>
          </thead>
          {groups.map((group) => (
            <tbody key={group.difference} className={`apart-${group.difference}`}>
              <tr>
                <th scope="rowgroup" colSpan={view.taxa.length + 1} className="apart-group">
                  <span className="column-head">{say(`web.apart.${group.difference}`)}</span>
                </th>
              </tr>
              {group.rows.map((row) => {
                const axis = axisOf(row.cells.map((cell) => cell.range));
                return (
                  <tr key={row.characterId}>
                    <th scope="row">
                      <span className="apart-name">{row.name}</span>
                      <span className="side apart-how">
                        {[
                          row.part,
                          row.tool === "eye" ? say("web.look.eye") : row.tool,
                          row.seenIn.length === 0 ? "" : row.seenIn.map(stageName).join(", "),
                        ]
                          .filter((part) => part !== "")
                          .join(" · ")}
                      </span>
                    </th>
                    {row.cells.map((cell, index) => (
                      <td key={view.taxa[index]?.taxonId}>
                        {cell.range === null || axis === null ? null : <RangeMark range={cell.range} axis={axis} />}
                        <span className="num">
                          {cell.text}
                          {cell.range === null || row.unit === "" || cell.text.endsWith(row.unit) ? "" : ` ${row.unit}`}
                        </span>
                      </td>
                    ))}
                  </tr>
                );
              })}
            </tbody>
          ))}
        </table>
      </section>
    </>
  );
};
