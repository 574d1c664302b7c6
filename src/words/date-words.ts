/** Calendar dates in words. A date may be known, or shown, to the month only: `2022-07`. */

export interface DateWords {
  /** "6 July 2022"; "July 2022" where only the month is given. */
  readonly day: (date: string) => string;
  /** "6 July", or "July"; for lists that name the year elsewhere. */
  readonly dayOfYear: (date: string) => string;
  /** "Jul". `month` 1-12. */
  readonly shortMonth: (month: number) => string;
}

/** Dates as the language writes them; "en" is written day before month. @throws {RangeError} on text that is no date. */
export const dateWords = (language: string): DateWords => {
  const locale = language === "en" ? "en-GB" : language;
  const format = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
    new Intl.DateTimeFormat(locale, { timeZone: "UTC", ...options });
  const [full, month, short, shortest, name] = [
    format({ day: "numeric", month: "long", year: "numeric" }),
    format({ month: "long", year: "numeric" }),
    format({ day: "numeric", month: "long" }),
    format({ month: "long" }),
    format({ month: "short" }),
  ];
  const toMonth = (date: string): boolean => date.length === 7;
  const instant = (date: string): Date => {
    const value = new Date(`${toMonth(date) ? `${date}-01` : date}T00:00:00Z`);
    if (Number.isNaN(value.getTime())) throw new RangeError(`"${date}" is no calendar date`);
    return value;
  };
  return {
    day: (date) => (toMonth(date) ? month : full).format(instant(date)),
    dayOfYear: (date) => (toMonth(date) ? shortest : short).format(instant(date)),
    shortMonth: (number) => name.format(new Date(Date.UTC(2021, number - 1, 1))),
  };
};
