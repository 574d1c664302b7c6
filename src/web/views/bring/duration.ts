/** A length of time in words: "7 min 20 s". */
export const durationInWords = (seconds: number): string => {
  const whole = Math.abs(Math.round(seconds));
  const parts = [
    [Math.floor(whole / 3600), "h"],
    [Math.floor((whole % 3600) / 60), "min"],
    [whole % 60, "s"],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, unit]) => `${count}\u00A0${unit}`);
  return said.length === 0 ? "0\u00A0s" : said.join(" ");
};
