/** Brings a folder as a long piece of work, with progress, and remembers what became of its files. */
import { stat } from "node:fs/promises";
import { basename } from "node:path";
import type { BroughtFile, Job } from "../contract/index.js";
import { say } from "../words/index.js";
import { Refused } from "./app-error.js";
import { bringFolder } from "./bring-folder.js";
import type { Jobs } from "./jobs.js";
import type { OpenBench } from "./open-workbench.js";

/**
 * Starts to bring a folder; the reply is the job as it begins.
 * @throws {Refused} when there is no such folder: known before anything starts.
 */
export const bringFolderJob = async (bench: OpenBench, jobs: Jobs, folder: string): Promise<Job> => {
  const isFolder = await stat(folder).then(
    (facts) => facts.isDirectory(),
    () => false,
  );
  if (!isFolder)
    throw new Refused({ code: "folder-unreadable", detail: say("refused.folder", { folder }), kept: say("refused.kept") }, [
      { pointer: "/folder", value: folder.slice(0, 80), detail: say("refused.folder", { folder }) },
    ]);
  const { job } = jobs.start({
    kind: "bring",
    label: say("job.bring", { folder: basename(folder) || folder }),
    run: ({ signal, progress }) =>
      bringFolder(folder, {
        store: bench.workbench.store,
        workers: bench.workers(),
        now: bench.now,
        signal,
        // How many files there are is not known before the last folder is read.
        progress: (done) => progress(done, 0),
      }),
    say: ({ fresh, here, refused }) => say("job.bring-done", { fresh, here, refused }),
  });
  return job;
};

/** What became of the files of the last folder that was brought. */
export const lastBrought = (jobs: Jobs): readonly BroughtFile[] =>
  (jobs.lastResult("bring") as { readonly files: readonly BroughtFile[] } | undefined)?.files ?? [];
