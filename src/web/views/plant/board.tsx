import { Fragment, useRef, useState } from "react";
import type { KeyboardEvent } from "react";
import type { Board as BoardData, BoardCell } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { TileButton, TileLegend } from "../../parts/tile.js";

/** Where a tile lies: its character and its stage. */
export interface CellPlace {
  readonly characterId: string;
  readonly stageId: string;
}

/** The row and cell at a place; undefined when the board has none. */
export const cellAt = (
  board: BoardData,
  place: CellPlace,
): { readonly row: BoardData["rows"][number]; readonly cell: BoardCell } | undefined => {
  const row = board.rows.find((one) => one.characterId === place.characterId);
  const cell = row?.cells.find((one) => one.stageId === place.stageId);
  return row === undefined || cell === undefined ? undefined : { row, cell };
};

/** The rows in runs of the same part, in the order given. */
export const runsOfParts = (
  rows: BoardData["rows"],
): readonly { readonly part: string; readonly from: number; readonly rows: BoardData["rows"] }[] => {
  const runs: { part: string; from: number; rows: BoardData["rows"] }[] = [];
  rows.forEach((row, index) => {
    const last = runs.at(-1);
    if (last?.part === row.part) last.rows = [...last.rows, row];
    else runs.push({ part: row.part, from: index, rows: [row] });
  });
  return runs;
};

/** Where an arrow key leads from a tile; the same place when there is no further one. */
export const stepFrom = (
  key: string,
  row: number,
  column: number,
  rows: number,
  columns: number,
): readonly [number, number] | undefined => {
  const within = (value: number, count: number): number => Math.min(count - 1, Math.max(0, value));
  switch (key) {
    case "ArrowRight":
      return [row, within(column + 1, columns)];
    case "ArrowLeft":
      return [row, within(column - 1, columns)];
    case "ArrowDown":
      return [within(row + 1, rows), column];
    case "ArrowUp":
      return [within(row - 1, rows), column];
    case "Home":
      return [row, 0];
    case "End":
      return [row, columns - 1];
    case "PageDown":
      return [within(row + 8, rows), column];
    case "PageUp":
      return [within(row - 8, rows), column];
    default:
      return undefined;
  }
};

export interface BoardProps {
  readonly board: BoardData;
  readonly open: CellPlace | null;
  readonly onOpen: (place: CellPlace) => void;
}

/** The evidence board: parts from base to seed down, stages across. One stop of the Tab key; arrows move, Enter opens. */
export const Board = ({ board, open, onOpen }: BoardProps) => {
  const table = useRef<HTMLTableElement>(null);
  const firstSeen = board.rows.findIndex((row) => row.cells.some((cell) => cell.kind === "seen"));
  const [at, setAt] = useState<readonly [number, number]>(() => {
    const row = Math.max(0, firstSeen);
    return [row, Math.max(0, board.rows[row]?.cells.findIndex((cell) => cell.kind === "seen") ?? 0)];
  });
  const current: readonly [number, number] = at[0] < board.rows.length && at[1] < board.stages.length ? at : [0, 0];
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const next = stepFrom(event.key, current[0], current[1], board.rows.length, board.stages.length);
    if (next === undefined) return;
    event.preventDefault();
    setAt(next);
    table.current?.querySelector<HTMLElement>(`[data-at="${next[0]}.${next[1]}"]`)?.focus();
  };
  const empty = board.rows.every((row) => row.cells.every((cell) => cell.kind === "open" || cell.kind === "cannot"));
  return (
    <>
      {empty ? <p>{say("web.board.empty")}</p> : null}
      <TileLegend />
      <div className="scroll board-scroll">
        {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-to-interactive-role -- a grid of buttons moved through by arrow keys (ARIA practices, grid) */}
        <table className="board" role="grid" aria-label={say("web.board.label")} ref={table} onKeyDown={onKeyDown}>
          <thead>
            <tr>
              <th scope="col" className="board-corner">
                <span className="hidden-words">{say("web.board.character")}</span>
              </th>
              {board.stages.map((stage) => (
                <th scope="col" key={stage.id} title={stage.looksLike}>
                  {stage.name}
                  <span className="side">{stage.usualMonths}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {runsOfParts(board.rows).map((run) => (
              <Fragment key={`${run.part} ${run.from}`}>
                <tr className="board-part">
                  <th scope="colgroup" colSpan={board.stages.length + 1}>
                    <span className="part">{run.part}</span>
                  </th>
                </tr>
                {run.rows.map((row, inRun) => (
                  <tr key={row.characterId} className={row.applies ? "" : "board-idle"}>
                    <th scope="row">
                      {row.name}
                      {row.applies ? null : <span className="side"> {say("web.board.not-here")}</span>}
                    </th>
                    {row.cells.map((cell, column) => {
                      const line = run.from + inRun;
                      const isOpen = open?.characterId === row.characterId && open.stageId === cell.stageId;
                      return (
                        <td key={cell.stageId}>
                          <TileButton
                            kind={cell.kind}
                            label={cell.label}
                            leftOut={cell.leftOut}
                            sentence={cell.sentence}
                            tabIndex={line === current[0] && column === current[1] ? 0 : -1}
                            data-at={`${line}.${column}`}
                            aria-expanded={isOpen}
                            onFocus={() => setAt([line, column])}
                            onClick={() => onOpen({ characterId: row.characterId, stageId: cell.stageId })}
                          />
                        </td>
                      );
                    })}
                  </tr>
                ))}
              </Fragment>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
};
