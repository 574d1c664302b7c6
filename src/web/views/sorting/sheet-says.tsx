/** What is said of the sheet under the keyboard, and of all chosen ones: caption, alternative text, credit, licence. */
import { useState } from "react";
import type { SheetChange } from "../../../contract/index.js";
import type { Photo } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";
import { TextField } from "../../work/text-field.js";

const fields = ["caption", "altText", "credit", "licence"] as const;
type FieldName = (typeof fields)[number];

const Form = ({
  photo,
  count,
  onSay,
}: {
  readonly photo: Photo;
  readonly count: number;
  readonly onSay: (change: SheetChange) => void;
}) => {
  const [texts, setTexts] = useState<Partial<Record<FieldName, string>>>({});
  const touched = fields.filter((name) => texts[name] !== undefined && (count > 1 || texts[name] !== photo[name]));
  return (
    <form
      className="sheet-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (touched.length === 0) return;
        onSay(Object.fromEntries(touched.map((name) => [name, texts[name] ?? ""])));
        setTexts({});
      }}
    >
      {fields.map((name) => (
        <TextField
          key={name}
          label={say(`sort.field.${name}`)}
          help={name === "altText" ? say("sort.field.altText-help") : undefined}
          value={texts[name] ?? photo[name]}
          {...(name === "altText" || name === "caption" ? { rows: 2 } : {})}
          maxLength={name === "credit" ? 200 : name === "licence" ? 120 : 1000}
          onChange={(text) => setTexts((now) => ({ ...now, [name]: text }))}
        />
      ))}
      <button type="submit" disabled={touched.length === 0}>
        {say("sort.say", { count })}
      </button>
    </form>
  );
};

export const SheetSays = ({
  photoId,
  count,
  onSay,
}: {
  readonly photoId: string;
  readonly count: number;
  readonly onSay: (change: SheetChange) => void;
}) => {
  const { data: photo } = useApi("GET /api/sheets/{photoId}", { params: { photoId } });
  if (photo === undefined) return null;
  return (
    <>
      <p className="side sheet-facts">
        {photo.fileName} · {photo.widthPx} × {photo.heightPx} ·{" "}
        {photo.takenCamera === null ? say("sort.no-time") : say("sort.camera-time", { time: photo.takenCamera.replace("T", " ") })}
        {photo.metadataNote === "" ? "" : ` · ${photo.metadataNote}`}
        {photo.leaveOut === null ? "" : ` · ${say("sort.left-out-because", { reason: photo.leaveOut })}`}
      </p>
      <Form key={photoId} photo={photo} count={count} onSay={onSay} />
    </>
  );
};
