import { useEffect } from "react";

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || target.closest("input, textarea, select, [role=textbox]") !== null);

/** Hears keys pressed anywhere but in a field. `hear` returns true when the key was meant for it. */
export const useKeys = (hear: (event: KeyboardEvent) => boolean): void => {
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || typing(event.target)) return;
      if (hear(event)) event.preventDefault();
    };
    document.addEventListener("keydown", listen);
    return () => document.removeEventListener("keydown", listen);
  }, [hear]);
};
