import { readFileSync } from "node:fs";
import sharp from "sharp";
import { expect, it } from "vitest";
import { smallJpeg, zeroPng } from "../../tests/support/odd-photos.js";
import { extensionDisagrees, sniff } from "./sniff.js";

it("knows the five formats by their content", async () => {
  const jpeg = await smallJpeg(1);
  expect(sniff(jpeg)).toEqual({ kind: "photo", format: "jpeg" });
  expect(sniff(zeroPng(8, 8))).toEqual({ kind: "photo", format: "png" });
  expect(sniff(await sharp(jpeg).webp().toBuffer())).toEqual({ kind: "photo", format: "webp" });
  expect(sniff(await sharp(jpeg).tiff().toBuffer())).toEqual({ kind: "photo", format: "tiff" });
  const heic = readFileSync(new URL("../../tests/fixtures/photos/gps-north-east.heic", import.meta.url));
  expect(sniff(heic)).toEqual({ kind: "photo", format: "heic" });
});

it("names what is none of them", async () => {
  expect(sniff(new Uint8Array())).toEqual({ kind: "empty" });
  expect(sniff(Buffer.from("Dear Thea,\nthe capsules"))).toEqual({ kind: "other", found: "text" });
  expect(sniff(Buffer.from("<?xml version='1.0'?><svg/>"))).toEqual({ kind: "other", found: "svg" });
  expect(sniff(Buffer.from("%PDF-1.7\n"))).toEqual({ kind: "other", found: "pdf" });
  expect(sniff(Buffer.from("\0\0\0\x18ftypmp42\0\0\0\0mp42isom", "latin1"))).toEqual({ kind: "other", found: "film" });
  expect(sniff(Buffer.from("II*\0\x10\0\0\0CR\x02\0", "latin1"))).toEqual({ kind: "other-picture", found: "raw" });
  expect(
    sniff(
      await sharp(await smallJpeg(1))
        .gif()
        .toBuffer(),
    ),
  ).toEqual({ kind: "other-picture", found: "gif" });
  expect(
    sniff(
      await sharp(await smallJpeg(1))
        .avif()
        .toBuffer(),
    ),
  ).toEqual({ kind: "other-picture", found: "avif" });
  expect(sniff(Buffer.from([1, 2, 3, 0, 255]))).toEqual({ kind: "other", found: "unknown" });
});

it("notices a name that says otherwise", () => {
  expect(extensionDisagrees("a.JPG", "jpeg")).toBe(false);
  expect(extensionDisagrees("a.png", "jpeg")).toBe(true);
  expect(extensionDisagrees("a.txt", "jpeg")).toBe(true);
  expect(extensionDisagrees("a", "jpeg")).toBe(false);
  expect(extensionDisagrees("HBC.4101", "jpeg")).toBe(false);
});
