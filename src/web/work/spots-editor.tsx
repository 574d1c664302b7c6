/** Spots: where the plants stand, how exactly that is known, and how finely it may be published. */
import { useState } from "react";
import { publicPlace, publicPlaceClass, type PublicPlaceClass, type Spot, type SpotId } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call } from "../api.js";
import { EditList, FormEnd } from "./edit-list.js";
import { newId } from "./new-id.js";
import { numberIn, numberProblem, textOf } from "./numbers.js";
import { Choose, TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

/** What a stranger would read of a place. */
export const strangerReads = (spot: Pick<Spot, "lat" | "lon" | "uncertaintyM">, publishAs: PublicPlaceClass): string => {
  const place = publicPlace(spot, publishAs);
  switch (place.kind) {
    case "withheld":
      return say("place.public.withheld");
    case "unknown":
      return say("place.public.unknown");
    case "point":
      return say("place.public.point", {
        lat: place.latText,
        lon: place.lonText,
        within: place.uncertaintyM === null ? 0 : place.uncertaintyM,
        grid: place.gridDegrees === null ? "none" : String(place.gridDegrees),
      });
  }
};

const SpotForm = ({
  spot,
  zone,
  onKeep,
  onCancel,
}: {
  readonly spot: Spot | null;
  readonly zone: string;
  readonly onKeep: (spot: Spot) => void;
  readonly onCancel: () => void;
}) => {
  const [name, setName] = useState(spot?.name ?? "");
  const [setting, setSetting] = useState(spot?.setting ?? "");
  const [lat, setLat] = useState(textOf(spot?.lat));
  const [lon, setLon] = useState(textOf(spot?.lon));
  const [within, setWithin] = useState(textOf(spot?.uncertaintyM));
  const [height, setHeight] = useState(textOf(spot?.elevationM));
  const [access, setAccess] = useState(spot?.access ?? "");
  const [publishAs, setPublishAs] = useState<PublicPlaceClass>(spot?.publishAs ?? "0.001-degree");
  const [because, setBecause] = useState(spot?.sensitiveBecause ?? "");
  const problems = {
    lat: numberProblem(lat, { min: -90, max: 90 }),
    lon: numberProblem(lon, { min: -180, max: 180 }),
    within: numberProblem(within, { min: 0.1, max: 1_000_000 }),
    height: numberProblem(height, { min: -500, max: 9000 }),
  };
  const half = (numberIn(lat) === null) !== (numberIn(lon) === null);
  const isWrong = Object.values(problems).some((problem) => problem !== undefined) || half;
  const place = { lat: numberIn(lat) ?? null, lon: numberIn(lon) ?? null, uncertaintyM: numberIn(within) ?? null };
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        if (isWrong) return;
        onKeep({
          shade: "",
          note: "",
          zone,
          ...spot,
          ...place,
          id: spot?.id ?? newId<SpotId>("spot"),
          name: name.trim(),
          setting,
          elevationM: numberIn(height) ?? null,
          access,
          publishAs,
          sensitiveBecause: because,
        });
      }}
    >
      <TextField label={say("place.name")} help={say("place.name-help")} required value={name} onChange={setName} maxLength={120} />
      <TextField label={say("place.setting")} help={say("place.setting-help")} value={setting} onChange={setSetting} maxLength={200} />
      <TextField label={say("place.access")} help={say("place.access-help")} value={access} onChange={setAccess} maxLength={400} />
      <TextField
        label={say("place.lat")}
        help={say("place.degrees-help")}
        inputMode="decimal"
        value={lat}
        onChange={setLat}
        problem={problems.lat ?? (half ? say("place.both") : undefined)}
      />
      <TextField
        label={say("place.lon")}
        help={say("place.lon-help")}
        inputMode="decimal"
        value={lon}
        onChange={setLon}
        problem={problems.lon}
      />
      <TextField
        label={say("place.within")}
        help={say("place.within-help")}
        inputMode="decimal"
        value={within}
        onChange={setWithin}
        problem={problems.within}
      />
      <TextField label={say("place.height")} inputMode="decimal" value={height} onChange={setHeight} problem={problems.height} />
      <div className="work-wide">
        <Choose
          label={say("place.publish-as")}
          help={say("place.publish-as-help")}
          value={publishAs}
          options={publicPlaceClass.options.map((value) => ({ value, label: say(`place.class.${value}`) }))}
          onChange={setPublishAs}
        />
        {!isWrong && (
          <p className="notice" role="status">
            {say("place.stranger-reads")} {strangerReads(place, publishAs)}
          </p>
        )}
      </div>
      <div className="work-wide">
        <TextField label={say("place.because")} help={say("place.because-help")} value={because} onChange={setBecause} maxLength={400} />
      </div>
      <FormEnd onCancel={onCancel} />
    </form>
  );
};

export const SpotsEditor = ({
  spots,
  zone,
  keeper,
}: {
  readonly spots: readonly Spot[];
  readonly zone: string;
  readonly keeper: Keeper;
}) => (
  <EditList
    items={spots}
    idOf={({ id }) => id}
    nameOf={({ name }) => name}
    addWord={say("place.add")}
    empty={say("place.none")}
    line={(spot) => (
      <>
        <b>{spot.name}</b>
        {spot.setting === "" ? "" : `, ${spot.setting}`}
        <br />
        <span className="side work-num">
          {spot.lat === null || spot.lon === null
            ? say("place.no-coordinates")
            : say("place.at", { lat: spot.lat, lon: spot.lon, within: spot.uncertaintyM ?? 0 })}
          {spot.elevationM === null ? "" : `, ${say("place.above-sea", { height: spot.elevationM })}`}
        </span>
        {spot.sensitiveBecause !== "" && (
          <>
            <br />
            <span className="place-sensitive">{say("place.sensitive", { because: spot.sensitiveBecause })}</span>
          </>
        )}
      </>
    )}
    onRemove={(spot) =>
      void keeper.keep(say("work.removed-what", { name: spot.name }), async () =>
        call("DELETE /api/spots/{id}", { params: { id: spot.id } }),
      )
    }
    form={(spot, done) => (
      <SpotForm
        spot={spot}
        zone={zone}
        onCancel={done}
        onKeep={(kept) => {
          void keeper
            .keep(kept.name, async () => call("PUT /api/spots/{id}", { params: { id: kept.id }, body: kept }))
            .then((isKept) => {
              if (isKept) done();
            });
        }}
      />
    )}
  />
);
