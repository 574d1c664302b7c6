/** The views one photographs of a plant, and at which stages each is wanted: what the sorting trays count as missing. */
import { useState } from "react";
import { partOrder, type Stage, type View, type ViewId } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call } from "../api.js";
import { EditList, FormEnd } from "./edit-list.js";
import { newId } from "./new-id.js";
import { Choose, TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

const ViewForm = ({
  view,
  stages,
  onKeep,
  onCancel,
}: {
  readonly view: View | null;
  readonly stages: readonly Stage[];
  readonly onKeep: (view: View) => void;
  readonly onCancel: () => void;
}) => {
  const [name, setName] = useState(view?.name ?? "");
  const [part, setPart] = useState(view?.part ?? "");
  const [scale, setScale] = useState(view?.scaleWanted ?? false);
  const [wanted, setWanted] = useState<readonly string[]>(view?.stages ?? []);
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        onKeep({
          id: view?.id ?? newId<ViewId>("view"),
          name: name.trim(),
          part,
          scaleWanted: scale,
          stages: stages.flatMap(({ id }) => (wanted.includes(id) ? [id] : [])),
        });
      }}
    >
      <TextField label={say("view.name")} required value={name} onChange={setName} maxLength={120} />
      <Choose
        label={say("view.part")}
        value={part}
        options={[...new Set(["", ...partOrder, part])].map((value) => ({ value, label: value === "" ? "\u2013" : value }))}
        onChange={setPart}
      />
      <label className="work-check">
        <input type="checkbox" checked={scale} onChange={(event) => setScale(event.target.checked)} />
        {say("view.scale")}
      </label>
      <fieldset className="people work-wide">
        <legend>{say("view.stages")}</legend>
        <div className="work-row">
          {stages.map(({ id, name: stage }) => (
            <label key={id} className="work-check">
              <input
                type="checkbox"
                checked={wanted.includes(id)}
                onChange={(event) => setWanted((now) => (event.target.checked ? [...now, id] : now.filter((one) => one !== id)))}
              />
              {stage}
            </label>
          ))}
        </div>
      </fieldset>
      <FormEnd onCancel={onCancel} />
    </form>
  );
};

export const ViewsEditor = ({
  views,
  stages,
  keeper,
}: {
  readonly views: readonly View[];
  readonly stages: readonly Stage[];
  readonly keeper: Keeper;
}) => (
  <EditList
    items={views}
    idOf={({ id }) => id}
    nameOf={({ name }) => name}
    addWord={say("view.add")}
    empty={say("view.none")}
    line={(view) => (
      <>
        <b>{view.name}</b> <span className="side">{view.part}</span>
        {view.scaleWanted && <span className="side"> · {say("view.with-scale")}</span>}
        {view.stages.length > 0 && (
          <span className="side">
            {" "}
            ·{" "}
            {stages
              .filter(({ id }) => view.stages.includes(id))
              .map(({ name }) => name)
              .join(", ")}
          </span>
        )}
      </>
    )}
    form={(view, done) => (
      <ViewForm
        view={view}
        stages={stages}
        onCancel={done}
        onKeep={(kept) => {
          void keeper
            .keep(kept.name, async () => call("PUT /api/views/{id}", { params: { id: kept.id }, body: kept }))
            .then((isKept) => {
              if (isKept) done();
            });
        }}
      />
    )}
  />
);
