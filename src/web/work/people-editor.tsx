/** The people who look: initials as they stand on slips and looks, and what they do. */
import { useState } from "react";
import type { Person, PersonId } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call } from "../api.js";
import { EditList, FormEnd } from "./edit-list.js";
import { newId } from "./new-id.js";
import { TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

const PersonForm = ({
  person,
  onKeep,
  onCancel,
}: {
  readonly person: Person | null;
  readonly onKeep: (person: Person) => void;
  readonly onCancel: () => void;
}) => {
  const [initials, setInitials] = useState(person?.initials ?? "");
  const [role, setRole] = useState(person?.role ?? "");
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        onKeep({ id: person?.id ?? newId<PersonId>("person"), initials: initials.trim(), role });
      }}
    >
      <TextField
        label={say("person.initials")}
        help={say("person.initials-help")}
        required
        value={initials}
        onChange={setInitials}
        maxLength={20}
      />
      <TextField label={say("person.role")} value={role} onChange={setRole} maxLength={120} />
      <FormEnd onCancel={onCancel} />
    </form>
  );
};

export const PeopleEditor = ({ people, keeper }: { readonly people: readonly Person[]; readonly keeper: Keeper }) => (
  <EditList
    items={people}
    idOf={({ id }) => id}
    nameOf={({ initials }) => initials}
    addWord={say("person.add")}
    empty={say("person.none")}
    line={({ initials, role }) => (
      <>
        <b>{initials}</b>
        {role === "" ? "" : `, ${role}`}
      </>
    )}
    form={(person, done) => (
      <PersonForm
        person={person}
        onCancel={done}
        onKeep={(kept) => {
          void keeper
            .keep(kept.initials, async () => call("PUT /api/people/{id}", { params: { id: kept.id }, body: kept }))
            .then((isKept) => {
              if (isKept) done();
            });
        }}
      />
    )}
  />
);
