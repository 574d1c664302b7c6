/** The glossary: terms with their meaning in plain words. */
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { say } from "../../../words/index.js";
import { Loading, ProblemNote } from "../../parts/index.js";
import { TextField } from "../../work/text-field.js";
import { loadGlossary } from "./glossary.js";

export const WordsPart = () => {
  const [text, setText] = useState("");
  const glossary = useQuery({ queryKey: ["glossary"], queryFn: loadGlossary, staleTime: Infinity });
  if (glossary.error !== null) return <ProblemNote problem={glossary.error} />;
  if (glossary.data === undefined) return <Loading />;
  const wanted = text.trim().toLowerCase();
  const fitting = glossary.data.filter(
    ({ term, part, definition }) => wanted === "" || `${term} ${part} ${definition}`.toLowerCase().includes(wanted),
  );
  return (
    <section aria-labelledby="words-title">
      <h2 id="words-title">{say("shelf.words")}</h2>
      <div className="words-find">
        <TextField label={say("shelf.words-find")} value={text} onChange={setText} />
        <p className="side" role="status">
          {say("shelf.words-count", { count: fitting.length })}
        </p>
      </div>
      <dl className="words">
        {fitting.map(({ id, term, part, definition }) => (
          <div key={id}>
            <dt>
              {term} <span className="part">{part}</span>
            </dt>
            <dd>{definition}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
};
