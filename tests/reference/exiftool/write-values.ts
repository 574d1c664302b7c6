/** Writes values.json anew from the installed exiftool and the shared files: `npx tsx tests/reference/exiftool/write-values.ts`. */
import { readdirSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { exiftool, projectFile, sharedFolder } from "./exiftool.js";

const kept =
  /^(IFD0:(Make|Model|Orientation|ModifyDate)|ExifIFD:(DateTimeOriginal|CreateDate|OffsetTime.*)|Composite:GPS(Latitude|Longitude|Altitude)|GPS:GPS(Latitude|Longitude)(Ref)?|XMP-exif:DateTimeOriginal)$/;
const folder = sharedFolder("images/exif");
if (folder === null) throw new Error("The shared files are not there; nothing was written.");
const paths = readdirSync(folder)
  .filter((name) => name.endsWith(".jpg"))
  .map((name) => join(folder, name));
const values = exiftool([...paths, projectFile("tests/fixtures/photos/gps-north-east.heic")]).map((tags) => ({
  file: basename(String(tags["SourceFile"])),
  tags: Object.fromEntries(Object.entries(tags).filter(([name]) => kept.test(name))),
}));
writeFileSync(projectFile("tests/reference/exiftool/values.json"), `${JSON.stringify({ exiftool: "12.57", values }, null, 1)}\n`);
console.log(`${values.length} files written to values.json`);
