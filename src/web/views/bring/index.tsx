/**
 * Bring photographs: drop, pick, or name a folder of this machine. While they arrive only counts are drawn; what was
 * refused is listed by name when there is something to list.
 */
import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { BroughtFile, Job } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { call, useApi, useSend } from "../../api.js";
import { ProblemNote, To, useTitle } from "../../parts/index.js";
import { Says } from "../../work/says.js";
import { TextField } from "../../work/text-field.js";
import "../../work/work.css";
import "./bring.css";
import { ClockProposals } from "./clock-proposals.js";
import { filesOfDrop, filesOfPicker } from "./collect-files.js";
import { uploadQueue, type SendFile, type UploadCounts } from "./upload-queue.js";

const send: SendFile = async (file) => call("PUT /api/bring/{fileName}", { params: { fileName: file.name }, body: file });

/** A folder picker is an attribute the types of React do not know. */
const forFolders = { webkitdirectory: "" };

const Picker = ({
  folder,
  label,
  onFiles,
}: {
  readonly folder: boolean;
  readonly label: string;
  readonly onFiles: (list: FileList) => void;
}) => {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={folder ? "" : "main"} onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label={label}
        {...(folder ? forFolders : {})}
        onChange={(event) => {
          if (event.target.files !== null && event.target.files.length > 0) onFiles(event.target.files);
        }}
      />
    </>
  );
};

const Refusals = ({ files, total }: { readonly files: readonly BroughtFile[]; readonly total: number }) =>
  files.length === 0 ? null : (
    <>
      <p>{say("bring.rest")}</p>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a scrolling box must be reachable by keyboard */}
      <div className="bring-refused" tabIndex={0} role="region" aria-label={say("bring.refused", { count: total })}>
        <ul className="work-list">
          {files.map((file, i) => (
            // oxlint-disable-next-line react/no-array-index-key -- two refused files may bear one name
            <li key={`${file.fileName} ${i}`}>
              <b>{file.fileName}</b>
              <span>{file.text}</span>
            </li>
          ))}
        </ul>
        {total > files.length && <p>{say("bring.more-refused", { count: total - files.length })}</p>}
      </div>
    </>
  );

const Counts = ({ counts }: { readonly counts: Omit<UploadCounts, "found"> }) => (
  <ul className="bring-counts">
    <li>{say("bring.new", { count: counts.fresh })}</li>
    {counts.alreadyHere > 0 && <li>{say("bring.already", { count: counts.alreadyHere })}</li>}
    {counts.refused > 0 && <li>{say("bring.refused", { count: counts.refused })}</li>}
    {counts.failed > 0 && <li>{say("bring.failed", { count: counts.failed })}</li>}
    {counts.passedOver > 0 && <li className="side">{say("bring.passed", { count: counts.passedOver })}</li>}
  </ul>
);

const useQueue = () => useSyncExternalStore(uploadQueue.subscribe, uploadQueue.state);

const Arriving = () => {
  const state = useQueue();
  const { counts } = state;
  const done = counts.fresh + counts.alreadyHere + counts.refused + counts.failed;
  const running = state.phase === "running" || state.phase === "stopping";
  return (
    <section aria-label={say("bring.title")}>
      {running ? (
        <>
          <p className="work-num">{say("bring.running", { done, found: counts.found, allFound: String(state.allFound) })}</p>
          <div
            className="work-bar unknown"
            role="progressbar"
            aria-label={say("bring.title")}
            aria-valuetext={say("bring.running", { done, found: counts.found, allFound: String(state.allFound) })}
          >
            <i />
          </div>
          <p className="side">{state.now === "" ? "" : say("bring.now", { name: state.now })}</p>
          <button type="button" disabled={state.phase === "stopping"} onClick={uploadQueue.stop}>
            {say(state.phase === "stopping" ? "bring.stopping" : "bring.stop")}
          </button>
        </>
      ) : (
        <p>
          {state.phase === "stopped"
            ? say("bring.stopped")
            : state.phase === "broken"
              ? say("bring.broken", { reason: state.reason })
              : say("bring.done")}
        </p>
      )}
      <Counts counts={counts} />
      {!running && <Refusals files={state.refusals} total={counts.refused} />}
    </section>
  );
};

