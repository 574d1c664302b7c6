import { useState } from "react";
import { say } from "../../words/index.js";

/** Where the server gives out a photograph. */
export const imageAddress = (photoId: string, size: "320" | "2048" | "original"): string => `/image/${photoId}/${size}`;

export interface PhotoProps {
  readonly photoId: string;
  /** What is to be seen; "" only where the same is said in text beside it. */
  readonly alt: string;
  /** How wide it stands, as in the attribute `sizes` of HTML: "(max-width: 700px) 100vw, 320px". */
  readonly sizes?: string;
  /** Pixels as displayed, so that the page does not jump. */
  readonly width?: number;
  readonly height?: number;
  readonly className?: string;
  readonly eager?: boolean;
}

/** A photograph in the size that fits; a plain sentence where it cannot be shown. */
export const Photo = ({ photoId, alt, sizes = "320px", width, height, className = "", eager = false }: PhotoProps) => {
  const [failed, setFailed] = useState<string | null>(null);
  if (failed === photoId)
    return (
      <span className={`photo photo-gone ${className}`}>
        {alt} {say("web.photo.gone")}
      </span>
    );
  return (
    <img
      className={`photo ${className}`}
      src={imageAddress(photoId, "320")}
      srcSet={`${imageAddress(photoId, "320")} 320w, ${imageAddress(photoId, "2048")} 2048w`}
      sizes={sizes}
      alt={alt}
      {...(width === undefined || height === undefined ? {} : { width, height })}
      loading={eager ? "eager" : "lazy"}
      decoding="async"
      onError={() => setFailed(photoId)}
    />
  );
};
