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

/** How large the letters are. Kept in this browser only. */
export const types = ["usual", "large", "largest"] as const;
export type TypeSize = (typeof types)[number];

const typeKey = "stipule.type";

/** The size chosen in this browser; "usual" when none was, or when the browser keeps nothing. */
export const storedType = (): TypeSize => {
  try {
    const text = localStorage.getItem(typeKey);
    return types.find((type) => type === text) ?? "usual";
  } catch {
    return "usual";
  }
};

/** Draws the page in a size. */
export const applyType = (type: TypeSize): void => {
  if (type === "usual") delete document.documentElement.dataset["type"];
  else document.documentElement.dataset["type"] = type;
};

/** Chooses a size and keeps the choice where the browser allows. */
export const chooseType = (type: TypeSize): void => {
  applyType(type);
  try {
    localStorage.setItem(typeKey, type);
  } catch {
    // A browser that keeps nothing shows the size until the page is closed.
  }
};
