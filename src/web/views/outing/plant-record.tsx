/** One plant on one outing: stages, then one character card after another, then what happened to it. */
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import type { PlantPage, SheetRow } from "../../../contract/index.js";
import type {
  Happening,
  HappeningId,
  IsoDate,
  Look,
  Outing,
  PlantId,
  Reading,
  Stage,
  StageId,
  StageRecordId,
} from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { ApiProblem, call, useApi } from "../../api.js";
import { Loading, mediumDate, ProblemNote } from "../../parts/index.js";
import { newId } from "../../work/new-id.js";
import { Choose, TextField } from "../../work/text-field.js";
import { askedFirst, type Keeper } from "../../work/use-keeper.js";
import { ReasonDialog } from "../sorting/sheet-dialogs.js";
import { CharacterCard } from "./character-card.js";
import { dueCharacters } from "./due-characters.js";
import { ProofPhotos } from "./proof-photos.js";
import { StageStrip, type StageAnswer } from "./stage-strip.js";

/** The usual reasons for leaving evidence out. Common practice, no source. */
const evidenceReasons = (): readonly string[] => [
  say("outing.reason.young"),
  say("outing.reason.shade"),
  say("outing.reason.damaged"),
  say("outing.reason.lens"),
  say("outing.reason.closed"),
  say("outing.reason.wilted"),
  say("outing.reason.other-stem"),
];

const happeningKinds = ["mown", "grazed", "flooded", "trampled", "died", "other"] as const;

const Happenings = ({
  plantId,
  date,
  happenings,
  keeper,
}: {
  readonly plantId: PlantId;
  readonly date: IsoDate;
  readonly happenings: readonly Happening[];
  readonly keeper: Keeper;
}) => {
  const [kind, setKind] = useState<Happening["kind"]>("mown");
  const [on, setOn] = useState<string>(date);
  const [ends, setEnds] = useState(false);
  const [note, setNote] = useState("");
  return (
    <details className="happenings">
      <summary>{say("outing.happenings", { count: happenings.length })}</summary>
      <ul className="work-list">
        {happenings.map((one) => (
          <li key={one.id}>
            <span>
              {mediumDate(one.date)}: {say(`outing.happened.${one.kind}`)}
              {one.note === "" ? "" : `, ${one.note}`}
              {one.endsYear ? `. ${say("outing.ends-year")}` : ""}
            </span>
            <button
              type="button"
              className="quiet"
              onClick={() =>
                void keeper.keep(say("outing.happening-removed"), async () =>
                  call("DELETE /api/happenings/{id}", { params: { id: one.id } }),
                )
              }
            >
              {say("work.remove")}
            </button>
          </li>
        ))}
      </ul>
      <form
        className="work-cols"
        onSubmit={(event) => {
          event.preventDefault();
          const id = newId<HappeningId>("happening");
          void keeper.keep(say(`outing.happened.${kind}`), async () =>
            call("PUT /api/happenings/{id}", { params: { id }, body: { id, plantId, date: on, kind, endsYear: ends, note } }),
          );
          setNote("");
        }}
      >
        <Choose
          label={say("outing.what-happened")}
          value={kind}
          options={happeningKinds.map((value) => ({ value, label: say(`outing.happened.${value}`) }))}
          onChange={setKind}
        />
        <TextField label={say("outing.on-day")} type="date" value={on} onChange={setOn} required />
        <TextField label={say("outing.note")} value={note} onChange={setNote} maxLength={400} />
        <label className="work-check work-wide">
          <input type="checkbox" checked={ends} onChange={(event) => setEnds(event.target.checked)} />
          {say("outing.ends-year-ask")}
        </label>
        <div>
          <button type="submit">{say("outing.note-happening")}</button>
        </div>
      </form>
    </details>
  );
};

