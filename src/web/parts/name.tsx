import type { Spans } from "../../contract/index.js";

/** Text in which the parts of scientific names are set in italics, and nothing else is. */
export const Name = ({ spans }: { readonly spans: Spans }) =>
  spans.map((span, index) =>
    // Spans are a fixed sequence of one answer; their place is their identity.
    span.italic ? (
      // oxlint-disable-next-line react/no-array-index-key
      <i className="name" key={index} lang="la">
        {span.text}
      </i>
    ) : (
      span.text
    ),
  );
