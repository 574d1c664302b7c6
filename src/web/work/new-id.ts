/** An id made here, so that sending a record twice keeps one. `crypto.randomUUID` is missing on a phone without HTTPS. */
export const newId = <Id extends string>(kind: string): Id => {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return `${kind}-${[...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("")}` as Id;
};
