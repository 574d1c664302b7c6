import fc from "fast-check";
import { expect, it } from "vitest";
import { nameHtml, nameParts, nameText } from "./name-parts.js";

it("loses no letter of any text, and lets no tag through", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 60 }), fc.string({ maxLength: 30 }), (name, author) => {
      const letters = (text: string): string => text.normalize("NFC").replace(/[\s×xX]/gu, "");
      const text = nameText(nameParts(name));
      expect(letters(text)).toBe(letters(name));
      const html = nameHtml(nameParts(name, author));
      expect(html.replaceAll('<i lang="la">', "").replaceAll("</i>", "")).not.toMatch(/[<>]/);
    }),
  );
});
