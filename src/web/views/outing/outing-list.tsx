/** All outings, newest first, and a new one. */
import { useState } from "react";
import { useLocation } from "wouter";
import { say } from "../../../words/index.js";
import { useApi, useSend } from "../../api.js";
import { EmptyState, Loading, longDate, ProblemNote, To, useTitle } from "../../parts/index.js";
import { OutingForm } from "./outing-form.js";

export const OutingList = () => {
  useTitle(say("outing.title"));
  const [, go] = useLocation();
  const outings = useApi("GET /api/outings", {});
  const book = useApi("GET /api/book", {}).data;
  const keep = useSend("PUT /api/outings/{id}");
  const [isNew, setNew] = useState(false);
  if (outings.error !== null) return <ProblemNote problem={outings.error} again={() => void outings.refetch()} />;
  if (outings.data === undefined || book === undefined) return <Loading />;
  const form = (
    <section aria-labelledby="new-title">
      <h2 id="new-title">{say("outing.new")}</h2>
      <OutingForm
        people={book.people}
        word={say("outing.begin")}
        onKeep={(outing) => keep.mutate({ params: { id: outing.id }, body: outing }, { onSuccess: () => go(`/outing/${outing.id}`) })}
      />
      <ProblemNote problem={keep.error} />
    </section>
  );
  if (outings.data.outings.length === 0 && !isNew)
    return (
      <div className="work">
        <EmptyState title={say("outing.empty-title")} text={say("outing.empty-text")}>
          <button type="button" className="main" onClick={() => setNew(true)}>
            {say("outing.new")}
          </button>
        </EmptyState>
      </div>
    );
  return (
    <div className="work">
      <header>
        <h1>{say("outing.title")}</h1>
        <p>{say("outing.lead")}</p>
      </header>
      {isNew ? (
        form
      ) : (
        <p>
          <button type="button" className="main" onClick={() => setNew(true)}>
            {say("outing.new")}
          </button>
        </p>
      )}
      <ul className="work-list outings">
        {outings.data.outings.map((outing) => (
          <li key={outing.id}>
            <span>
              <To href={`/outing/${outing.id}`}>{longDate(outing.date)}</To>
              {outing.goal === "" ? "" : ` · ${outing.goal}`}
            </span>
            <span className="side work-num">
              {say("outing.counts", { stops: outing.stops.length, photos: outing.photoCount, looks: outing.lookCount })}
            </span>
            <span className="side">{[outing.people.join(", "), outing.weather].filter((text) => text !== "").join(" · ")}</span>
          </li>
        ))}
      </ul>
    </div>
  );
};
