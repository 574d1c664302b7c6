import type { ReactNode } from "react";

export interface NoticeProps {
  /** note: good to know; caution: before one acts; conflict: two things disagree. */
  readonly kind?: "note" | "caution" | "conflict";
  readonly title?: ReactNode;
  /** Read aloud when it appears. */
  readonly live?: boolean;
  readonly children: ReactNode;
}

/** A remark set off from the text by a bar. */
export const Notice = ({ kind = "note", title, live = false, children }: NoticeProps) => (
  <div className={`notice notice-${kind}`} role={live ? "status" : "note"}>
    {title === undefined ? null : <b className="notice-title">{title} </b>}
    {children}
  </div>
);
