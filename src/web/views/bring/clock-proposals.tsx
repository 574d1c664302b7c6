/** Camera clocks that run off against the walk, with the numbers before and after; nothing is shifted unasked. */
import { useState } from "react";
import type { ClockProposal } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { useApi, useSend } from "../../api.js";
import { ProblemNote, shortDate } from "../../parts/index.js";
import { Says } from "../../work/says.js";
import { durationInWords } from "./duration.js";

const Share = ({ label, count, total }: { readonly label: string; readonly count: number; readonly total: number }) => (
  <div className="clock-share">
    <span className="work-label">{label}</span>
    <div className="work-bar">
      <i style={{ width: `${total === 0 ? 0 : (100 * count) / total}%` }} />
    </div>
    <span className="work-num">{say("clock.on-stops", { count, total })}</span>
  </div>
);

const Proposal = ({ proposal, onSaid }: { readonly proposal: ClockProposal; readonly onSaid: (text: string) => void }) => {
  const shift = useSend("POST /api/clock");
  const [left, setLeft] = useState(false);
  if (left) return null;
  return (
    <div className="clock-card">
      <p className="clock-sentence">{proposal.trustworthy ? say("clock.question", { sentence: proposal.sentence }) : proposal.sentence}</p>
      <p className="side">{say("clock.days", { count: proposal.dates.length, dates: proposal.dates.map(shortDate).join(", ") })}</p>
      <Share label={say("clock.before")} count={proposal.onStopsBefore} total={proposal.photoCount} />
      <Share label={say("clock.after")} count={proposal.onStopsAfter} total={proposal.photoCount} />
      {proposal.trustworthy ? (
        <div className="work-row">
          <button
            type="button"
            className="main"
            disabled={shift.isPending}
            onClick={() => {
              // The proposal is gone when the answer has come, so the answer is awaited here and not by the card's hook.
              void shift.mutateAsync({ body: { outingIds: proposal.outingIds, shiftS: proposal.shiftS } }).then(
                ({ placed, notSure }) => onSaid(say("clock.applied", { placed, notSure })),
                () => undefined,
              );
            }}
          >
            {say("clock.apply", { amount: `${proposal.shiftS < 0 ? "\u2212" : "+"}${durationInWords(proposal.shiftS)}` })}
          </button>
          <button
            type="button"
            onClick={() => {
              setLeft(true);
              onSaid(say("clock.left"));
            }}
          >
            {say("clock.leave")}
          </button>
        </div>
      ) : (
        <p className="side">{say("clock.thin")}</p>
      )}
      <ProblemNote problem={shift.error} />
    </div>
  );
};

/** All proposals there are; `quiet` says nothing when there is none. */
export const ClockProposals = ({ quiet = false }: { readonly quiet?: boolean }) => {
  const { data } = useApi("GET /api/clock", {});
  const [said, setSaid] = useState("");
  const proposals = data?.proposals ?? [];
  if (proposals.length === 0 && said === "" && (quiet || data === undefined)) return null;
  return (
    <section aria-labelledby="clock-title" className="clock">
      <h2 id="clock-title">{say("clock.title")}</h2>
      {proposals.length === 0 && said === "" && <p className="side">{say("clock.none")}</p>}
      {proposals.map((proposal) => (
        <Proposal key={`${proposal.outingIds.join()}${proposal.shiftS}`} proposal={proposal} onSaid={setSaid} />
      ))}
      <Says>{said}</Says>
    </section>
  );
};
