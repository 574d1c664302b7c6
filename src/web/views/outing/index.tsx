/** Record an outing: the list of outings, and one outing with its plants. */
import { useRoute, useSearchParams } from "wouter";
import type { PlantId } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { call, useApi } from "../../api.js";
import { Loading, longDate, ProblemNote, To, useTitle } from "../../parts/index.js";
import { KeeperFoot } from "../../work/keeper-foot.js";
import { useKeeper } from "../../work/use-keeper.js";
import "../../work/work.css";
import { OutingForm } from "./outing-form.js";
import { OutingList } from "./outing-list.js";
import "./outing.css";
import { PlantRecord } from "./plant-record.js";
import { StopLine } from "./stop-line.js";

const OneOuting = ({ outingId }: { readonly outingId: string }) => {
  const outings = useApi("GET /api/outings", {});
  const plants = useApi("GET /api/plants", {});
  const book = useApi("GET /api/book", {});
  const sheets = useApi("GET /api/sheets", {});
  const [search, setSearch] = useSearchParams();
  const keeper = useKeeper();
  const outing = outings.data?.outings.find(({ id }) => id === outingId);
  useTitle(outing === undefined ? say("outing.title") : longDate(outing.date));
  if (outings.error !== null) return <ProblemNote problem={outings.error} again={() => void outings.refetch()} />;
  if (outings.data === undefined || plants.data === undefined || book.data === undefined) return <Loading />;
  if (outing === undefined)
    return (
      <div className="work">
        <p>{say("outing.gone")}</p>
        <To href="/outing">{say("outing.title")}</To>
      </div>
    );
  const { stops, photoCount, lookCount, ...record } = outing;
  const chosen = plants.data.plants.find(({ plant }) => plant.id === search.get("plant"))?.plant;
  const stopOf = (plantId: PlantId) => stops.find((stop) => stop.plantId === plantId);
  const inOrder = plants.data.plants.toSorted((a, b) =>
    (stopOf(a.plant.id)?.from ?? "9999").localeCompare(stopOf(b.plant.id)?.from ?? "9999"),
  );
  const choose = (id: string | null): void =>
    setSearch((now) => {
      const next = new URLSearchParams(now);
      if (id === null) next.delete("plant");
      else next.set("plant", id);
      return next;
    });
  return (
    <div className="work outing">
      <header>
        <p className="side">
          <To href="/outing">{say("outing.title")}</To>
        </p>
        <h1>{longDate(outing.date)}</h1>
        {outing.goal !== "" && <p>{outing.goal}</p>}
      </header>
      <details className="outing-facts">
        <summary>
          {[outing.people.join(", "), outing.weather, say("outing.counts", { stops: stops.length, photos: photoCount, looks: lookCount })]
            .filter((text) => text !== "")
            .join(" · ")}
        </summary>
        <OutingForm
          outing={record}
          people={book.data.people}
          word={say("work.keep")}
          onKeep={(changed) =>
            void keeper.keep(longDate(changed.date), async () =>
              call("PUT /api/outings/{id}", { params: { id: changed.id }, body: changed }),
            )
          }
        />
      </details>
      {plants.data.plants.length === 0 ? (
        <p>
          {say("outing.no-plants")} <To href="/begin">{say("outing.to-begin")}</To>
        </p>
      ) : (
        <nav className="outing-plants" aria-label={say("outing.plants")}>
          {inOrder.map(({ plant, spotName }) => (
            <button
              type="button"
              key={plant.id}
              aria-current={plant.id === chosen?.id ? "true" : undefined}
              onClick={() => choose(plant.id === chosen?.id ? null : plant.id)}
            >
              <b>{plant.nick}</b>
              <span>
                {spotName}
                {stopOf(plant.id) === undefined ? "" : ` · ${stopOf(plant.id)?.from.slice(11, 16) ?? ""}`}
              </span>
            </button>
          ))}
        </nav>
      )}
      {chosen === undefined ? (
        <p className="side">{say("outing.choose-plant")}</p>
      ) : (
        <>
          <h2 className="outing-plant-name">{chosen.nick}</h2>
          <p className="side">{chosen.marks}</p>
          <StopLine key={chosen.id} outing={record} plantId={chosen.id} stop={stopOf(chosen.id)} nick={chosen.nick} keeper={keeper} />
          <PlantRecord
            key={`${chosen.id} record`}
            plantId={chosen.id}
            outing={record}
            sheets={(sheets.data?.sheets ?? []).filter(
              (sheet) => sheet.outingId === outing.id && sheet.plantId === chosen.id && !sheet.leftOut,
            )}
            keeper={keeper}
          />
        </>
      )}
      <KeeperFoot keeper={keeper} />
    </div>
  );
};

export const Place = () => {
  const [isOne, params] = useRoute("/outing/:outingId");
  return isOne ? <OneOuting key={params.outingId} outingId={params.outingId} /> : <OutingList />;
};
