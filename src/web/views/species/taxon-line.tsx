/** A taxon's name set by its parts, with its everyday name. */
import { nameParts, type Taxon } from "../../../engine/index.js";
import { Name } from "../../parts/index.js";

export const TaxonLine = ({
  taxon,
  short = false,
}: {
  readonly taxon: Pick<Taxon, "name" | "authorship" | "vernacular">;
  readonly short?: boolean;
}) => (
  <>
    <Name spans={[...nameParts(taxon.name, short ? "" : taxon.authorship)]} />
    {taxon.vernacular["en"] !== undefined && <span className="side"> {taxon.vernacular["en"]}</span>}
  </>
);
