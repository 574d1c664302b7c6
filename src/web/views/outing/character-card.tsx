/**
 * One character at a plant: the question, its states as large buttons, and three answers that are always there: looked
 * and not there, cannot tell, skip. Every tap is kept at once; what is under it (lens, number, how sure) goes with it.
 */
import type {
  Character,
  Look,
  LookStatus,
  OutingId,
  Person,
  PhotoId,
  PlantId,
  Reading,
  ReferenceTable,
  Stage,
  StateId,
  IsoDate,
  LookId,
  ReadingId,
} from "../../../engine/index.js";
import { useState } from "react";
import { say } from "../../../words/index.js";
import { TextField, Choose } from "../../work/text-field.js";
import { newId } from "../../work/new-id.js";
import { ReadingsEntry, type KeptSeries } from "./readings-entry.js";
import { StateSketch } from "../../work/state-sketch.js";

export interface Surroundings {
  readonly plantId: PlantId;
  readonly outingId: OutingId;
  readonly date: IsoDate;
  readonly table: ReferenceTable;
  readonly stages: readonly Stage[];
  readonly people: readonly Person[];
}

export interface CharacterCardProps {
  readonly character: Character;
  readonly around: Surroundings;
  readonly look: Look | undefined;
  readonly readings: readonly Reading[];
  readonly onLook: (look: Look, what: string) => void;
  readonly onReading: (
    reading: Reading,
    what: string,
    confirmed: boolean,
  ) => Promise<{ readonly kept: boolean; readonly asks: readonly string[] }>;
  readonly onNext: () => void;
  readonly onLeaveOut: (what: Look | Reading) => void;
  readonly proof: (tied: readonly PhotoId[], onTie: (ids: PhotoId[]) => void) => React.ReactNode;
}

const lenses = ["", "x10", "x15", "x20", "x30"] as const;
const lastBy = { value: "" };

const stateNames = (character: Character, ids: readonly StateId[]): string =>
  character.answer.kind === "states"
    ? ids
        .map((id) => (character.answer.kind === "states" ? (character.answer.states.find((state) => state.id === id)?.name ?? id) : id))
        .join(", ")
    : "";

/** A look in a few words: "leaf joint: clasping". */
export const lookInWords = (character: Character | undefined, look: Pick<Look, "status" | "states" | "characterId">): string =>
  `${character?.name ?? look.characterId}: ${look.status === "seen" && character !== undefined ? stateNames(character, look.states) : say(`outing.status.${look.status}`)}`;

