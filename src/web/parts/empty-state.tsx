import type { ReactNode } from "react";

/** A place where nothing is yet: what it will hold, and buttons to begin. */
export const EmptyState = ({
  title,
  text,
  children,
}: {
  readonly title: string;
  readonly text?: ReactNode;
  readonly children?: ReactNode;
}) => (
  <section className="empty-state">
    <h1>{title}</h1>
    {text === undefined ? null : <p>{text}</p>}
    {children === undefined ? null : <p className="buttons">{children}</p>}
  </section>
);
