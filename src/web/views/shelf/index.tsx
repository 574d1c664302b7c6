/** The shelf: what stands around the work. Places, people, views, the rule, history, the check, words, how it looks. */
import { useLocation } from "wouter";
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";
import { Loading, ProblemNote, To, useTitle } from "../../parts/index.js";
import { BookEditor, RuleEditor } from "../../work/book-editor.js";
import { KeeperFoot } from "../../work/keeper-foot.js";
import { PeopleEditor } from "../../work/people-editor.js";
import { TablesEditor } from "../../work/tables-editor.js";
import { useKeeper } from "../../work/use-keeper.js";
import { ViewsEditor } from "../../work/views-editor.js";
import "../../work/work.css";
import { AppearancePart } from "./appearance-part.js";
import { HistoryPart, ProofPart } from "./history-part.js";
import { PlacesPart } from "./places-part.js";
import "./shelf.css";
import { WordsPart } from "./words-part.js";

const parts = ["places", "people", "tables", "rule", "history", "proof", "words", "appearance"] as const;
type PartName = (typeof parts)[number];

const doors = [
  ["/bring", "bring.title"],
  ["/sorting", "sort.title"],
  ["/outing", "outing.title"],
  ["/begin", "begin.title"],
] as const;

export const Place = () => {
  const [path] = useLocation();
  const part: PartName | undefined = parts.find((one) => path === `/shelf/${one}`);
  useTitle(part === undefined ? say("shelf.title") : say(`shelf.${part}`));
  const book = useApi("GET /api/book", {});
  const keeper = useKeeper();
  if (book.error !== null) return <ProblemNote problem={book.error} again={() => void book.refetch()} />;
  if (book.data === undefined) return <Loading />;
  const { info, people, views, stages, upTo, folder, counts } = book.data;
  const body = (): React.ReactNode => {
    switch (part) {
      case undefined:
        return (
          <>
            <ul className="shelf-doors">
              {parts.map((one) => (
                <li key={one}>
                  <To href={`/shelf/${one}`}>{say(`shelf.${one}`)}</To>
                  <p>{say(`shelf.${one}-what`)}</p>
                </li>
              ))}
            </ul>
            <section aria-labelledby="doors-title">
              <h2 id="doors-title">{say("shelf.doors")}</h2>
              <div className="work-row">
                {doors.map(([href, word]) => (
                  <To key={href} href={href} className="button">
                    {say(word)}
                  </To>
                ))}
              </div>
            </section>
            <section aria-labelledby="book-title">
              <h2 id="book-title">{say("shelf.book")}</h2>
              <p className="side work-num">{say("shelf.counts", counts)}</p>
              <BookEditor key={JSON.stringify(info)} info={info} keeper={keeper} />
            </section>
          </>
        );
      case "places":
        return <PlacesPart zone={info.zone} day={upTo} keeper={keeper} />;
      case "people":
        return (
          <>
            <section aria-labelledby="people-title">
              <h2 id="people-title">{say("person.title")}</h2>
              <PeopleEditor people={people} keeper={keeper} />
            </section>
            <section aria-labelledby="views-title">
              <h2 id="views-title">{say("view.title")}</h2>
              <p>{say("view.lead")}</p>
              <ViewsEditor views={views} stages={stages} keeper={keeper} />
            </section>
          </>
        );
      case "tables":
        return (
          <section aria-labelledby="tables-title">
            <h2 id="tables-title">{say("shelf.tables")}</h2>
            <TablesEditor keeper={keeper} />
          </section>
        );
      case "rule":
        return (
          <section aria-labelledby="rule-title">
            <h2 id="rule-title">{say("rule.title")}</h2>
            <RuleEditor key={JSON.stringify(info.settledRule)} info={info} keeper={keeper} />
          </section>
        );
      case "history":
        return <HistoryPart />;
      case "proof":
        return <ProofPart folder={folder} />;
      case "words":
        return <WordsPart />;
      case "appearance":
        return <AppearancePart />;
    }
  };
  const keeps = part === undefined || ["places", "people", "tables", "rule"].includes(part);
  return (
    <div className="work shelf">
      <header>
        <h1>{say("shelf.title")}</h1>
        {part === undefined && <p>{say("shelf.lead")}</p>}
      </header>
      {part !== undefined && (
        <nav aria-label={say("shelf.title")}>
          <ul className="work-toc">
            {parts.map((one) => (
              <li key={one}>
                <To href={`/shelf/${one}`} aria-current={one === part ? "page" : undefined}>
                  {say(`shelf.${one}`)}
                </To>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {body()}
      {keeps && <KeeperFoot keeper={keeper} />}
    </div>
  );
};
