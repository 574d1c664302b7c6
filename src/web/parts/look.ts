/** The page's look: paper, night, field, or as the device says. Kept in this browser only; it is no part of the book. */

/** The looks one may choose. */
export const looks = ["auto", "paper", "night", "field"] as const;
export type Look = (typeof looks)[number];

const key = "stipule.look";
const isLook = (text: string | null): text is Look => looks.some((look) => look === text);

/** The look chosen in this browser; "auto" when none was, or when the browser keeps nothing. */
export const storedLook = (): Look => {
  try {
    const text = localStorage.getItem(key);
    return isLook(text) ? text : "auto";
  } catch {
    return "auto";
  }
};

/** Draws the page in a look. */
export const applyLook = (look: Look): void => {
  if (look === "auto") delete document.documentElement.dataset["look"];
  else document.documentElement.dataset["look"] = look;
};

/** Chooses a look and keeps the choice where the browser allows. */
export const chooseLook = (look: Look): void => {
  applyLook(look);
  try {
    localStorage.setItem(key, look);
  } catch {
    // A browser that keeps nothing shows the look until the page is closed.
  }
};
