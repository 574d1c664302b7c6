/** A list whose items are changed in place, one at a time, and to which new ones are added. */
import { useState } from "react";
import type { ReactNode } from "react";
import { say } from "../../words/index.js";

export interface EditListProps<T> {
  readonly items: readonly T[];
  readonly idOf: (item: T) => string;
  readonly nameOf: (item: T) => string;
  readonly line: (item: T) => ReactNode;
  /** The form of an item, or of a new one (null); `done` closes it. */
  readonly form: (item: T | null, done: () => void) => ReactNode;
  readonly onRemove?: (item: T) => void;
  readonly addWord: string;
  /** What stands there while there is nothing. */
  readonly empty: string;
}

export const EditList = <T,>({ items, idOf, nameOf, line, form, onRemove, addWord, empty }: EditListProps<T>): ReactNode => {
  const [open, setOpen] = useState<string | null>(null);
  const close = (): void => setOpen(null);
  return (
    <>
      {items.length === 0 && open === null && <p className="side">{empty}</p>}
      <ul className="work-list">
        {items.map((item) =>
          open === idOf(item) ? (
            <li key={idOf(item)} className="work-open">
              <div>{form(item, close)}</div>
            </li>
          ) : (
            <li key={idOf(item)}>
              <div>{line(item)}</div>
              <span className="work-row">
                <button
                  type="button"
                  className="quiet"
                  aria-label={say("work.edit-what", { name: nameOf(item) })}
                  onClick={() => setOpen(idOf(item))}
                >
                  {say("work.edit")}
                </button>
                {onRemove !== undefined && (
                  <button
                    type="button"
                    className="quiet"
                    aria-label={say("work.remove-what", { name: nameOf(item) })}
                    onClick={() => onRemove(item)}
                  >
                    {say("work.remove")}
                  </button>
                )}
              </span>
            </li>
          ),
        )}
        {open === "" && (
          <li className="work-open">
            <div>{form(null, close)}</div>
          </li>
        )}
      </ul>
      {open === null && (
        <button type="button" onClick={() => setOpen("")}>
          {addWord}
        </button>
      )}
    </>
  );
};

/** The buttons at the foot of a form. */
export const FormEnd = ({ onCancel }: { readonly onCancel: () => void }) => (
  <div className="work-row work-wide">
    <button type="submit" className="main">
      {say("work.keep")}
    </button>
    <button type="button" onClick={onCancel}>
      {say("work.cancel")}
    </button>
  </div>
);
