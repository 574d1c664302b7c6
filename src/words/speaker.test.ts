import { readdirSync } from "node:fs";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import { en } from "./en.js";
import { say, speaker } from "./speaker.js";

describe("say", () => {
  it("says a plain word and fills places", () => {
    expect(say("app.name")).toBe("Stipule");
    expect(say("words.missing", { key: "case.x" })).toBe("[missing word: case.x]");
  });

  it("fails loudly when a place has no value", () => {
    expect(() => say("words.missing")).toThrow(/key/);
  });

  it("has only messages that parse", () => {
    for (const [key, message] of Object.entries(en)) {
      expect(() => new IntlMessageFormat(message, "en", undefined, { ignoreTag: true }), key).not.toThrow();
    }
  });
});

describe("speaker", () => {
  const german = { de: { "page.skip": "Zum Text springen" } } as const;

  it("speaks another language and shows a missing word as missing", () => {
    const sag = speaker("de-AT", german);
    expect(sag("page.skip")).toBe("Zum Text springen");
    expect(sag("page.contents")).toBe("[en: On this page]");
  });

  it("speaks English where there is no catalogue at all", () => {
    expect(speaker("fr")("page.contents")).toBe("On this page");
    expect(speaker("en-GB")("page.contents")).toBe("On this page");
  });
});

describe("the catalogue", () => {
  it("has no key twice: a later part would silence an earlier one", async () => {
    const folder = new URL("./", import.meta.url);
    const seen = new Map<string, string>();
    for (const file of readdirSync(folder).filter((name) => /^en-[a-z-]+\.ts$/.test(name) && !name.endsWith(".test.ts"))) {
      const module = (await import(new URL(file, folder).href)) as Record<string, Record<string, string>>;
      for (const key of Object.values(module).flatMap((part) => Object.keys(part))) {
        expect(seen.get(key), `${key} stands in ${file}, too`).toBeUndefined();
        seen.set(key, file);
      }
    }
    expect(seen.size).toBeGreaterThan(100);
  });
});
