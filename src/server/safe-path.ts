/** From the path of a URL to a file below a folder, or nothing: no way up, no other drive, no device, no link out. */
import { realpath, stat } from "node:fs/promises";
import path from "node:path";

/** Names that are devices on Windows whatever their extension. */
const device = /^(con|prn|aux|nul|com\d|lpt\d|conin\$|conout\$)(\.|$)/i;

/** One segment as a plain file name; undefined when it is none. */
const plainSegment = (raw: string): string | undefined => {
  let segment: string;
  try {
    segment = decodeURIComponent(raw);
  } catch {
    // A malformed escape is no name of a file.
    return undefined;
  }
  if (segment === "" || segment === "." || segment === ".." || /[/\\:]|\p{Cc}/u.test(segment)) return undefined;
  if (/[. ]$/.test(segment) || segment.startsWith(".") || device.test(segment)) return undefined;
  return segment;
};

/**
 * The file a URL path names below `root`; a folder means its index.html. Both are resolved through links before they are
 * compared.
 * @param urlPath still percent-encoded, without the prefix of the route
 */
export const fileBelow = async (root: string, urlPath: string): Promise<{ path: string; size: number } | undefined> => {
  const raw = urlPath.split("/").filter((segment, i, all) => segment !== "" || (i > 0 && i < all.length - 1));
  const segments = raw.map(plainSegment);
  if (segments.includes(undefined)) return undefined;
  try {
    const base = await realpath(root);
    let target = await realpath(path.join(base, ...(segments as string[])));
    if (target !== base && !target.startsWith(base + path.sep)) return undefined;
    let facts = await stat(target);
    if (facts.isDirectory()) {
      target = await realpath(path.join(target, "index.html"));
      if (!target.startsWith(base + path.sep)) return undefined;
      facts = await stat(target);
    }
    return facts.isFile() ? { path: target, size: facts.size } : undefined;
  } catch (error) {
    if (error instanceof Error && "code" in error && ["ENOENT", "ENOTDIR", "ELOOP", "EACCES", "ENAMETOOLONG"].includes(String(error.code)))
      return undefined;
    throw error;
  }
};
