/**
 * Renders a drawn plate as a photograph: a soft ground, the shadow of the subject, the subject in focus, a little grain,
 * stored as JPEG with the metadata a camera would write. Same input, same bytes with the same image library.
 */
import sharp from "sharp";

/** What to render. SVGs are the two layers of a plate; the ground is smaller and gets enlarged. */
export interface PlatePicture {
  readonly groundSvg: string;
  readonly subjectSvg: string;
  /** Size as it will be seen; the stored size is turned when `orientation` says so. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Standard deviation of the blur over the subject, pixels; 0 = in focus. */
  readonly outOfFocusPx: number;
  /** Whole number that starts the grain. */
  readonly grainSeed: number;
  /** JPEG quality, 1-100. */
  readonly quality: number;
  /** EXIF orientation the picture is stored with: 1 upright, 6 or 8 lying. */
  readonly orientation: 1 | 6 | 8;
  readonly exif: PlateExif;
}

/** Camera facts to write. */
export interface PlateExif {
  /** Local time by the camera's clock, `YYYY-MM-DDTHH:MM:SS`, no offset. */
  readonly takenAt: string;
  readonly make: string;
  readonly model: string;
  readonly bodySerial?: string;
  /** WGS 84, decimal degrees. */
  readonly gps?: { readonly lat: number; readonly lon: number; readonly altitudeM?: number };
}

/** Standard deviation of the blur of the ground, in pixels of the small ground. */
const groundBlur = 13;

/** The picture as bytes of a JPEG file. */
export async function renderPlate(picture: PlatePicture): Promise<Uint8Array> {
  const { widthPx: width, heightPx: height } = picture;
  const raw4 = { raw: { width, height, channels: 4 as const } };
  const raw3 = { raw: { width, height, channels: 3 as const } };
  const focused = await sharp(Buffer.from(picture.subjectSvg), { unlimited: true }).ensureAlpha().raw().toBuffer();
  const subject = picture.outOfFocusPx > 0 ? await sharp(focused, raw4).blur(picture.outOfFocusPx).raw().toBuffer() : focused;
  const ground = await shadedGround(picture.groundSvg, focused, { width, height });
  const layers = [
    { input: subject, ...raw4, left: 0, top: 0 },
    { input: grain(picture.grainSeed), raw: { width: grainPx, height: grainPx, channels: 4 as const }, tile: true, blend: "over" as const },
  ];
  let flat = sharp(ground, raw3).composite(layers);
  // Orientation 6 asks the reader to turn the stored picture a quarter to the right, 8 to the left.
  if (picture.orientation !== 1) flat = sharp(await flat.removeAlpha().raw().toBuffer(), raw3).rotate(picture.orientation === 6 ? 270 : 90);
  return flat
    .jpeg({ quality: picture.quality, chromaSubsampling: "4:2:0" })
    .withExif(exifOf(picture.exif))
    .withMetadata({ orientation: picture.orientation, density: 72 })
    .toBuffer();
}

/** The blurred ground with the subject's shadow on it, in full size: three channels, raw. Both are soft, so both are made small. */
async function shadedGround(
  groundSvg: string,
  subject: Buffer,
  size: { readonly width: number; readonly height: number },
): Promise<Buffer> {
  const { data: ground, info } = await sharp(Buffer.from(groundSvg))
    .flatten({ background: "#808080" })
    .blur(groundBlur)
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const dim = await sharp(subject, { raw: { ...size, channels: 4 } })
    .extractChannel(3)
    .resize(info.width, info.height, { fit: "fill", kernel: "linear" })
    .blur(2.6)
    .raw()
    .toBuffer();
  // The shadow falls to the lower right: the light comes from the upper left, as in the drawings.
  const fall = Math.max(1, Math.round(info.width / 170));
  for (let y = fall; y < info.height; y += 1) {
    for (let x = fall; x < info.width; x += 1) {
      const keep = 1 - (0.42 * (dim[(y - fall) * info.width + x - fall] ?? 0)) / 255;
      const at = (y * info.width + x) * 3;
      for (let k = at; k < at + 3; k += 1) ground[k] = Math.round((ground[k] ?? 0) * keep);
    }
  }
  return sharp(ground, { raw: { width: info.width, height: info.height, channels: 3 } })
    .resize(size.width, size.height, { fit: "fill", kernel: "cubic" })
    .raw()
    .toBuffer();
}

const grainPx = 256;

/** A tile of grain: dark and light points of low opacity from a 32-bit linear congruential generator (Numerical Recipes constants). */
function grain(seed: number): Buffer {
  const tile = Buffer.alloc(grainPx * grainPx * 4);
  let state = seed >>> 0;
  for (let i = 0; i < grainPx * grainPx; i += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const value = state >>> 24;
    const tone = value > 127 ? 255 : 0;
    tile[i * 4] = tone;
    tile[i * 4 + 1] = tone;
    tile[i * 4 + 2] = tone;
    tile[i * 4 + 3] = (state >>> 16) & 7;
  }
  return tile;
}

/** Camera facts as EXIF entries, by the names of Exif 2.32 (CIPA DC-008-2019): IFD0, Exif IFD (IFD2 here), GPS IFD (IFD3 here). */
function exifOf(exif: PlateExif): { IFD0: Record<string, string>; IFD2: Record<string, string>; IFD3?: Record<string, string> } {
  const time = `${exif.takenAt.slice(0, 10).replaceAll("-", ":")} ${exif.takenAt.slice(11, 19)}`;
  const out = {
    IFD0: { Make: exif.make, Model: exif.model, DateTime: time },
    IFD2: {
      DateTimeOriginal: time,
      DateTimeDigitized: time,
      ...(exif.bodySerial === undefined ? {} : { BodySerialNumber: exif.bodySerial }),
    },
  };
  if (exif.gps === undefined) return out;
  const { lat, lon, altitudeM } = exif.gps;
  return {
    ...out,
    IFD3: {
      GPSLatitudeRef: lat < 0 ? "S" : "N",
      GPSLatitude: sexagesimal(lat),
      GPSLongitudeRef: lon < 0 ? "W" : "E",
      GPSLongitude: sexagesimal(lon),
      ...(altitudeM === undefined ? {} : { GPSAltitudeRef: "0", GPSAltitude: `${Math.round(altitudeM * 10)}/10` }),
    },
  };
}

/** Degrees, minutes, seconds as three rationals; seconds to a thousandth (about 3 cm). */
function sexagesimal(degrees: number): string {
  const thousandths = Math.round(Math.abs(degrees) * 3_600_000);
  const d = Math.floor(thousandths / 3_600_000);
  const m = Math.floor((thousandths - d * 3_600_000) / 60_000);
  return `${d}/1 ${m}/1 ${thousandths - d * 3_600_000 - m * 60_000}/1000`;
}
