/** Species: the tables of the book, and one table with its taxa, cards and scores. */
import { useState } from "react";
import { useRoute } from "wouter";
import { nameParts, type ReferenceTable } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { call, useApi } from "../../api.js";
import { EmptyState, Loading, Name, Notice, ProblemNote, To, useTitle } from "../../parts/index.js";
import "../../work/work.css";
import { CharacterDrawer } from "./character-drawer.js";
import "./species.css";
import { TaxonLine } from "./taxon-line.js";

const least = 2;
const most = 6;

const Export = ({ table }: { readonly table: ReferenceTable }) => {
  const [problem, setProblem] = useState<unknown>(null);
  const save = async (): Promise<void> => {
    try {
      const { csv } = await call("GET /api/tables/{tableId}/csv", { params: { tableId: table.id } });
      const address = URL.createObjectURL(new Blob([csv], { type: "text/csv;charset=utf-8" }));
      const link = document.createElement("a");
      link.href = address;
      link.download = `${table.id}.csv`;
      link.click();
      setTimeout(() => URL.revokeObjectURL(address), 10_000);
      setProblem(null);
    } catch (error) {
      setProblem(error);
    }
  };
  return (
    <>
      <button type="button" onClick={() => void save()}>
        {say("species.export")}
      </button>
      <ProblemNote problem={problem} />
    </>
  );
};