/** The outcome of a folder the server read itself. */
const FolderOutcome = ({ job }: { readonly job: Job }) => {
  const over = job.state !== "running";
  const { data } = useApi("GET /api/bring/outcomes", {}, { enabled: over });
  const files = data?.files ?? [];
  const of = (outcome: BroughtFile["outcome"]) => files.filter((file) => file.outcome === outcome);
  const stop = useSend("DELETE /api/jobs/{jobId}");
  return (
    <section aria-label={job.label}>
      <p className="work-num">{over ? job.message : say("bring.running", { done: job.done, found: job.total, allFound: "true" })}</p>
      {!over && (
        <>
          <div
            className="work-bar"
            role="progressbar"
            aria-label={job.label}
            aria-valuenow={job.done}
            aria-valuemin={0}
            aria-valuemax={Math.max(1, job.total)}
          >
            <i style={{ width: `${job.total === 0 ? 0 : (100 * job.done) / job.total}%` }} />
          </div>
          <p />
          <button type="button" onClick={() => stop.mutate({ params: { jobId: job.id } })}>
            {say("bring.stop")}
          </button>
        </>
      )}
      {over && data !== undefined && (
        <>
          <Counts
            counts={{
              fresh: of("new").length,
              alreadyHere: of("already-here").length,
              refused: of("refused").length,
              failed: 0,
              passedOver: 0,
            }}
          />
          <Refusals files={of("refused").slice(0, 500)} total={of("refused").length} />
        </>
      )}
    </section>
  );
};

const FolderHere = () => {
  const client = useQueryClient();
  const [folder, setFolder] = useState("");
  const begin = useSend("POST /api/bring/folder");
  const jobId = begin.data?.id;
  const jobs = useApi("GET /api/jobs", {}, { enabled: jobId !== undefined, everyMs: 700 });
  const job = jobs.data?.jobs.find(({ id }) => id === jobId) ?? begin.data;
  const over = job !== undefined && job.state !== "running";
  useEffect(() => {
    if (over) void client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== "GET /api/jobs" });
  }, [over, client]);
  return (
    <section aria-labelledby="here-title">
      <h2 id="here-title">{say("bring.here")}</h2>
      <form
        className="work-row end"
        onSubmit={(event) => {
          event.preventDefault();
          if (folder.trim() !== "") begin.mutate({ body: { folder: folder.trim() } });
        }}
      >
        <div style={{ flex: "1 1 24rem", maxWidth: "44rem" }}>
          <TextField
            label={say("bring.here-path")}
            help={say("bring.here-help")}
            placeholder={say("bring.here-example")}
            value={folder}
            onChange={setFolder}
          />
        </div>
        <button type="submit" disabled={begin.isPending || job?.state === "running"}>
          {say("bring.here-go")}
        </button>
      </form>
      <ProblemNote problem={begin.error} />
      {job !== undefined && <FolderOutcome job={job} />}
    </section>
  );
};

export const Place = () => {
  useTitle(say("bring.title"));
  const client = useQueryClient();
  const state = useQueue();
  const [over, setOver] = useState(false);
  const ended = state.phase === "done" || state.phase === "stopped" || state.phase === "broken";
  useEffect(() => {
    if (ended) void client.invalidateQueries();
  }, [ended, client]);
  return (
    <div className="work">
      <header>
        <h1>{say("bring.title")}</h1>
        <p>{say("bring.lead")}</p>
      </header>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- dropping is an extra: the buttons inside do the same */}
      <div
        className={over ? "bring-drop over" : "bring-drop"}
        role="group"
        aria-label={say("bring.drop")}
        onDragOver={(event) => {
          event.preventDefault();
          event.dataTransfer.dropEffect = "copy";
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          uploadQueue.add(filesOfDrop(event.dataTransfer), send);
        }}
      >
        <p className="big">{say(over ? "bring.drop-now" : "bring.drop")}</p>
        <div className="work-row">
          <Picker folder={false} label={say("bring.files")} onFiles={(list) => uploadQueue.add(filesOfPicker(list), send)} />
          <Picker folder label={say("bring.folder")} onFiles={(list) => uploadQueue.add(filesOfPicker(list), send)} />
        </div>
        <p className="side">{say("bring.kinds")}</p>
      </div>
      <Says>{state.phase === "idle" ? "" : say("bring.kept")}</Says>
      {state.phase !== "idle" && <Arriving />}
      <FolderHere />
      <ClockProposals quiet={!ended} />
      <p>
        <To href="/sorting" className="button main">
          {say(ended ? "bring.to-sorting" : "bring.to-sorting-now")}
        </To>
      </p>
    </div>
  );
};
