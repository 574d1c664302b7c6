import { Component, useCallback, useEffect, useRef, useState } from "react";
import type { ReactNode } from "react";
import { useLocation } from "wouter";
import { useApi } from "../api.js";
import { say } from "../../words/index.js";
import { JobsLine } from "./jobs-line.js";
import { useKeys } from "./keyboard.js";
import { KeyboardHelp } from "./keyboard-help.js";
import { chooseLook, looks, storedLook } from "./look.js";
import type { Look } from "./look.js";
import { ProblemNote } from "./problem-note.js";
import { ReadingDay } from "./reading-day.js";
import { To } from "./to.js";
import { UndoRedo } from "./undo-redo.js";

const places = [
  ["/", "year"],
  ["/plants", "plants"],
  ["/species", "species"],
  ["/shelf", "shelf"],
] as const;

const isAt = (path: string, place: string): boolean => (place === "/" ? path === "/" : path === place || path.startsWith(`${place}/`));
/** Places whose content depends on the day the book is read at. */
const readsByDay = (path: string): boolean => path === "/" || isAt(path, "/plants");

class FaultNet extends Component<{ readonly children: ReactNode }, { readonly fault: unknown }> {
  override state = { fault: null as unknown };
  static getDerivedStateFromError(fault: unknown) {
    return { fault };
  }
  override render() {
    return this.state.fault === null ? this.props.children : <ProblemNote problem={this.state.fault} />;
  }
}

const LookChoice = () => {
  const [look, setLook] = useState<Look>(storedLook);
  return (
    <label className="look-choice">
      {say("web.look.label")}{" "}
      <select
        value={look}
        onChange={(event) => {
          const chosen = looks.find((one) => one === event.target.value) ?? "auto";
          setLook(chosen);
          chooseLook(chosen);
        }}
      >
        {looks.map((one) => (
          <option key={one} value={one}>
            {say(`web.look.${one}`)}
          </option>
        ))}
      </select>
    </label>
  );
};

/** The frame around every place: row of places, notice, reading day, undo, work in progress. */
export const Shell = ({ children }: { readonly children: ReactNode }) => {
  const [path] = useLocation();
  const main = useRef<HTMLElement>(null);
  const lastPath = useRef(path);
  const [help, setHelp] = useState(false);
  const { data: book, error, refetch } = useApi("GET /api/book", {});
  useEffect(() => {
    if (lastPath.current === path) return;
    lastPath.current = path;
    main.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, [path]);
  useKeys(
    useCallback((event) => {
      if (event.key !== "?" || event.ctrlKey || event.metaKey) return false;
      setHelp(true);
      return true;
    }, []),
  );
  const notice = book?.info.notice ?? "";
  return (
    <>
      <a className="skip" href="#content">
        {say("web.skip")}
      </a>
      <header className="top">
        <div className="top-row">
          <To href="/" className="book-title">
            {book?.info.title ?? say("app.name")}
          </To>
          <nav aria-label={say("web.places")}>
            {places.map(([place, word]) => (
              <To key={place} href={place} aria-current={isAt(path, place) ? "page" : undefined}>
                {say(`web.place.${word}`)}
              </To>
            ))}
          </nav>
        </div>
        {notice === "" ? null : (
          <p className="book-notice" role="note" aria-label={say("web.notice.label")}>
            {notice}
          </p>
        )}
        <div className="top-row top-tools">
          {book !== undefined && readsByDay(path) ? <ReadingDay bookDay={book.upTo} /> : null}
          {book === undefined ? null : <UndoRedo book={book} />}
        </div>
        <JobsLine />
      </header>
      <main id="content" tabIndex={-1} ref={main}>
        {error === null || book !== undefined ? (
          <FaultNet key={path}>{children}</FaultNet>
        ) : (
          <ProblemNote problem={error} again={() => void refetch()} />
        )}
      </main>
      <footer className="foot">
        <button type="button" className="quiet" onClick={() => setHelp(true)}>
          {say("web.keys.open")} <kbd>?</kbd>
        </button>
        <LookChoice />
      </footer>
      <KeyboardHelp open={help} onClose={() => setHelp(false)} />
    </>
  );
};
