import fc from "fast-check";
import { expect, it } from "vitest";
import { jsonForScript } from "./json-ld.js";

it("cannot leave the script element, and says the same when read", () => {
  expect(jsonForScript({ a: "</script><!--" })).toBe('{"a":"\\u003c/script\\u003e\\u003c!--"}');
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const json = jsonForScript({ text });
      expect(json).not.toMatch(/[<>&\u2028\u2029]/);
      expect(JSON.parse(json)).toEqual({ text });
    }),
  );
});
