/** The page of a species: drafted from evidence, written over by hand, published to a folder. */
import { useState } from "react";
import { useParams } from "wouter";
import type { PageDraft } from "../../../contract/index.js";
import type { Account, AccountSection, TableId, TaxonId } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { call, useApi, useSend } from "../../api.js";
import { Loading, Name, Notice, ProblemNote, To, useTitle } from "../../parts/index.js";
import { KeeperFoot } from "../../work/keeper-foot.js";
import { Choose, TextField } from "../../work/text-field.js";
import { useKeeper, type Keeper } from "../../work/use-keeper.js";
import "../../work/work.css";
import { MissingAlt } from "./missing-alt.js";
import "./page.css";
import { SectionEditor } from "./section-editor.js";

const Publish = ({ tableId, taxonId, draft }: { readonly tableId: TableId; readonly taxonId: TaxonId; readonly draft: PageDraft }) => {
  const publish = useSend("POST /api/pages/{tableId}/{taxonId}/publish");
  const [pdf, setPdf] = useState(true);
  const [paper, setPaper] = useState<"A4" | "Letter">("A4");
  const done = publish.data;
  return (
    <div className="account-publish">
      <h2>{say("writing.publish-title")}</h2>
      <div className="account-held">
        <p className="work-label">{say("writing.held-back")}</p>
        {draft.heldBack.length === 0 ? (
          <p>{say("writing.held-nothing")}</p>
        ) : (
          <ul>
            {draft.heldBack.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        )}
      </div>
      {draft.missingAlt.length > 0 && <p className="side">{say("writing.publish-alt", { count: draft.missingAlt.length })}</p>}
      <label className="work-check">
        <input type="checkbox" checked={pdf} onChange={(event) => setPdf(event.target.checked)} />
        {say("writing.pdf")}
      </label>
      <Choose
        label={say("writing.paper")}
        value={paper}
        options={[
          { value: "A4", label: "A4" },
          { value: "Letter", label: "Letter" },
        ]}
        onChange={setPaper}
      />
      <button
        type="button"
        className="main"
        disabled={publish.isPending}
        onClick={() => publish.mutate({ params: { tableId, taxonId }, body: { pdf, paper } })}
      >
        {say(publish.isPending ? "writing.publishing" : "writing.publish")}
      </button>
      <ProblemNote problem={publish.error} />
      {done !== undefined && (
        <div className="notice" role="status">
          <p>
            <b>{say("writing.published", { files: done.files })}</b> <code>{done.folder}</code>
          </p>
          <p>{done.pdf.text}</p>
          <p>
            <a href={done.url} target="_blank" rel="noreferrer">
              {say("writing.look")}
            </a>
          </p>
          {done.heldBack.length > 0 && <p className="side">{say("writing.published-held", { count: done.heldBack.length })}</p>}
        </div>
      )}
    </div>
  );
};

const Signed = ({ account, onKeep }: { readonly account: Account; readonly onKeep: (account: Account) => void }) => {
  const [author, setAuthor] = useState(account.author);
  const [licence, setLicence] = useState(account.licence);
  const keep = (): void => {
    if (author !== account.author || licence !== account.licence) onKeep({ ...account, author, licence });
  };
  return (
    <div className="account-signed">
      <TextField label={say("writing.author")} value={author} onChange={setAuthor} onBlur={keep} maxLength={200} />
      <TextField
        label={say("writing.licence")}
        help={say("writing.licence-help")}
        value={licence}
        onChange={setLicence}
        onBlur={keep}
        maxLength={120}
      />
    </div>
  );
};

const Sheet = ({
  tableId,
  taxonId,
  draft,
  keeper,
}: {
  readonly tableId: TableId;
  readonly taxonId: TaxonId;
  readonly draft: PageDraft;
  readonly keeper: Keeper;
}) => {
  // Held here as well, so that two sections written one after the other do not undo each other before the server answers.
  const [account, setAccount] = useState(draft.account);
  const keepAccount = (next: Account, what: string): void => {
    setAccount(next);
    void keeper.keep(what, async () => call("PUT /api/accounts/{id}", { params: { id: next.id }, body: next }));
  };
  const write = (section: AccountSection, title: string, text: string | null): void => {
    const edited = { ...account.edited };
    if (text === null) delete edited[section];
    else edited[section] = text;
    keepAccount({ ...account, edited }, text === null ? say("writing.back-kept", { section: title }) : title);
  };
  return (
    <div className="work account">
      <header>
        <p className="side">
          <To href={`/species/${encodeURIComponent(tableId)}`}>{say("writing.to-table")}</To>
        </p>
        <h1>{draft.vernacular === "" ? <Name spans={draft.name} /> : draft.vernacular}</h1>
        {draft.vernacular !== "" && (
          <p className="account-latin">
            <Name spans={draft.name} />
          </p>
        )}
        <p>{say("writing.lead")}</p>
      </header>
      {draft.notice !== "" && <Notice>{draft.notice}</Notice>}
      <div className="account-body">
        <div>
          {draft.sections.map((section) => (
            <SectionEditor
              key={section.section}
              section={section}
              written={account.edited[section.section]}
              onWrite={(text) => write(section.section, section.title, text)}
              onBack={() => write(section.section, section.title, null)}
            />
          ))}
        </div>
        <aside aria-label={say("writing.publish-title")}>
          <Publish tableId={tableId} taxonId={taxonId} draft={draft} />
          <MissingAlt missing={draft.missingAlt} keeper={keeper} />
          <Signed key={account.id} account={account} onKeep={(next) => keepAccount(next, say("writing.author"))} />
        </aside>
      </div>
      <KeeperFoot keeper={keeper} />
    </div>
  );
};

export const Place = () => {
  const params = useParams<{ tableId: string; taxonId: string }>();
  // ids of the address are opaque; the server says when there is no such thing
  const tableId = params.tableId as TableId;
  const taxonId = params.taxonId as TaxonId;
  const draft = useApi("GET /api/pages/{tableId}/{taxonId}", { params: { tableId, taxonId } });
  const keeper = useKeeper();
  useTitle(draft.data === undefined ? say("species.page") : draft.data.vernacular || draft.data.plain);
  if (draft.error !== null) return <ProblemNote problem={draft.error} again={() => void draft.refetch()} />;
  if (draft.data === undefined) return <Loading />;
  return <Sheet key={`${tableId} ${taxonId}`} tableId={tableId} taxonId={taxonId} draft={draft.data} keeper={keeper} />;
};
