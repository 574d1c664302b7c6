/** Permissions: by whom, for which days and spots, what they allow and forbid. */
import { useState } from "react";
import type { IsoDate, Permission, PermissionId, Spot } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call } from "../api.js";
import { mediumDate } from "../parts/index.js";
import { EditList, FormEnd } from "./edit-list.js";
import { newId } from "./new-id.js";
import { TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

const PermissionForm = ({
  permission,
  spots,
  onKeep,
  onCancel,
}: {
  readonly permission: Permission | null;
  readonly spots: readonly Spot[];
  readonly onKeep: (permission: Permission) => void;
  readonly onCancel: () => void;
}) => {
  const [by, setBy] = useState(permission?.by ?? "");
  const [from, setFrom] = useState<string>(permission?.from ?? "");
  const [to, setTo] = useState<string>(permission?.to ?? "");
  const [allows, setAllows] = useState(permission?.allows ?? "");
  const [forbids, setForbids] = useState(permission?.forbids ?? "");
  const [spotIds, setSpotIds] = useState<readonly string[]>(permission?.spotIds ?? []);
  const turned = from !== "" && to !== "" && to < from;
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        if (turned) return;
        onKeep({
          id: permission?.id ?? newId<PermissionId>("permission"),
          by,
          from: from as IsoDate,
          to: to as IsoDate,
          allows,
          forbids,
          spotIds: spots.flatMap(({ id }) => (spotIds.includes(id) ? [id] : [])),
        });
      }}
    >
      <TextField label={say("permission.by")} required value={by} onChange={setBy} maxLength={200} />
      <TextField label={say("permission.from")} type="date" required value={from} onChange={setFrom} />
      <TextField
        label={say("permission.to")}
        type="date"
        required
        value={to}
        onChange={setTo}
        problem={turned ? say("permission.turned") : undefined}
      />
      <TextField label={say("permission.allows")} value={allows} onChange={setAllows} maxLength={400} />
      <TextField label={say("permission.forbids")} value={forbids} onChange={setForbids} maxLength={400} />
      <fieldset className="people work-wide">
        <legend>{say("permission.spots")}</legend>
        <div className="work-row">
          {spots.map(({ id, name }) => (
            <label key={id} className="work-check">
              <input
                type="checkbox"
                checked={spotIds.includes(id)}
                onChange={(event) => setSpotIds((now) => (event.target.checked ? [...now, id] : now.filter((one) => one !== id)))}
              />
              {name}
            </label>
          ))}
        </div>
      </fieldset>
      <FormEnd onCancel={onCancel} />
    </form>
  );
};

/** `day`: permissions that ended before it are marked as over. */
export const PermissionsEditor = ({
  permissions,
  spots,
  day,
  keeper,
}: {
  readonly permissions: readonly Permission[];
  readonly spots: readonly Spot[];
  readonly day: string;
  readonly keeper: Keeper;
}) => (
  <EditList
    items={permissions}
    idOf={({ id }) => id}
    nameOf={({ by }) => by}
    addWord={say("permission.add")}
    empty={say("permission.none")}
    line={(permission) => (
      <>
        <b>{permission.by}</b>,{" "}
        <span className="work-num">{say("permission.days", { from: mediumDate(permission.from), to: mediumDate(permission.to) })}</span>{" "}
        {permission.to < day && <strong className="permission-over">✕ {say("permission.over")}</strong>}
        <br />
        <span className="side">
          {permission.spotIds.length === 0
            ? say("permission.all-spots")
            : spots
                .filter(({ id }) => permission.spotIds.includes(id))
                .map(({ name }) => name)
                .join(", ")}
          {permission.allows === "" ? "" : `. ${say("permission.allows-line", { what: permission.allows })}`}
          {permission.forbids === "" ? "" : `. ${say("permission.forbids-line", { what: permission.forbids })}`}
        </span>
      </>
    )}
    onRemove={(permission) =>
      void keeper.keep(say("work.removed-what", { name: permission.by }), async () =>
        call("DELETE /api/permissions/{id}", { params: { id: permission.id } }),
      )
    }
    form={(permission, done) => (
      <PermissionForm
        permission={permission}
        spots={spots}
        onCancel={done}
        onKeep={(kept) => {
          void keeper
            .keep(kept.by, async () => call("PUT /api/permissions/{id}", { params: { id: kept.id }, body: kept }))
            .then((isKept) => {
              if (isKept) done();
            });
        }}
      />
    )}
  />
);
