/** Dates as people read them, in English order. Calendar dates have no zone, so none is applied. */

const format = (options: Intl.DateTimeFormatOptions) => {
  const made = new Intl.DateTimeFormat("en-GB", { ...options, timeZone: "UTC" });
  return (date: string): string => made.format(new Date(`${date}T00:00:00Z`));
};

/** "21 August 2022" of "2022-08-21". */
export const longDate = format({ day: "numeric", month: "long", year: "numeric" });
/** "21 Aug" of "2022-08-21". */
export const shortDate = format({ day: "numeric", month: "short" });
/** "21 Aug 2022" of "2022-08-21". */
export const mediumDate = format({ day: "numeric", month: "short", year: "numeric" });
