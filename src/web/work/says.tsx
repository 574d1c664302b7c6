/** One line of what was just done, read out when it changes: "Kept: leaf joint, clasping". */
import type { ReactNode } from "react";

export const Says = ({ children }: { readonly children: ReactNode }) => (
  <p className="work-says" role="status">
    {children}
  </p>
);
