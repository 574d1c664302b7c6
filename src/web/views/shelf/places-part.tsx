/** Spots and permissions, and the same as a stranger would read it. */
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";
import { Loading, ProblemNote } from "../../parts/index.js";
import { PermissionsEditor } from "../../work/permissions-editor.js";
import { SpotsEditor, strangerReads } from "../../work/spots-editor.js";
import type { Keeper } from "../../work/use-keeper.js";

export const PlacesPart = ({ zone, day, keeper }: { readonly zone: string; readonly day: string; readonly keeper: Keeper }) => {
  const places = useApi("GET /api/places", {});
  if (places.error !== null) return <ProblemNote problem={places.error} again={() => void places.refetch()} />;
  if (places.data === undefined) return <Loading />;
  const { spots, permissions } = places.data;
  return (
    <>
      <section aria-labelledby="spots-title">
        <h2 id="spots-title">{say("place.title")}</h2>
        <SpotsEditor spots={spots} zone={zone} keeper={keeper} />
      </section>
      <section aria-labelledby="permissions-title">
        <h2 id="permissions-title">{say("permission.title")}</h2>
        <PermissionsEditor permissions={permissions} spots={spots} day={day} keeper={keeper} />
      </section>
      <section aria-labelledby="stranger-title">
        <h2 id="stranger-title">{say("shelf.stranger")}</h2>
        <p>{say("shelf.stranger-lead")}</p>
        {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a scrolling box must be reachable by keyboard */}
        <div className="work-scroll" tabIndex={0} role="region" aria-label={say("shelf.stranger-table")}>
          <table>
            <thead>
              <tr>
                <th scope="col">{say("shelf.stranger-spot")}</th>
                <th scope="col">{say("shelf.stranger-yours")}</th>
                <th scope="col">{say("shelf.stranger-theirs")}</th>
              </tr>
            </thead>
            <tbody>
              {spots.map((spot) => (
                <tr key={spot.id}>
                  <th scope="row">{spot.name}</th>
                  <td>{spot.lat === null || spot.lon === null ? say("place.no-coordinates") : `${spot.lat}, ${spot.lon}`}</td>
                  <td>{strangerReads(spot, spot.publishAs)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
    </>
  );
};
