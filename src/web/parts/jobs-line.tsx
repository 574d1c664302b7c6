import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import type { Job } from "../../contract/index.js";
import { useApi, useSend } from "../api.js";
import { say } from "../../words/index.js";

const isRunning = (job: Job): boolean => job.state === "running";

/** Long work on the server: how far it is, and a button that stops it. Nothing is drawn when nothing runs. */
export const JobsLine = () => {
  const client = useQueryClient();
  const { data } = useApi("GET /api/jobs", {}, { everyMs: (reply) => (reply?.jobs.some(isRunning) === true ? 900 : false) });
  const stop = useSend("DELETE /api/jobs/{jobId}");
  const running = data?.jobs.filter(isRunning) ?? [];
  const before = useRef(0);
  useEffect(() => {
    // Work that ended has changed the book: read it anew.
    if (running.length < before.current) void client.invalidateQueries();
    before.current = running.length;
  }, [client, running.length]);
  if (running.length === 0) return null;
  return (
    <section className="jobs" aria-label={say("web.jobs.label")}>
      {running.map((job) => (
        <div className="job" key={job.id}>
          <span>{job.label}</span>
          <progress {...(job.total > 0 ? { value: job.done, max: job.total } : {})} aria-label={job.label} />
          <span className="num">{job.total > 0 ? say("web.jobs.far", { done: job.done, total: job.total }) : job.message}</span>
          <button
            type="button"
            className="quiet"
            aria-label={say("web.jobs.stop.what", { label: job.label })}
            disabled={stop.isPending}
            onClick={() => stop.mutate({ params: { jobId: job.id } })}
          >
            {say("web.jobs.stop")}
          </button>
        </div>
      ))}
    </section>
  );
};