export const CharacterCard = ({ character, around, look, readings, onLook, onReading, onNext, onLeaveOut, proof }: CharacterCardProps) => {
  const [several, setSeveral] = useState((look?.states.length ?? 0) > 1);
  const [fresh] = useState(() => newId<LookId>("look"));
  const [hand, setHand] = useState({
    lens: look?.lens ?? (character.tool.startsWith("x") ? character.tool : ""),
    n: look?.n === null || look === undefined ? "" : String(look.n),
    sure: look?.sure ?? ("sure" as Look["sure"]),
    by: look?.by ?? lastBy.value,
    note: look?.note ?? "",
  });
  const together = around.table.characters.filter((one) => one.group === character.group && one.id !== character.id);

  const build = (status: LookStatus, states: readonly StateId[], more: Partial<Look> = {}): Look => ({
    id: look?.id ?? fresh,
    plantId: around.plantId,
    outingId: around.outingId,
    characterId: character.id,
    date: around.date,
    status,
    states: [...states],
    sure: hand.sure,
    lens: hand.lens === "" ? null : hand.lens,
    n: /^[1-9]\d*$/.test(hand.n.trim()) ? Number(hand.n) : null,
    by: hand.by,
    note: hand.note,
    leaveOut: look?.leaveOut ?? null,
    photoIds: look?.photoIds ?? [],
    ...more,
  });
  const send = (record: Look): void => onLook(record, lookInWords(character, record));
  const tapState = (id: StateId): void => {
    const before = look?.status === "seen" ? look.states : [];
    const states = several ? (before.includes(id) ? before.filter((one) => one !== id) : [...before, id]) : [id];
    if (states.length > 0) send(build("seen", states));
  };
  /** Changes what goes with the look; kept at once when there is one. */
  const withHand = (change: Partial<typeof hand>, later = false): void => {
    const next = { ...hand, ...change };
    setHand(next);
    lastBy.value = next.by;
    if (look !== undefined && !later) {
      send(
        build(look.status, look.states, {
          sure: next.sure,
          lens: next.lens === "" ? null : next.lens,
          n: /^[1-9]\d*$/.test(next.n.trim()) ? Number(next.n) : null,
          by: next.by,
          note: next.note,
        }),
      );
    }
  };
  const keepSeries = async (series: KeptSeries) =>
    onReading(
      {
        id: newId<ReadingId>("reading"),
        plantId: around.plantId,
        outingId: around.outingId,
        characterId: character.id,
        date: around.date,
        unit: character.answer.kind === "measure" ? character.answer.unit : "",
        values: [...series.values],
        stems: series.stems,
        method: character.tool === "ruler or photo" ? "ruler" : character.tool,
        plusMinus: null,
        by: hand.by,
        note: hand.note,
        leaveOut: null,
        photoIds: [],
      },
      `${character.name}: ${series.values.join(" ")}`,
      series.confirmed,
    );

  return (
    <article className="card" aria-labelledby={`card-${character.id}`}>
      <p className="part">{character.part}</p>
      <h2 id={`card-${character.id}`}>{say("outing.question", { name: character.name })}</h2>
      <p className="side">
        {say("outing.with", { tool: character.tool === "eye" ? say("outing.no-tool") : character.tool })}
        {together.length > 0 && ` · ${say("outing.together", { names: together.map(({ name }) => name).join(", ") })}`}
      </p>
      {character.disturbs && <p className="notice">{say("outing.disturbs")}</p>}
      {character.errors.length > 0 && (
        <ul className="card-errors">
          {character.errors.map((error) => (
            <li key={error}>{error}</li>
          ))}
        </ul>
      )}
      {character.answer.kind === "states" ? (
        <div className="card-states" role="group" aria-label={character.name}>
          {character.answer.states.map((state) => (
            <button
              type="button"
              key={state.id}
              className="opt"
              aria-pressed={look?.status === "seen" && look.states.includes(state.id)}
              onClick={() => tapState(state.id)}
            >
              <StateSketch characterId={character.id} stateId={state.id} />
              <span>
                {state.name}
                {state.plain !== "" && state.plain !== state.name && <small>{state.plain}</small>}
              </span>
            </button>
          ))}
        </div>
      ) : (
        <ReadingsEntry character={character} table={around.table} kept={readings} onKeep={keepSeries} />
      )}
      {readings.map((reading) => (
        <div key={reading.id} className={reading.leaveOut === null ? "kept-one" : "kept-one out"}>
          <span className="work-num">
            {reading.values.join("  ")} {reading.unit}
            {reading.leaveOut !== null && <em> {say("outing.left-out", { reason: reading.leaveOut })}</em>}
          </span>
          <button type="button" className="quiet" onClick={() => onLeaveOut(reading)}>
            {say(reading.leaveOut === null ? "work.leave-out" : "work.take-in")}
          </button>
        </div>
      ))}
      <div className="card-always">
        {character.answer.kind === "states" && (
          <>
            <button type="button" aria-pressed={look?.status === "not-there"} onClick={() => send(build("not-there", []))}>
              {say("outing.status.not-there")}
            </button>
            <button type="button" aria-pressed={look?.status === "could-not-tell"} onClick={() => send(build("could-not-tell", []))}>
              {say("outing.status.could-not-tell")}
            </button>
          </>
        )}
        <button
          type="button"
          onClick={() => {
            if (look !== undefined && look.status === "could-not-tell") send(build("not-looked", []));
            onNext();
          }}
        >
          {say(look === undefined && readings.length === 0 ? "outing.skip" : "outing.next")}
        </button>
      </div>
      {look?.status === "not-there" && look.n === null && <p className="notice">{say("outing.need-n")}</p>}
      {look !== undefined && (
        <div className={look.leaveOut === null ? "kept-one" : "kept-one out"}>
          <span>
            {lookInWords(character, look)}
            {look.leaveOut !== null && <em> {say("outing.left-out", { reason: look.leaveOut })}</em>}
          </span>
          <button type="button" className="quiet" onClick={() => onLeaveOut(look)}>
            {say(look.leaveOut === null ? "work.leave-out" : "work.take-in")}
          </button>
        </div>
      )}
      <details className="card-more" open={character.answer.kind === "states"}>
        <summary>{say("outing.more")}</summary>
        <div className="card-hand">
          <Choose
            label={say("outing.lens")}
            value={hand.lens}
            options={[...new Set([...lenses, hand.lens])].map((value) => ({
              value,
              label: value === "" ? say("outing.lens-none") : value,
            }))}
            onChange={(lens) => withHand({ lens })}
          />
          {character.answer.kind === "states" && (
            <TextField
              label={say("outing.n")}
              inputMode="numeric"
              value={hand.n}
              onChange={(n) => withHand({ n }, true)}
              onBlur={() => withHand({})}
            />
          )}
          {character.answer.kind === "states" && (
            <Choose
              label={say("outing.sure")}
              value={hand.sure}
              options={(["sure", "fairly", "between-two"] as const).map((value) => ({ value, label: say(`outing.sure.${value}`) }))}
              onChange={(sure) => {
                if (sure === "between-two") setSeveral(true);
                withHand({ sure });
              }}
            />
          )}
          <Choose
            label={say("outing.by")}
            value={hand.by}
            options={["", ...new Set([...around.people.map(({ initials }) => initials), hand.by].filter((one) => one !== ""))].map(
              (value) => ({ value, label: value === "" ? "\u2013" : value }),
            )}
            onChange={(by) => withHand({ by })}
          />
        </div>
        <TextField
          label={say("outing.note")}
          rows={2}
          value={hand.note}
          onChange={(note) => withHand({ note }, true)}
          onBlur={() => withHand({})}
        />
        {character.answer.kind === "states" && character.answer.states.length > 1 && (
          <label className="work-check">
            <input type="checkbox" checked={several} onChange={(event) => setSeveral(event.target.checked)} />
            {say("outing.several")}
          </label>
        )}
      </details>
      {look !== undefined && proof(look.photoIds, (photoIds) => send(build(look.status, look.states, { photoIds })))}
    </article>
  );
};
