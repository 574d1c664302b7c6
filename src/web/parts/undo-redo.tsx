import { useCallback, useState } from "react";
import type { BookOverview } from "../../contract/index.js";
import { useSend } from "../api.js";
import { say } from "../../words/index.js";
import { useKeys } from "./keyboard.js";
import { ProblemNote } from "./problem-note.js";

/** Undo and redo with the name of what they take back; by button, and by Ctrl+Z and Ctrl+Shift+Z outside of fields. */
export const UndoRedo = ({ book }: { readonly book: BookOverview }) => {
  const undo = useSend("POST /api/undo");
  const redo = useSend("POST /api/redo");
  const [said, setSaid] = useState("");
  const busy = undo.isPending || redo.isPending;
  const takeBack = useCallback(() => {
    undo.mutate({}, { onSuccess: ({ edit }) => setSaid(edit === null ? "" : say("web.undone", { label: edit.label })) });
  }, [undo]);
  const doAgain = useCallback(() => {
    redo.mutate({}, { onSuccess: ({ edit }) => setSaid(edit === null ? "" : say("web.redone", { label: edit.label })) });
  }, [redo]);
  useKeys(
    useCallback(
      (event) => {
        if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "z" || busy) return false;
        if (event.shiftKey) {
          if (book.redo !== null) doAgain();
        } else if (book.undo !== null) takeBack();
        return true;
      },
      [book.redo, book.undo, busy, doAgain, takeBack],
    ),
  );
  const one = (label: string | null, word: "undo" | "redo", act: () => void) => {
    const whole = label === null ? say(`web.${word}.none`) : say(`web.${word}.what`, { label });
    return (
      <button type="button" className="quiet" disabled={label === null || busy} title={whole} aria-label={whole} onClick={act}>
        {say(`web.${word}`)}
        {label === null ? null : <span className="undo-what">{label}</span>}
      </button>
    );
  };
  return (
    <div className="undo-redo">
      {one(book.undo, "undo", takeBack)}
      {one(book.redo, "redo", doAgain)}
      <output className="hidden-words">{said}</output>
      <ProblemNote problem={undo.error ?? redo.error} />
    </div>
  );
};
