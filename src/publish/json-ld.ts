/**
 * What machines read of a page: schema.org terms as JSON-LD 1.1 (W3C 2020). The taxon follows the Bioschemas profile Taxon 1.0
 * (name and taxonRank required).
 */
import type { AccountModel } from "./account-model.js";

/** JSON that may stand inside a script element: "<", ">", "&" and the line separators are written as escapes. */
export const jsonForScript = (value: unknown): string =>
  JSON.stringify(value).replace(/[<>&\u2028\u2029]/g, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`);

const given = (key: string, value: string): Readonly<Record<string, string>> => (value === "" ? {} : { [key]: value });

/** The account as an Article about a Taxon, with its photographs. */
export const accountJsonLd = (model: AccountModel): Readonly<Record<string, unknown>> => ({
  "@context": "https://schema.org",
  "@type": ["Article", "LearningResource"],
  headline: model.nameText,
  inLanguage: model.language,
  isAccessibleForFree: true,
  ...(model.author === "" ? {} : { author: { "@type": "Person", name: model.author } }),
  ...given("license", model.licence),
  about: {
    "@type": "Taxon",
    name: model.bareName,
    taxonRank: model.rank,
    scientificName: {
      "@type": "TaxonName",
      name: model.bareName,
      ...given("author", model.authorship),
      taxonRank: model.rank,
    },
    ...(model.family === "" ? {} : { parentTaxon: { "@type": "Taxon", name: model.family, taxonRank: "family" } }),
    alternateName: [model.vernacular, ...model.otherVernacular.map((other) => other.name)].filter((name) => name !== ""),
  },
  citation: model.sources.map((source) => source.citation),
  image: model.figures.flatMap((figure) => {
    const largest = figure.files.at(-1);
    if (largest === undefined) return [];
    return [
      {
        "@type": "ImageObject",
        contentUrl: largest.path,
        width: largest.widthPx,
        height: largest.heightPx,
        caption: figure.caption,
        ...given("creditText", figure.credit),
        ...given("license", figure.licence),
      },
    ];
  }),
});
