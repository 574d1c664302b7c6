/** heic-decode 2.1.0 brings no types; this is the part that is used. */
declare module "heic-decode" {
  interface DecodedHeic {
    readonly width: number;
    readonly height: number;
    /** RGBA, 8 bits, row by row. */
    readonly data: Uint8ClampedArray;
  }
  const decode: (of: { readonly buffer: Uint8Array }) => Promise<DecodedHeic>;
  export default decode;
}
