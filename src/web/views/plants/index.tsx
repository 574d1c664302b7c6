import { useApi } from "../../api.js";
import { say } from "../../../words/index.js";
import { mediumDate } from "../../parts/dates.js";
import { EmptyState } from "../../parts/empty-state.js";
import { Loading } from "../../parts/loading.js";
import { Name } from "../../parts/name.js";
import { Photo } from "../../parts/photo.js";
import { ProblemNote } from "../../parts/problem-note.js";
import { ResultWordMark } from "../../parts/result-word.js";
import { To } from "../../parts/to.js";
import { useTitle } from "../../parts/use-title.js";
import { useUpTo } from "../../parts/use-up-to.js";
import "./plants.css";

/** The followed plants: photograph, standing, spot, and how much is known of each. */
export const Place = () => {
  const { query } = useUpTo();
  const { data, error, refetch } = useApi("GET /api/plants", { query });
  useTitle(say("web.place.plants"));
  if (data === undefined) return error === null ? <Loading /> : <ProblemNote problem={error} again={() => void refetch()} />;
  if (data.plants.length === 0)
    return (
      <EmptyState title={say("web.year.empty.title")} text={say("web.plants.empty.text")}>
        <To href="/begin" className="button main">
          {say("web.plants.follow")}
        </To>
      </EmptyState>
    );
  return (
    <>
      <h1>{say("web.plants.title")}</h1>
      <p className="side">{say("web.plants.lead", { count: data.plants.length })}</p>
      <ul className="bare plant-cards">
        {data.plants.map((card) => (
          <li key={card.plant.id} className="plant-card">
            {card.coverPhotoId === null ? (
              <p className="photo photo-gone">{say("web.plants.no-photo")}</p>
            ) : (
              <Photo photoId={card.coverPhotoId} alt="" sizes="(max-width: 700px) 100vw, (max-width: 1300px) 45vw, 560px" />
            )}
            <h2>
              <To href={`/plants/${card.plant.id}`} className="plant-card-link">
                {card.plant.nick}
              </To>
            </h2>
            <p className="plant-card-standing">
              <ResultWordMark word={card.standing.word} settled={card.standing.settled} beside={card.standing.headline} />
              <Name spans={card.standing.headline} />
            </p>
            <p className="side">
              {card.spotName} · {say("web.plants.counts", { outings: card.outingCount, looks: card.lookCount, photos: card.photoCount })}
              {card.lastDate === null ? "" : ` · ${say("web.plants.last", { date: mediumDate(card.lastDate) })}`}
            </p>
          </li>
        ))}
      </ul>
      <p className="buttons no-print">
        <To href="/begin" className="button">
          {say("web.plants.follow")}
        </To>
      </p>
    </>
  );
};
