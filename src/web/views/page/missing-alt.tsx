/** Photographs of the page that have no alternative text yet, each with a field and a draft to begin from. */
import { useState } from "react";
import type { PageDraft } from "../../../contract/index.js";
import type { PhotoId } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { call } from "../../api.js";
import { imageAddress } from "../../parts/index.js";
import { TextField } from "../../work/text-field.js";
import type { Keeper } from "../../work/use-keeper.js";

type Missing = PageDraft["missingAlt"][number];

const One = ({ missing, keeper }: { readonly missing: Missing; readonly keeper: Keeper }) => {
  const [text, setText] = useState("");
  return (
    <form
      className="alt-one"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "")
          void keeper.keep(say("writing.alt-kept", { file: missing.fileName }), async () =>
            call("PATCH /api/sheets", { body: { ids: [missing.photoId as PhotoId], change: { altText: text.trim() } } }),
          );
      }}
    >
      <img src={imageAddress(missing.photoId, "320")} alt="" loading="lazy" decoding="async" />
      <div>
        <TextField label={say("writing.alt-of", { file: missing.fileName })} rows={2} value={text} onChange={setText} maxLength={1000} />
        <div className="work-row">
          <button type="submit" disabled={text.trim() === ""}>
            {say("work.keep")}
          </button>
          {missing.draft !== "" && text === "" && (
            <button type="button" className="quiet" onClick={() => setText(missing.draft)}>
              {say("writing.alt-draft", { draft: missing.draft })}
            </button>
          )}
        </div>
      </div>
    </form>
  );
};

export const MissingAlt = ({ missing, keeper }: { readonly missing: readonly Missing[]; readonly keeper: Keeper }) =>
  missing.length === 0 ? null : (
    <details className="account-side">
      <summary>{say("writing.alt-missing", { count: missing.length })}</summary>
      <p className="side">{say("writing.alt-lead")}</p>
      {missing.slice(0, 60).map((one) => (
        <One key={one.photoId} missing={one} keeper={keeper} />
      ))}
    </details>
  );
