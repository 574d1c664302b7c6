/** One section of the account: as it will be printed, and as text to write over it. What is written is kept by itself. */
import { useEffect, useRef, useState } from "react";
import type { PageDraft } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { TextField } from "../../work/text-field.js";

type Section = PageDraft["sections"][number];
/** So long must the hands rest before what was written is kept. */
const restMs = 900;

export const SectionEditor = (props: {
  readonly section: Section;
  /** What was written over the draft; undefined = nothing. */
  readonly written: string | undefined;
  readonly onWrite: (text: string) => void;
  readonly onBack: () => void;
}) => {
  const { section, written, onWrite, onBack } = props;
  const [isOpen, setOpen] = useState(false);
  const [text, setText] = useState(written ?? section.draftText);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const pending = useRef<string | null>(null);
  const send = useRef(onWrite);
  useEffect(() => {
    send.current = onWrite;
  }, [onWrite]);
  const flush = (): void => {
    clearTimeout(timer.current);
    if (pending.current !== null) send.current(pending.current);
    pending.current = null;
  };
  // leaving the place must not lose the last words
  useEffect(() => flush, []);
  const write = (now: string): void => {
    setText(now);
    pending.current = now;
    clearTimeout(timer.current);
    timer.current = setTimeout(flush, restMs);
  };
  return (
    <section className="account-section" aria-labelledby={`section-${section.section}`}>
      <div className="account-head">
        <h2 id={`section-${section.section}`}>{section.title}</h2>
        <span className={section.origin === "edited" ? "origin edited" : "origin"}>{say(`writing.origin.${section.origin}`)}</span>
        <button
          type="button"
          className="quiet"
          aria-expanded={isOpen}
          aria-label={say(isOpen ? "writing.close-what" : "writing.edit-what", { section: section.title })}
          onClick={() => {
            if (isOpen) flush();
            else setText(written ?? section.draftText);
            setOpen(!isOpen);
          }}
        >
          {say(isOpen ? "writing.close" : "writing.edit")}
        </button>
      </div>
      {isOpen && (
        <div className="account-edit">
          <TextField
            label={say("writing.text-of", { section: section.title })}
            help={say("writing.text-help")}
            rows={Math.min(18, Math.max(5, Math.ceil(text.length / 70)))}
            value={text}
            onChange={write}
            onBlur={flush}
            maxLength={20_000}
          />
          {section.origin === "edited" && (
            <div className="work-row">
              <button
                type="button"
                onClick={() => {
                  clearTimeout(timer.current);
                  pending.current = null;
                  setText(section.draftText);
                  onBack();
                }}
              >
                {say("writing.back-to-draft")}
              </button>
              <details>
                <summary>{say("writing.show-draft")}</summary>
                <p className="account-draft">{section.draftText}</p>
              </details>
            </div>
          )}
        </div>
      )}
      {/* The server makes this of escaped text and its own marks only; a section is never taken over as HTML. */}
      <div className="account-html" dangerouslySetInnerHTML={{ __html: section.html }} />
    </section>
  );
};
