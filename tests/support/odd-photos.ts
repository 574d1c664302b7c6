/** Photographs made for tests: small, seeded, some of them broken or hostile on purpose. */
import { deflateSync } from "node:zlib";
import sharp from "sharp";

/** A small JPEG, different for each seed. */
export const smallJpeg = (seed: number, width = 64, height = 48): Promise<Buffer> => {
  const pixels = Buffer.alloc(width * height * 3);
  let state = (seed + 1) * 2654435761;
  for (let index = 0; index < pixels.length; index += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    pixels[index] = state >>> 24;
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 70 })
    .toBuffer();
};

const crcTable = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k += 1) c = (c & 1) === 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
const crc = (bytes: Uint8Array): number => ~bytes.reduce((c, byte) => crcTable[(c ^ byte) & 255]! ^ (c >>> 8), ~0) >>> 0;
const chunk = (type: string, data: Uint8Array): Buffer => {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
};

/** A black-and-white PNG (W3C PNG 3rd ed.) of any size with `dataBytes` of zeros in it, as many as it needs when missing. */
export const zeroPng = (width: number, height: number, dataBytes = (Math.ceil(width / 8) + 1) * height): Buffer => {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 1;
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const data = deflateSync(Buffer.alloc(dataBytes), { level: 9 });
  return Buffer.concat([signature, chunk("IHDR", header), chunk("IDAT", data), chunk("IEND", Buffer.alloc(0))]);
};

/** An uncompressed TIFF whose header claims another size than it has. */
export const lyingTiff = async (side: number): Promise<Buffer> => {
  const tiff = await sharp({ create: { width: 8, height: 8, channels: 3, background: "#345678" } })
    .tiff({ compression: "none" })
    .toBuffer();
  const ifd = tiff.readUInt32LE(4);
  for (let entry = 0; entry < tiff.readUInt16LE(ifd); entry += 1) {
    const at = ifd + 2 + entry * 12;
    const tag = tiff.readUInt16LE(at);
    if (tag !== 256 && tag !== 257) continue;
    tiff.writeUInt16LE(4, at + 2);
    tiff.writeUInt32LE(side, at + 8);
  }
  return tiff;
};

/** Many pages or frames of one small colour each. */
export const manyPages = async (format: "webp" | "tiff", count: number): Promise<Buffer> => {
  const frames = await Promise.all(
    Array.from({ length: count }, (_, k) =>
      sharp({ create: { width: 32, height: 32, channels: 3, background: { r: (k * 40) % 256, g: (k * 90) % 256, b: 7 } } })
        .png()
        .toBuffer(),
    ),
  );
  return await sharp(frames, { join: { animated: true } })
    [format]()
    .toBuffer();
};

interface Rational {
  readonly over: readonly (readonly [number, number])[];
}
type ExifValue = string | number | Rational;

/** Puts Exif tags into a JPEG: a minimal little-endian TIFF block in APP1 (CIPA DC-008), IFD0, Exif IFD and GPS IFD. */
export const withExif = (
  jpeg: Buffer,
  tags: { readonly ifd0?: Record<number, ExifValue>; readonly exif?: Record<number, ExifValue>; readonly gps?: Record<number, ExifValue> },
): Buffer => {
  const sizeOf = (of: Record<number, ExifValue>): number => 2 + Object.keys(of).length * 12 + 4;
  const dataOf = (value: ExifValue): { type: number; count: number; data: Buffer } => {
    if (typeof value === "string") {
      const data = Buffer.from(`${value}\0`, "latin1");
      return { type: 2, count: data.length, data };
    }
    if (typeof value === "number") {
      const data = Buffer.alloc(2);
      data.writeUInt16LE(value);
      return { type: 3, count: 1, data };
    }
    const data = Buffer.alloc(value.over.length * 8);
    for (const [k, [numerator, denominator]] of value.over.entries()) {
      data.writeUInt32LE(numerator, k * 8);
      data.writeUInt32LE(denominator, k * 8 + 4);
    }
    return { type: 5, count: value.over.length, data };
  };
  const { exif = {}, gps = {} } = tags;
  const pointer = (at: number): Rational & { pointer: number } => ({ over: [], pointer: at });
  const ifd0: Record<number, ExifValue | ReturnType<typeof pointer>> = { ...tags.ifd0, 0x8769: pointer(0), 0x8825: pointer(0) };
  const exifAt = 8 + sizeOf(ifd0 as Record<number, ExifValue>);
  const gpsAt = exifAt + sizeOf(exif);
  ifd0[0x8769] = pointer(exifAt);
  ifd0[0x8825] = pointer(gpsAt);
  let extraAt = gpsAt + sizeOf(gps);
  const extra: Buffer[] = [];
  const ifd = (of: Record<number, ExifValue | ReturnType<typeof pointer>>): Buffer => {
    const entries = Object.entries(of).map(([tag, value]) => {
      const entry = Buffer.alloc(12);
      entry.writeUInt16LE(Number(tag), 0);
      if (typeof value === "object" && "pointer" in value) {
        entry.writeUInt16LE(4, 2);
        entry.writeUInt32LE(1, 4);
        entry.writeUInt32LE(value.pointer, 8);
        return entry;
      }
      const { type, count, data } = dataOf(value);
      entry.writeUInt16LE(type, 2);
      entry.writeUInt32LE(count, 4);
      if (data.length <= 4) data.copy(entry, 8);
      else {
        entry.writeUInt32LE(extraAt, 8);
        extra.push(data);
        extraAt += data.length;
      }
      return entry;
    });
    const count = Buffer.alloc(2);
    count.writeUInt16LE(entries.length);
    return Buffer.concat([count, ...entries, Buffer.alloc(4)]);
  };
  const parts = [ifd(ifd0), ifd(exif), ifd(gps)];
  const tiff = Buffer.concat([Buffer.from("II*\0\x08\0\0\0", "latin1"), ...parts, ...extra]);
  const app1 = Buffer.concat([Buffer.from([0xff, 0xe1, 0, 0]), Buffer.from("Exif\0\0", "latin1"), tiff]);
  app1.writeUInt16BE(app1.length - 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), app1, jpeg.subarray(2)]);
};

/** Tags by number, for {@link withExif}. */
export const exifTag = {
  make: 0x010f,
  model: 0x0110,
  orientation: 0x0112,
  dateTime: 0x0132,
  dateTimeOriginal: 0x9003,
  dateTimeDigitized: 0x9004,
  offsetTime: 0x9010,
  offsetTimeOriginal: 0x9011,
  offsetTimeDigitized: 0x9012,
  serial: 0xa431,
  gpsLatRef: 1,
  gpsLat: 2,
  gpsLonRef: 3,
  gpsLon: 4,
  gpsAltRef: 5,
  gpsAlt: 6,
} as const;
