/**
 * What an answered character says of every hypothesis: a log likelihood for each taxon and one for "none of these". Tables
 * scored by words have few kinds of taxa a character; then one number a kind is kept, and no array as long as the table.
 */
export interface EvidenceColumn {
  /** Natural logarithms, one a taxon or one a kind; the last is that of "none of these". */
  readonly values: Float64Array;
  /** Kind of each taxon; null = every taxon has a value of its own. */
  readonly kindOfTaxon: Uint16Array | null;
}

/** The value of the taxon at `index`; of "none of these" at the number of taxa. */
export const valueAt = ({ values, kindOfTaxon }: EvidenceColumn, index: number): number =>
  values[kindOfTaxon === null ? index : (kindOfTaxon[index] ?? values.length - 1)] ?? 0;

/** One value a taxon and the last, length taxonCount + 1: the array of the column itself where it has one. */
export const spreadOut = ({ values, kindOfTaxon }: EvidenceColumn): Float64Array => {
  if (kindOfTaxon === null) return values;
  const taxonCount = kindOfTaxon.length;
  const spread = new Float64Array(taxonCount + 1);
  for (let t = 0; t < taxonCount; t += 1) spread[t] = values[kindOfTaxon[t] as number] as number;
  spread[taxonCount] = values[values.length - 1] ?? 0;
  return spread;
};
