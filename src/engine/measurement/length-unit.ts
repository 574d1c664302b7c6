/** The units of length a botanist writes, and how they convert. Other units (%, degrees) stand for themselves. */

const millimetres: Readonly<Record<string, number>> = { um: 0.001, mm: 1, cm: 10, dm: 100, m: 1000, in: 25.4, ft: 304.8 };
const spellings: Readonly<Record<string, string>> = {
  "\u00B5m": "um",
  "\u03BCm": "um",
  micron: "um",
  microns: "um",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  inch: "in",
  inches: "in",
  '"': "in",
  feet: "ft",
  foot: "ft",
  percent: "%",
};
const others = new Set(["%", "\u00B0", "mm2", "cm2"]);

/** The unit a word means, in our spelling (`um`, `mm`, `cm`, `dm`, `m`, `in`, `ft`, `%`, ...); null when it is no unit we know. */
export const unitOf = (word: string): string | null => {
  const plain = word.trim().replace(/\.$/, "").toLowerCase();
  const unit = spellings[plain] ?? plain;
  return unit in millimetres || others.has(unit) ? unit : null;
};

/** What to multiply a value in `from` by to get `to`; null when the two cannot be converted. */
export const unitFactor = (from: string, to: string): number | null => {
  if (from === to) return 1;
  const [a, b] = [millimetres[from], millimetres[to]];
  return a === undefined || b === undefined ? null : a / b;
};

/** Converts without the dust of binary fractions: 5.1 cm is 51 mm, not 51.00000000000001. */
export const convertLength = (value: number, from: string, to: string): number | null => {
  const factor = unitFactor(from, to);
  return factor === null ? null : factor === 1 ? value : Number((value * factor).toPrecision(12));
};
