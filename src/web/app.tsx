/**
 * The places of the page. Each is `views/<name>/index.tsx` with an export `Place`, fetched when first entered; the frame
 * around them stays.
 */
import { lazy, Suspense } from "react";
import type { ComponentType } from "react";
import { Route, Switch } from "wouter";
import { say } from "../words/index.js";
import { EmptyState } from "./parts/empty-state.js";
import { Loading } from "./parts/loading.js";
import { Shell } from "./parts/shell.js";
import { To } from "./parts/to.js";

const found = import.meta.glob<{ readonly Place: ComponentType }>("./views/*/index.tsx");

/** Addresses by place, the first that fits is taken. */
const addresses = [
  ["/", "year"],
  ["/plants", "plants"],
  ["/plants/:plantId", "plant"],
  ["/plants/:plantId/case", "case"],
  ["/species", "species"],
  ["/species/:tableId/apart", "apart"],
  ["/species/:tableId/page/:taxonId", "page"],
  ["/species/:tableId", "species"],
  ["/bring", "bring"],
  ["/sorting", "sorting"],
  ["/outing", "outing"],
  ["/outing/:outingId", "outing"],
  ["/begin", "begin"],
  ["/shelf", "shelf"],
  ["/shelf/:part", "shelf"],
] as const;

const places = addresses.flatMap(([path, name]) => {
  const load = found[`./views/${name}/index.tsx`];
  return load === undefined ? [] : [{ path, name, load }];
});
const byName = new Map(places.map(({ name, load }) => [name, lazy(async () => ({ default: (await load()).Place }))]));

const Nowhere = () => (
  <EmptyState title={say("web.nowhere.title")} text={say("web.nowhere.text")}>
    <To href="/" className="button">
      {say("web.nowhere.back")}
    </To>
  </EmptyState>
);

export const App = () => (
  <Shell>
    <Suspense fallback={<Loading />}>
      <Switch>
        {places.map(({ path, name }) => (
          <Route key={path} path={path} component={byName.get(name) ?? Nowhere} />
        ))}
        <Route component={Nowhere} />
      </Switch>
    </Suspense>
  </Shell>
);
