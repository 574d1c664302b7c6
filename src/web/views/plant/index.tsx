import { useCallback } from "react";
import { useParams, useSearchParams } from "wouter";
import { useApi } from "../../api.js";
import { say } from "../../../words/index.js";
import { longDate } from "../../parts/dates.js";
import { Loading } from "../../parts/loading.js";
import { Name } from "../../parts/name.js";
import { Notice } from "../../parts/notice.js";
import { Photo } from "../../parts/photo.js";
import { PhotoViewer } from "../../parts/photo-viewer.js";
import { ProblemNote } from "../../parts/problem-note.js";
import { ResultWordMark } from "../../parts/result-word.js";
import { SlipList } from "../../parts/slip-list.js";
import { To } from "../../parts/to.js";
import { useSheetWords } from "../../parts/use-sheet-words.js";
import { useTitle } from "../../parts/use-title.js";
import { useUpTo } from "../../parts/use-up-to.js";
import { Board, cellAt } from "./board.js";
import type { CellPlace } from "./board.js";
import { CellPanel } from "./cell-panel.js";
import { PlantNotes } from "./notes.js";
import { orderedPhotos, PhotoStrips } from "./photo-strips.js";
import "./plant.css";

/** The page of a followed plant: how it stands, its board, its photographs, its slips. What is open is kept in the address. */
export const Place = () => {
  const { plantId = "" } = useParams();
  const { query } = useUpTo();
  const { data: page, error, refetch } = useApi("GET /api/plants/{plantId}", { params: { plantId }, query });
  const { data: book } = useApi("GET /api/book", {});
  const { data: table } = useApi(
    "GET /api/tables/{tableId}",
    { params: { tableId: page?.plant.tableId ?? "" } },
    { enabled: page !== undefined },
  );
  const { sheets, describe } = useSheetWords();
  const [search, setSearch] = useSearchParams();
  useTitle(page?.plant.nick ?? say("web.place.plants"));

  const put = useCallback(
    (changes: Readonly<Record<string, string | null>>) => {
      setSearch(
        (now) => {
          const next = new URLSearchParams(now);
          for (const [name, value] of Object.entries(changes)) {
            if (value === null) next.delete(name);
            else next.set(name, value);
          }
          return next;
        },
        { replace: true },
      );
    },
    [setSearch],
  );
  const showPhoto = useCallback((photo: string | null) => put({ photo }), [put]);

  if (page === undefined) return error === null ? <Loading /> : <ProblemNote problem={error} again={() => void refetch()} />;

  const [characterId, stageId] = (search.get("cell") ?? "").split("~");
  const evidence = search.get("look") ?? search.get("reading");
  const ofEvidence = (): CellPlace | null => {
    if (evidence === null) return null;
    for (const row of page.board.rows)
      for (const cell of row.cells)
        if ([...cell.lookIds, ...cell.readingIds].some((id) => id === evidence))
          return { characterId: row.characterId, stageId: cell.stageId };
    return null;
  };
  const open: CellPlace | null = characterId !== undefined && stageId !== undefined ? { characterId, stageId } : ofEvidence();
  const shown = open === null ? undefined : cellAt(page.board, open);
  const closeCell = (): void => {
    put({ cell: null, look: null, reading: null });
    document.querySelector<HTMLElement>(".board [tabindex='0']")?.focus();
  };
  const photoIds = orderedPhotos(page, sheets).flatMap((group) => group.photoIds);
  const habit = photoIds.findLast((id) => sheets.get(id)?.viewId === "habit" && sheets.get(id)?.leftOut === false) ?? photoIds.at(-1);
  const viewName = (viewId: string): string | undefined => book?.views.find((view) => view.id === viewId)?.name;
  return (
    <>
      <header className="plant-head">
        <div className="plant-head-text">
          <p className="side">
            {[page.spot.name, page.plant.marks, say("web.plant.outings", { count: page.outings.length })]
              .filter((part) => part !== "")
              .join(" · ")}
          </p>
          <h1>{page.plant.nick}</h1>
          <p className="plant-standing">
            <Name spans={page.standing.headline} />
          </p>
          <p>
            <ResultWordMark word={page.standing.word} settled={page.standing.settled} beside={page.standing.headline} />{" "}
            {page.standing.explanation}
          </p>
          <p className="buttons no-print">
            <To href={`/plants/${plantId}/case`} className="button main">
              {say("web.plant.case")}
            </To>
            <To href="/outing" query={{ plant: plantId }} className="button">
              {say("web.plant.record")}
            </To>
          </p>
          {page.cautions.map((caution) => (
            <Notice kind="caution" key={caution}>
              {caution}
            </Notice>
          ))}
          {page.permissions.length === 0 ? <p className="side">{say("web.plant.permission.none")}</p> : null}
          {page.permissions.map((permission) => {
            const words = say("web.plant.permission", {
              by: permission.by,
              to: longDate(permission.to),
              allows: permission.allows,
              forbids: permission.forbids,
              bars: permission.forbids === "" ? "no" : "yes",
            });
            return permission.expired ? (
              <Notice kind="caution" key={permission.id} title={say("web.plant.permission.expired")}>
                {words}
              </Notice>
            ) : (
              <p className="side" key={permission.id}>
                {words}
              </p>
            );
          })}
        </div>
        {habit === undefined ? null : (
          <button type="button" className="photo-button plant-cover" onClick={() => showPhoto(habit)}>
            <Photo photoId={habit} alt={describe(habit)} sizes="(max-width: 980px) 100vw, 45vw" eager />
          </button>
        )}
      </header>

      <section aria-labelledby="board-head">
        <h2 id="board-head">{say("web.board.title")}</h2>
        {page.conflicts.map((conflict) => (
          <Notice kind="conflict" key={conflict.characterId} title={say("web.board.conflict")}>
            {conflict.sentence}{" "}
            {conflict.lookIds.map((id, index) => (
              <To key={id} href={`/plants/${plantId}`} query={{ look: id }} className="proof">
                {say("web.proof.look-at", { at: index + 1 })}
              </To>
            ))}
          </Notice>
        ))}
        <div className={shown === undefined ? "board-frame" : "board-frame board-frame-open"}>
          <div className="board-side">
            <Board
              board={page.board}
              open={open}
              onOpen={(place) => put({ cell: `${place.characterId}~${place.stageId}`, look: null, reading: null })}
            />
          </div>
          {shown === undefined ? null : (
            <CellPanel
              page={page}
              row={shown.row}
              cell={shown.cell}
              table={table}
              onClose={closeCell}
              onPhoto={showPhoto}
              describe={describe}
            />
          )}
        </div>
      </section>

      <section aria-labelledby="photos-head">
        <h2 id="photos-head">{say("web.photos.title", { count: page.photoIds.length })}</h2>
        {page.photoIds.length === 0 ? (
          <p>
            {say("web.photos.none")} <To href="/bring">{say("web.year.do.bring")}</To>
          </p>
        ) : (
          <PhotoStrips page={page} sheets={sheets} describe={describe} onPhoto={showPhoto} viewName={viewName} />
        )}
      </section>

      <section aria-labelledby="slips-head" className="measured">
        <h2 id="slips-head">{say("web.slips.title")}</h2>
        {page.slips.length === 0 ? <p>{say("web.slips.none")}</p> : <SlipList slips={page.slips} />}
        <p className="no-print">
          <To href={`/plants/${plantId}/case`} query={{ slip: "new" }}>
            {say("web.slip.write")}
          </To>
        </p>
      </section>
      <PlantNotes page={page} />
      <PhotoViewer photoIds={photoIds} shown={search.get("photo")} onShow={showPhoto} describe={describe} />
    </>
  );
};
