import type { PlantPage, SheetRow } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { shortDate } from "../../parts/dates.js";
import { Photo } from "../../parts/photo.js";

export interface PhotoStripsProps {
  readonly page: PlantPage;
  readonly sheets: ReadonlyMap<string, SheetRow>;
  readonly describe: (photoId: string) => string;
  readonly onPhoto: (photoId: string) => void;
  readonly viewName: (viewId: string) => string | undefined;
}

/** The plant's photographs in the order of stages, then of time; those without a stage come last. */
export const orderedPhotos = (
  page: PlantPage,
  sheets: ReadonlyMap<string, SheetRow>,
): readonly { readonly stage: string; readonly name: string; readonly photoIds: readonly string[] }[] => {
  const time = (id: string): string => sheets.get(id)?.taken ?? "";
  const sorted = [...page.photoIds].sort((a, b) => time(a).localeCompare(time(b)));
  const groups = [
    ...page.board.stages.map((stage) => ({ stage: String(stage.id), name: stage.name })),
    { stage: "", name: say("web.photos.no-stage") },
  ];
  const known = new Set(page.board.stages.map((stage) => String(stage.id)));
  return groups
    .map((group) => ({
      ...group,
      photoIds: sorted.filter((id) => {
        const stage = sheets.get(id)?.stageId ?? "";
        return (known.has(stage) ? stage : "") === group.stage;
      }),
    }))
    .filter((group) => group.photoIds.length > 0);
};

/** The photographs of a plant as strips, one for each stage. */
export const PhotoStrips = ({ page, sheets, describe, onPhoto, viewName }: PhotoStripsProps) => (
  <div className="strips">
    {orderedPhotos(page, sheets).map((group) => (
      <section key={group.stage} className="strip-section" aria-label={group.name}>
        <h3 className="part">
          {group.name} <span className="num side">{group.photoIds.length}</span>
        </h3>
        <ul className="bare strip">
          {group.photoIds.map((photoId) => {
            const sheet = sheets.get(photoId);
            const view = sheet?.viewId === null || sheet === undefined ? undefined : viewName(sheet.viewId);
            return (
              <li key={photoId} className={sheet?.leftOut === true ? "strip-left-out" : ""}>
                <button type="button" className="photo-button" onClick={() => onPhoto(photoId)}>
                  <Photo
                    photoId={photoId}
                    alt={describe(photoId)}
                    sizes="(max-width: 700px) 80vw, 420px"
                    {...(sheet === undefined ? {} : { width: sheet.widthPx, height: sheet.heightPx })}
                  />
                </button>
                <span className="caption" aria-hidden="true">
                  {[view, sheet?.taken === null || sheet === undefined ? undefined : shortDate(sheet.taken.slice(0, 10))]
                    .filter(Boolean)
                    .join(", ")}
                </span>
              </li>
            );
          })}
        </ul>
      </section>
    ))}
  </div>
);