export const PlantRecord = ({
  plantId,
  outing,
  sheets,
  keeper,
}: {
  readonly plantId: PlantId;
  readonly outing: Outing;
  readonly sheets: readonly SheetRow[];
  readonly keeper: Keeper;
}) => {
  const client = useQueryClient();
  const input = { params: { plantId } };
  const page = useApi("GET /api/plants/{plantId}", input);
  const book = useApi("GET /api/book", {}).data;
  const tableId = page.data?.plant.tableId;
  const table = useApi("GET /api/tables/{tableId}", { params: { tableId: tableId ?? "" } }, { enabled: tableId !== undefined });
  const [at, setAt] = useState<string | null>(null);
  const [leaving, setLeaving] = useState<Look | Reading | null>(null);
  const [onlyDue, setOnlyDue] = useState(true);
  const [whyNot, setWhyNot] = useState("");
  if (page.error !== null) return <ProblemNote problem={page.error} again={() => void page.refetch()} />;
  if (table.error !== null) return <ProblemNote problem={table.error} again={() => void table.refetch()} />;
  if (page.data === undefined || table.data === undefined || book === undefined) return <Loading />;

  const { data } = page;
  const here = <T extends { readonly outingId: string }>(all: readonly T[]): readonly T[] =>
    all.filter((one) => one.outingId === outing.id);
  const records = here(data.stageRecords);
  const stagesNow = records.flatMap(({ answer, stageId }) => (answer === "yes" && stageId !== null ? [stageId] : []));
  const asked = dueCharacters(table.data.characters, data, { stages: stagesNow, outingId: outing.id });
  const dueCount = asked.filter(({ due }) => due).length;
  const list = onlyDue ? asked.filter(({ due, today }) => due || today) : asked;
  const shown = list.length === 0 ? asked : list;
  const index = Math.max(
    0,
    shown.findIndex(({ character }) => character.id === at),
  );
  const current = shown[index];
  const stages = table.data.stages.length > 0 ? table.data.stages : book.stages;

  /** Shows a record at once, before the server has answered. */
  const patch = (change: (now: PlantPage) => PlantPage): void => {
    void client.cancelQueries({ queryKey: ["GET /api/plants/{plantId}", input] });
    client.setQueryData<PlantPage>(["GET /api/plants/{plantId}", input], (now) => (now === undefined ? now : change(now)));
  };
  const withRecord = <T extends { readonly id: string }>(all: readonly T[], record: T): T[] => [
    ...all.filter(({ id }) => id !== record.id),
    record,
  ];

  const answerStage = (stage: Stage, answer: StageAnswer): void => {
    const known = records.find(({ stageId }) => stageId === stage.id);
    const record = {
      ...(known ?? { sharePercent: null, why: "" }),
      id: known?.id ?? (`stage-${outing.id}-${plantId}-${stage.id}` as StageRecordId),
      plantId,
      outingId: outing.id,
      date: outing.date,
      stageId: stage.id as StageId | null,
      answer,
    };
    patch((now) => ({ ...now, stageRecords: withRecord(now.stageRecords, record) }));
    void keeper.keep(`${stage.name}: ${say(`outing.stage.${answer}`)}`, async () =>
      call("PUT /api/stage-records/{id}", { params: { id: record.id }, body: record }),
    );
  };
  const keepLook = (look: Look, what: string): void => {
    patch((now) => ({ ...now, looks: withRecord(now.looks, look) }));
    void keeper.keep(what, async () => call("PUT /api/looks/{id}", { params: { id: look.id }, body: look }));
  };
  const keepReading = async (reading: Reading, what: string, confirmed: boolean) => {
    let asks: readonly string[] = [];
    const kept = await keeper.keep(what, async () => {
      try {
        return await call("PUT /api/readings/{id}", { params: { id: reading.id }, body: { reading, confirmed } });
      } catch (error) {
        if (!(error instanceof ApiProblem) || (error.details.questions?.length ?? 0) === 0) throw error;
        asks = error.details.questions?.map(({ text }) => text) ?? [];
        return askedFirst;
      }
    });
    if (kept) patch((now) => ({ ...now, readings: withRecord(now.readings, reading) }));
    return { kept, asks };
  };
  const leaveOut = (record: Look | Reading, reason: string | null): void => {
    const name = asked.find(({ character }) => character.id === record.characterId)?.character.name ?? record.characterId;
    const what = reason === null ? say("outing.taken-in", { name }) : say("outing.left-out-what", { name, reason });
    if ("status" in record) keepLook({ ...record, leaveOut: reason }, what);
    else void keepReading({ ...record, leaveOut: reason }, what, true);
  };
  const next = (): void => setAt(shown[(index + 1) % Math.max(1, shown.length)]?.character.id ?? null);
  const viewName = (id: string | null): string => book.views.find((view) => view.id === id)?.name ?? say("sort.no-view");
  const unreached = records.find(({ stageId }) => stageId === null);

  return (
    <div className="record">
      {data.cautions.map((caution) => (
        <p key={caution} className="notice notice-caution">
          {caution}
        </p>
      ))}
      <details open={stagesNow.length === 0 && unreached === undefined}>
        <summary>
          {stagesNow.length === 0
            ? say("outing.stage-ask")
            : say("outing.stage-is", {
                stages: stages
                  .filter(({ id }) => stagesNow.includes(id))
                  .map(({ name }) => name)
                  .join(", "),
              })}
        </summary>
        <StageStrip stages={stages} records={records} onAnswer={answerStage} />
        <form
          className="work-row end"
          onSubmit={(event) => {
            event.preventDefault();
            if (whyNot.trim() === "") return;
            const id = unreached?.id ?? (`stage-${outing.id}-${plantId}-none` as StageRecordId);
            void keeper.keep(whyNot, async () =>
              call("PUT /api/stage-records/{id}", {
                params: { id },
                body: {
                  id,
                  plantId,
                  outingId: outing.id,
                  date: outing.date,
                  stageId: null,
                  answer: "not-looked",
                  sharePercent: null,
                  why: whyNot.trim(),
                },
              }),
            );
          }}
        >
          <TextField
            label={say("outing.not-reached")}
            help={unreached === undefined ? undefined : unreached.why}
            value={whyNot}
            onChange={setWhyNot}
            maxLength={400}
          />
          <button type="submit">{say("work.keep")}</button>
        </form>
      </details>
      <div className="record-body">
        <nav className="record-list" aria-label={say("outing.characters")}>
          <p className="side">{say("outing.due", { count: dueCount, total: asked.length })}</p>
          <label className="work-check">
            <input type="checkbox" checked={onlyDue} onChange={(event) => setOnlyDue(event.target.checked)} />
            {say("outing.only-due")}
          </label>
          <ol>
            {shown.map(({ character, due, today }, i) => (
              <li key={character.id}>
                <button type="button" aria-current={i === index ? "true" : undefined} onClick={() => setAt(character.id)}>
                  <span>
                    <span className="part">{character.part}</span> {character.name}
                  </span>
                  <span className="side">{today ? say("outing.today") : due ? say("outing.is-due") : ""}</span>
                </button>
              </li>
            ))}
          </ol>
        </nav>
        {current !== undefined && (
          <div>
            <div className="record-steps">
              <button type="button" onClick={() => setAt(shown[(index - 1 + shown.length) % shown.length]?.character.id ?? null)}>
                {say("outing.previous")}
              </button>
              <span className="work-num">{say("outing.k-of-n", { k: index + 1, n: shown.length })}</span>
              <button type="button" onClick={next}>
                {say("outing.next")}
              </button>
            </div>
            <CharacterCard
              key={`${current.character.id} ${outing.id}`}
              character={current.character}
              around={{ plantId, outingId: outing.id, date: outing.date, table: table.data, stages, people: book.people }}
              look={here(data.looks).find(({ characterId }) => characterId === current.character.id)}
              readings={here(data.readings).filter(({ characterId }) => characterId === current.character.id)}
              onLook={keepLook}
              onReading={keepReading}
              onNext={next}
              onLeaveOut={(record) => (record.leaveOut === null ? setLeaving(record) : leaveOut(record, null))}
              proof={(tied, onTie) => <ProofPhotos sheets={sheets} tied={tied} viewName={viewName} onTie={onTie} />}
            />
          </div>
        )}
      </div>
      <Happenings plantId={plantId} date={outing.date} happenings={data.happenings} keeper={keeper} />
      {leaving !== null && (
        <ReasonDialog
          count={1}
          title={say("outing.reason-title")}
          reasons={evidenceReasons()}
          onClose={() => setLeaving(null)}
          onReason={(reason) => {
            leaveOut(leaving, reason);
            setLeaving(null);
          }}
        />
      )}
    </div>
  );
};
