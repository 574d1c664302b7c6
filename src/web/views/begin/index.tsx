/** Begin a book: what it needs, in an order that makes sense, each part open at any time; nothing is forced. */
import { useState } from "react";
import type { ReactNode } from "react";
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";
import { Loading, ProblemNote, To, useTitle } from "../../parts/index.js";
import { BookEditor } from "../../work/book-editor.js";
import { KeeperFoot } from "../../work/keeper-foot.js";
import { PeopleEditor } from "../../work/people-editor.js";
import { PermissionsEditor } from "../../work/permissions-editor.js";
import { PlantsEditor } from "../../work/plants-editor.js";
import { SpotsEditor } from "../../work/spots-editor.js";
import { TablesEditor } from "../../work/tables-editor.js";
import { useKeeper } from "../../work/use-keeper.js";
import "../../work/work.css";
import "./begin.css";

/** One of the five; it opens when its turn has come and stays as it is when it is done, since one may not be through with it. */
const Step = ({ opens, children }: { readonly opens: boolean; readonly children: ReactNode }) => {
  const [open, setOpen] = useState(opens);
  const [last, setLast] = useState(opens);
  if (opens !== last) {
    setLast(opens);
    if (opens) setOpen(true);
  }
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      {children}
    </details>
  );
};

export const Place = () => {
  useTitle(say("begin.title"));
  const book = useApi("GET /api/book", {});
  const places = useApi("GET /api/places", {});
  const plants = useApi("GET /api/plants", {});
  const tables = useApi("GET /api/tables", {});
  const keeper = useKeeper();
  const error = book.error ?? places.error ?? plants.error ?? tables.error;
  if (error !== null) return <ProblemNote problem={error} />;
  if (book.data === undefined || places.data === undefined || plants.data === undefined || tables.data === undefined) return <Loading />;
  const { info, counts, people, upTo, folder } = book.data;
  const { spots, permissions } = places.data;
  const steps = [
    { key: "book", done: true, body: <BookEditor key={info.title + info.zone} info={info} keeper={keeper} /> },
    { key: "people", done: people.length > 0, body: <PeopleEditor people={people} keeper={keeper} /> },
    {
      key: "spots",
      done: spots.length > 0,
      body: (
        <>
          <SpotsEditor spots={spots} zone={info.zone} keeper={keeper} />
          <h3>{say("permission.title")}</h3>
          <p className="side">{say("permission.lead")}</p>
          <PermissionsEditor permissions={permissions} spots={spots} day={upTo} keeper={keeper} />
        </>
      ),
    },
    { key: "table", done: tables.data.tables.length > 0, body: <TablesEditor keeper={keeper} /> },
    {
      key: "plants",
      done: counts.plants > 0,
      body: (
        <PlantsEditor plants={plants.data.plants.map(({ plant }) => plant)} spots={spots} tables={tables.data.tables} keeper={keeper} />
      ),
    },
  ] as const;
  const firstOpen = steps.find(({ done }) => !done)?.key;
  return (
    <div className="work">
      <header>
        <h1>{say("begin.title")}</h1>
        <p>{say("begin.lead")}</p>
      </header>
      <ol className="begin">
        {steps.map(({ key, done, body }) => (
          <li key={key}>
            <Step opens={key === firstOpen}>
              <summary>
                <span className="begin-name">{say(`begin.${key}`)}</span>{" "}
                <span className="side">{done ? `✓ ${say("begin.there")}` : say("begin.wanting")}</span>
              </summary>
              <p className="begin-why">{say(`begin.${key}-why`)}</p>
              {body}
            </Step>
          </li>
        ))}
      </ol>
      <section aria-labelledby="then-title">
        <h2 id="then-title">{say("begin.then")}</h2>
        <p>{say("begin.then-text")}</p>
        <div className="work-row">
          <To href="/bring" className="button main">
            {say("bring.title")}
          </To>
          <To href="/outing" className="button">
            {say("outing.new")}
          </To>
          <To href="/plants" className="button">
            {say("begin.to-plants")}
          </To>
        </div>
      </section>
      <section aria-labelledby="another-title">
        <h2 id="another-title">{say("begin.another")}</h2>
        <p>{say("begin.another-text", { folder })}</p>
        <p>
          <code>npm start -- --book ~/books/my-next-year</code>
        </p>
      </section>
      <KeeperFoot keeper={keeper} />
    </div>
  );
};