const TableView = ({ table }: { readonly table: ReferenceTable }) => {
  const pages = useApi("GET /api/pages", {});
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const canCompare = chosen.length >= least && chosen.length <= most;
  return (
    <div className="work species">
      <header>
        <p className="side">
          <To href="/species">{say("species.title")}</To>
        </p>
        <h1>{table.title}</h1>
      </header>
      {table.notice !== "" && <Notice>{table.notice}</Notice>}
      <section aria-labelledby="taxa-title">
        <h2 id="taxa-title">{say("species.taxa", { count: table.taxa.length })}</h2>
        <p>{say("species.choose", { least, most })}</p>
        <ul className="work-list taxa">
          {table.taxa.map((taxon) => {
            const page = pages.data?.pages.find(({ taxonId, tableId }) => taxonId === taxon.id && tableId === table.id);
            const isChosen = chosen.includes(taxon.id);
            return (
              <li key={taxon.id}>
                <label className="work-check">
                  <input
                    type="checkbox"
                    checked={isChosen}
                    disabled={!isChosen && chosen.length >= most}
                    onChange={(event) =>
                      setChosen((now) => (event.target.checked ? [...now, taxon.id] : now.filter((id) => id !== taxon.id)))
                    }
                  />
                  <span>
                    <TaxonLine taxon={taxon} />
                    {taxon.inOneLine !== "" && <span className="taxon-line">{taxon.inOneLine}</span>}
                    <span className="taxon-line side">
                      {[
                        taxon.status,
                        taxon.band,
                        taxon.flowerMonths === "" ? "" : say("species.flowers", { months: taxon.flowerMonths }),
                        taxon.expectedInCounty ? "" : say("plant.not-expected"),
                      ]
                        .filter((text) => text !== "")
                        .join(" · ")}
                    </span>
                    {taxon.cautions.map((caution) => (
                      <span key={caution} className="taxon-line">
                        <b>{say("species.caution")}</b> {caution}
                      </span>
                    ))}
                  </span>
                </label>
                <span className="side">
                  <To href={`/species/${encodeURIComponent(table.id)}/page/${encodeURIComponent(taxon.id)}`}>{say("species.page")}</To>
                  {page !== undefined && page.nicks.length > 0 && ` · ${say("species.stands", { nicks: page.nicks.join(", ") })}`}
                  {page?.published !== undefined && page.published !== null && ` · ${say("species.published")}`}
                </span>
              </li>
            );
          })}
        </ul>
        <div className={chosen.length > 0 ? "species-compare" : "species-compare quiet"}>
          {canCompare ? (
            <To href={`/species/${encodeURIComponent(table.id)}/apart`} query={{ taxa: chosen.join(",") }} className="button main">
              {say("species.compare", { count: chosen.length })}
            </To>
          ) : (
            <p className="side">{say("species.compare-none", { count: chosen.length, least, most })}</p>
          )}
        </div>
      </section>
      <CharacterDrawer table={table} />
      <section aria-labelledby="sources-title">
        <h2 id="sources-title">{say("species.sources")}</h2>
        {table.sources.length === 0 ? (
          <p className="side">{say("species.no-sources")}</p>
        ) : (
          <ul className="work-list">
            {table.sources.map((source) => (
              <li key={source.id}>
                <span>
                  {source.citation} <span className="side">{source.licence}</span>
                </span>
              </li>
            ))}
          </ul>
        )}
        {table.knownHybrids.length > 0 && (
          <>
            <h3>{say("species.hybrids")}</h3>
            <ul className="work-list">
              {table.knownHybrids.map(({ parents, note }) => (
                <li key={parents.join()}>
                  <span>
                    <Name
                      spans={[...nameParts(parents.map((id) => table.taxa.find((taxon) => taxon.id === id)?.name ?? id).join(" × "))]}
                    />{" "}
                    <span className="side">{note}</span>
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
        <Export table={table} />
      </section>
    </div>
  );
};

const OneTable = ({ tableId }: { readonly tableId: string }) => {
  const table = useApi("GET /api/tables/{tableId}", { params: { tableId } });
  useTitle(table.data?.title ?? say("species.title"));
  if (table.error !== null) return <ProblemNote problem={table.error} again={() => void table.refetch()} />;
  return table.data === undefined ? <Loading /> : <TableView table={table.data} />;
};

const AllTables = () => {
  useTitle(say("species.title"));
  const tables = useApi("GET /api/tables", {});
  const pages = useApi("GET /api/pages", {});
  if (tables.error !== null) return <ProblemNote problem={tables.error} again={() => void tables.refetch()} />;
  if (tables.data === undefined) return <Loading />;
  if (tables.data.tables.length === 0)
    return (
      <EmptyState title={say("species.empty-title")} text={say("species.empty-text")}>
        <To href="/shelf/tables" className="button main">
          {say("shelf.tables")}
        </To>
      </EmptyState>
    );
  return (
    <div className="work species">
      <header>
        <h1>{say("species.title")}</h1>
        <p>{say("species.lead")}</p>
      </header>
      {(pages.data?.pages.length ?? 0) > 0 && (
        <section aria-labelledby="pages-title">
          <h2 id="pages-title">{say("species.pages")}</h2>
          <ul className="work-list">
            {pages.data?.pages.map((page) => (
              <li key={`${page.tableId} ${page.taxonId}`}>
                <span>
                  <To href={`/species/${encodeURIComponent(page.tableId)}/page/${encodeURIComponent(page.taxonId)}`}>
                    {page.vernacular === "" ? page.plain : page.vernacular}
                  </To>
                </span>
                <span className="side">
                  {page.nicks.length === 0 ? say("species.no-plants") : say("species.stands", { nicks: page.nicks.join(", ") })} ·{" "}
                  {say(page.settled ? "species.settled" : "species.not-settled")} ·{" "}
                  {page.published === null ? say("species.not-published") : say("species.published")}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="tables-title">
        <h2 id="tables-title">{say("shelf.tables")}</h2>
        <ul className="work-list">
          {tables.data.tables.map((table) => (
            <li key={table.id}>
              <span>
                <To href={`/species/${encodeURIComponent(table.id)}`}>{table.title}</To>
              </span>
              <span className="side">
                {say("table.counts", { taxa: table.taxonCount, characters: table.characterCount, scores: table.scoreCount })}
              </span>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
};

export const Place = () => {
  const [isOne, params] = useRoute("/species/:tableId");
  return isOne ? <OneTable key={params.tableId} tableId={params.tableId} /> : <AllTables />;
};
