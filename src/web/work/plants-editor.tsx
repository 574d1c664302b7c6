/** Followed plants: a nickname, a spot, marks in the field, and the look-alikes one must exclude. */
import { useState } from "react";
import type { TableSummaryView } from "../../contract/index.js";
import type { FollowedPlant, PlantId, Spot } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call, useApi } from "../api.js";
import { EditList, FormEnd } from "./edit-list.js";
import { newId } from "./new-id.js";
import { numberIn, numberProblem, textOf } from "./numbers.js";
import { Choose, TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

interface PlantFormProps {
  readonly plant: FollowedPlant | null;
  readonly spots: readonly Spot[];
  readonly tables: readonly TableSummaryView[];
  readonly onKeep: (plant: FollowedPlant) => void;
  readonly onCancel: () => void;
}

const PlantForm = ({ plant, spots, tables, onKeep, onCancel }: PlantFormProps) => {
  const [nick, setNick] = useState(plant?.nick ?? "");
  const [spotId, setSpotId] = useState<string>(plant?.spotId ?? spots[0]?.id ?? "");
  const [tableId, setTableId] = useState<string>(plant?.tableId ?? tables[0]?.id ?? "");
  const [marks, setMarks] = useState(plant?.marks ?? "");
  const [stems, setStems] = useState(textOf(plant?.stemCount));
  const [marked, setMarked] = useState(textOf(plant?.markedStemCount));
  const [rivals, setRivals] = useState<readonly string[]>(plant?.rivalIds ?? []);
  const [note, setNote] = useState(plant?.note ?? "");
  const table = useApi("GET /api/tables/{tableId}", { params: { tableId } }, { enabled: tableId !== "" }).data;
  const problems = { stems: numberProblem(stems, { min: 1, whole: true }), marked: numberProblem(marked, { min: 0, whole: true }) };
  const spot = spots.find(({ id }) => id === spotId);
  const chosen = tables.find(({ id }) => id === tableId);
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        if (spot === undefined || chosen === undefined || problems.stems !== undefined || problems.marked !== undefined) return;
        onKeep({
          ...plant,
          id: plant?.id ?? newId<PlantId>("plant"),
          nick: nick.trim(),
          spotId: spot.id,
          tableId: chosen.id,
          marks,
          stemCount: numberIn(stems) ?? null,
          markedStemCount: numberIn(marked) ?? null,
          rivalIds: (table?.taxa ?? []).flatMap(({ id }) => (rivals.includes(id) ? [id] : [])),
          note,
        });
      }}
    >
      <TextField label={say("plant.nick")} help={say("plant.nick-help")} required value={nick} onChange={setNick} maxLength={80} />
      <Choose
        label={say("plant.spot")}
        value={spotId}
        options={spots.map(({ id, name }) => ({ value: id as string, label: name }))}
        onChange={setSpotId}
      />
      <Choose
        label={say("plant.table")}
        value={tableId}
        options={tables.map(({ id, title }) => ({ value: id as string, label: title }))}
        onChange={setTableId}
      />
      <TextField label={say("plant.marks")} help={say("plant.marks-help")} value={marks} onChange={setMarks} maxLength={400} />
      <TextField label={say("plant.stems")} inputMode="numeric" value={stems} onChange={setStems} problem={problems.stems} />
      <TextField label={say("plant.marked")} inputMode="numeric" value={marked} onChange={setMarked} problem={problems.marked} />
      {table !== undefined && (
        <fieldset className="people work-wide">
          <legend>{say("plant.rivals")}</legend>
          <p className="field-hint">
            {say("plant.rivals-help", { count: table.taxa.filter(({ expectedInCounty }) => expectedInCounty).length })}
          </p>
          <div className="rivals">
            {table.taxa.map(({ id, name, vernacular, expectedInCounty }) => (
              <label key={id} className="work-check">
                <input
                  type="checkbox"
                  checked={rivals.includes(id)}
                  onChange={(event) => setRivals((now) => (event.target.checked ? [...now, id] : now.filter((one) => one !== id)))}
                />
                <span>
                  <i className="name">{name}</i>
                  {vernacular["en"] === undefined ? "" : `, ${vernacular["en"]}`}
                  {expectedInCounty ? "" : ` (${say("plant.not-expected")})`}
                </span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <div className="work-wide">
        <TextField label={say("outing.note")} rows={2} value={note} onChange={setNote} maxLength={2000} />
      </div>
      <FormEnd onCancel={onCancel} />
    </form>
  );
};

export const PlantsEditor = (props: {
  readonly plants: readonly FollowedPlant[];
  readonly spots: readonly Spot[];
  readonly tables: readonly TableSummaryView[];
  readonly keeper: Keeper;
}) => {
  const { plants, spots, tables, keeper } = props;
  if (spots.length === 0 || tables.length === 0)
    return <p className="side">{say(spots.length === 0 ? "plant.needs-spot" : "plant.needs-table")}</p>;
  return (
    <EditList
      items={plants}
      idOf={({ id }) => id}
      nameOf={({ nick }) => nick}
      addWord={say("plant.add")}
      empty={say("plant.none")}
      line={(plant) => (
        <>
          <b>{plant.nick}</b>, {spots.find(({ id }) => id === plant.spotId)?.name ?? plant.spotId}
          <br />
          <span className="side">
            {plant.marks}
            {plant.rivalIds.length > 0 ? ` · ${say("plant.rival-count", { count: plant.rivalIds.length })}` : ""}
          </span>
        </>
      )}
      onRemove={(plant) =>
        void keeper.keep(say("work.removed-what", { name: plant.nick }), async () =>
          call("DELETE /api/plants/{id}", { params: { id: plant.id } }),
        )
      }
      form={(plant, done) => (
        <PlantForm
          plant={plant}
          spots={spots}
          tables={tables}
          onCancel={done}
          onKeep={(kept) => {
            void keeper
              .keep(kept.nick, async () => call("PUT /api/plants/{id}", { params: { id: kept.id }, body: kept }))
              .then((isKept) => {
                if (isKept) done();
              });
          }}
        />
      )}
    />
  );
};
