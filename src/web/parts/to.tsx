import type { ReactNode } from "react";
import { Link, useSearchParams } from "wouter";

/** Writes an address with a query; what is undefined or null is left out. */
export const addressWith = (path: string, query: Readonly<Record<string, string | null | undefined>>): string => {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) if (value !== undefined && value !== null) search.set(name, value);
  const text = search.toString();
  return text === "" ? path : `${path}?${text}`;
};

export interface ToProps {
  /** A path of the page: "/plants/P1". */
  readonly href: string;
  /** Added to the address as query. */
  readonly query?: Readonly<Record<string, string | null | undefined>>;
  readonly className?: string;
  readonly "aria-current"?: "page" | "true" | undefined;
  readonly "aria-label"?: string;
  readonly children: ReactNode;
}

/** A link to another place that keeps the reading day; `query.upTo` (null = none) overrides it. */
export const To = ({ href, query = {}, ...rest }: ToProps) => {
  const [search] = useSearchParams();
  return <Link href={addressWith(href, { upTo: search.get("upTo"), ...query })} {...rest} />;
};
