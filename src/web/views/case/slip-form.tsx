import { useState } from "react";
import type { FormEvent } from "react";
import type { CaseView } from "../../../contract/index.js";
import type { ReferenceTable, Slip } from "../../../engine/index.js";
import { useApi, useSend } from "../../api.js";
import { say } from "../../../words/index.js";
import { Field } from "../../parts/field.js";
import { ProblemNote } from "../../parts/problem-note.js";

const qualifiers: readonly Slip["qualifier"][] = ["", "cf.", "aff.", "?"];
const roles: readonly Slip["role"][] = ["det", "conf", "vid"];
const typed = "(typed)";

export interface SlipFormProps {
  readonly view: CaseView;
  readonly table: ReferenceTable | undefined;
  readonly onDone: () => void;
}

/** Writes a slip: name, by whom, when, why. A name the case speaks against comes back as a problem and asks for a reason. */
export const SlipForm = ({ view, table, onDone }: SlipFormProps) => {
  const { data: book } = useApi("GET /api/book", {});
  const send = useSend("PUT /api/slips/{id}");
  // Made once: sending the same form twice keeps one slip.
  const [id] = useState(() => `slip-${crypto.randomUUID()}`);
  const [choice, setChoice] = useState<string>(view.leader?.taxonId ?? typed);
  const [name, setName] = useState("");
  const [qualifier, setQualifier] = useState<Slip["qualifier"]>("");
  const [role, setRole] = useState<Slip["role"]>("det");
  const [by, setBy] = useState(() => book?.people[0]?.initials ?? "");
  const [on, setOn] = useState<string>(view.upTo);
  const [why, setWhy] = useState("");
  const [tried, setTried] = useState(false);
  const taxon = table?.taxa.find((one) => one.id === choice);
  const written = (taxon?.name ?? name).trim();
  const wanting = (text: string): string | null => (tried && text.trim() === "" ? say("web.slip.wanted") : null);
  const asksReason = send.error?.details.errors?.some((error) => error.pointer === "/why") ?? false;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (written === "" || by.trim() === "" || why.trim() === "") return;
    send.mutate(
      {
        params: { id },
        body: {
          id,
          plantId: view.plantId,
          on,
          by: by.trim(),
          name: written,
          taxonIds: taxon === undefined ? [] : [taxon.id],
          role,
          qualifier,
          why: why.trim(),
        },
      },
      { onSuccess: onDone },
    );
  };
  return (
    <form className="slip-form" onSubmit={submit} noValidate aria-label={say("web.slip.write")}>
      <div className="slip-row">
        <Field label={say("web.slip.name")} problem={choice === typed ? null : wanting(written)}>
          {(props) => (
            <select {...props} value={choice} onChange={(event) => setChoice(event.target.value)}>
              {table?.taxa.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
              <option value={typed}>{say("web.slip.name.typed")}</option>
            </select>
          )}
        </Field>
        {choice === typed ? (
          <Field label={say("web.slip.name.write")} problem={wanting(name)}>
            {(props) => <input {...props} value={name} maxLength={240} onChange={(event) => setName(event.target.value)} />}
          </Field>
        ) : null}
        <Field label={say("web.slip.qualifier")}>
          {(props) => (
            <select
              {...props}
              value={qualifier}
              onChange={(event) => setQualifier(qualifiers.find((one) => one === event.target.value) ?? "")}
            >
              {qualifiers.map((one) => (
                <option key={one} value={one}>
                  {say(`web.slip.qualifier.${one === "" ? "none" : one === "?" ? "question" : one === "cf." ? "cf" : "aff"}`)}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label={say("web.slip.role")}>
          {(props) => (
            <select {...props} value={role} onChange={(event) => setRole(roles.find((one) => one === event.target.value) ?? "det")}>
              {roles.map((one) => (
                <option key={one} value={one}>
                  {say(`web.slip.role.say.${one}`)}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label={say("web.slip.by")} problem={wanting(by)}>
          {(props) => (
            <>
              <input {...props} value={by} maxLength={120} list={`${id}-people`} onChange={(event) => setBy(event.target.value)} />
              <datalist id={`${id}-people`}>
                {book?.people.map((person) => (
                  <option key={person.id} value={person.initials}>
                    {person.role}
                  </option>
                ))}
              </datalist>
            </>
          )}
        </Field>
        <Field label={say("web.slip.on")}>
          {(props) => (
            <input {...props} type="date" value={on} onChange={(event) => setOn(event.target.value === "" ? on : event.target.value)} />
          )}
        </Field>
      </div>
      <Field
        label={say("web.slip.why")}
        hint={say("web.slip.why.hint")}
        problem={wanting(why) ?? (asksReason ? say("web.slip.own-reason") : null)}
      >
        {(props) => <textarea {...props} value={why} maxLength={1000} onChange={(event) => setWhy(event.target.value)} />}
      </Field>
      <ProblemNote problem={send.error} />
      <p className="buttons">
        <button type="submit" className="main" disabled={send.isPending}>
          {say("web.slip.keep")}
        </button>
        <button type="button" onClick={onDone}>
          {say("web.cancel")}
        </button>
      </p>
    </form>
  );
};
