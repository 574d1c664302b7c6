/** The views still missing of a plant, the stage at hand first. It is computed here, so that it shrinks with every key. */
import type { SheetRow } from "../../../contract/index.js";
import { missingViews, type PlantId, type Stage, type View } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";

export interface MissingListProps {
  readonly plantId: PlantId;
  readonly nick: string;
  readonly stageHere: string | null;
  readonly sheets: readonly SheetRow[];
  readonly views: readonly View[];
  readonly stages: readonly Stage[];
}

export const MissingList = ({ plantId, nick, stageHere, sheets, views, stages }: MissingListProps) => {
  const { data } = useApi("GET /api/plants/{plantId}", { params: { plantId } });
  if (data === undefined) return null;
  const byStage = missingViews({
    views,
    records: data.stageRecords,
    photos: sheets.map((sheet) => ({ ...sheet, leaveOut: sheet.leftOut ? say("sort.left-out") : null })),
  }).filter((stage) => stage.plantId === plantId);
  const nameOf = (id: string): string => views.find((view) => view.id === id)?.name ?? id;
  const stageName = (id: string): string => stages.find((stage) => stage.id === id)?.name ?? id;
  const order = byStage.toSorted((a, b) => Number(b.stageId === stageHere) - Number(a.stageId === stageHere));
  return (
    <div className="missing">
      <h2>{say("sort.missing", { nick })}</h2>
      {byStage.length === 0 && <p className="side">{say("sort.missing-no-stage")}</p>}
      {order.map(({ stageId, missing, photographed }) => (
        <details key={stageId} open={stageId === stageHere || byStage.length === 1}>
          <summary>
            {say("sort.missing-stage", {
              stage: stageName(stageId),
              missing: missing.length,
              wanted: missing.length + photographed.length,
            })}
          </summary>
          {missing.length === 0 ? (
            <p className="side">{say("sort.missing-none")}</p>
          ) : (
            <ul>
              {missing.map((id) => (
                <li key={id}>{nameOf(id)}</li>
              ))}
            </ul>
          )}
        </details>
      ))}
    </div>
  );
};
