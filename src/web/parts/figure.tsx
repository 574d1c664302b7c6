import type { ReactNode } from "react";

/** A picture, drawing or table with what it shows in words beneath. */
export const Figure = ({
  caption,
  className = "",
  children,
}: {
  readonly caption: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}) => (
  <figure className={`figure ${className}`}>
    {children}
    <figcaption className="caption">{caption}</figcaption>
  </figure>
);
