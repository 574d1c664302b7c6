import { useCallback, useEffect, useRef } from "react";
import type { Board, BoardCell, PlantPage } from "../../../contract/index.js";
import type { ReferenceTable } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { longDate } from "../../parts/dates.js";
import { useKeys } from "../../parts/keyboard.js";
import { Photo } from "../../parts/photo.js";
import { Tile, tileWord } from "../../parts/tile.js";
import { lookHow, lookSays, readingHow, readingSays } from "./evidence-words.js";

export interface CellPanelProps {
  readonly page: PlantPage;
  readonly row: Board["rows"][number];
  readonly cell: BoardCell;
  readonly table: ReferenceTable | undefined;
  readonly onClose: () => void;
  readonly onPhoto: (photoId: string) => void;
  readonly describe: (photoId: string) => string;
}

/** What lies behind one tile: looks, readings and photographs; on an open tile when and with what it can be seen. */
export const CellPanel = ({ page, row, cell, table, onClose, onPhoto, describe }: CellPanelProps) => {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // After the frame has taken the focus to a place just entered: a link may lead straight to this panel.
    const later = setTimeout(() => {
      head.current?.focus({ preventScroll: true });
      head.current?.closest(".cell-panel")?.scrollIntoView({ block: "nearest" });
    }, 0);
    return () => clearTimeout(later);
  }, [row.characterId, cell.stageId]);
  useKeys(
    useCallback(
      (event) => {
        if (event.key !== "Escape") return false;
        onClose();
        return true;
      },
      [onClose],
    ),
  );
  const looks = page.looks.filter((look) => cell.lookIds.includes(look.id));
  const readings = page.readings.filter((reading) => cell.readingIds.includes(reading.id));
  const stage = page.board.stages.find((one) => one.id === cell.stageId);
  const errors = table?.characters.find((one) => one.id === row.characterId)?.errors ?? [];
  return (
    <aside className="cell-panel" aria-label={say("web.cell.label", { character: row.name })}>
      <div className="cell-head">
        <div>
          <p className="part">
            {row.part} · {stage?.name}
          </p>
          <h2 tabIndex={-1} ref={head}>
            {row.name}
          </h2>
        </div>
        <button type="button" className="quiet" onClick={onClose}>
          {say("web.close")}
        </button>
      </div>
      <p className="cell-state">
        <Tile kind={cell.kind} /> {tileWord(cell.kind)}
      </p>
      {looks.length + readings.length === 0 ? <p>{cell.sentence}</p> : null}
      {cell.photoIds.length === 0 ? null : (
        <ul className="bare cell-photos">
          {cell.photoIds.map((photoId) => (
            <li key={photoId}>
              <button type="button" className="photo-button" onClick={() => onPhoto(photoId)}>
                <Photo photoId={photoId} alt={describe(photoId)} sizes="220px" />
              </button>
            </li>
          ))}
        </ul>
      )}
      {looks.length === 0 ? null : (
        <>
          <h3 className="column-head">{say("web.cell.looks")}</h3>
          <ul className="bare ruled">
            {looks.map((look) => (
              <li key={look.id} id={`look-${look.id}`}>
                <b>{lookSays(look, table)}</b>
                <br />
                <span className="side">
                  {longDate(look.date)}; {lookHow(look)}
                </span>
                {look.note === "" ? null : <p className="cell-note">{look.note}</p>}
                {look.leaveOut === null ? null : <p className="cell-note">{say("web.left-out", { why: look.leaveOut })}</p>}
              </li>
            ))}
          </ul>
        </>
      )}
      {readings.length === 0 ? null : (
        <>
          <h3 className="column-head">{say("web.cell.readings")}</h3>
          <ul className="bare ruled">
            {readings.map((reading) => (
              <li key={reading.id} id={`reading-${reading.id}`}>
                <b>{readingSays(reading)}</b>
                <br />
                <span className="side">
                  {longDate(reading.date)}; {readingHow(reading)}
                </span>
                <p className="cell-values num">{reading.values.join("  ")}</p>
                {reading.note === "" ? null : <p className="cell-note">{reading.note}</p>}
                {reading.leaveOut === null ? null : <p className="cell-note">{say("web.left-out", { why: reading.leaveOut })}</p>}
              </li>
            ))}
          </ul>
        </>
      )}
      {row.disturbs ? <p className="side">{say("web.cell.disturbs")}</p> : null}
      {errors.length === 0 ? null : (
        <>
          <h3 className="column-head">{say("web.cell.errors")}</h3>
          <ul className="cell-errors">
            {errors.map((error) => (
              <li key={error}>{error}</li>
            ))}
          </ul>
        </>
      )}
    </aside>
  );
};
