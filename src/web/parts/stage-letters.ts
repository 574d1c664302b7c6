/**
 * One to three letters for each stage, all different, so that an arc can be read in black and white: initials where they
 * are the only ones ("young shoots" YS), else the beginning of the first word ("first flowers" Fi, "full flower" Fu).
 */
export const stageLetters = (names: readonly string[]): readonly string[] => {
  const words = names.map((name) => name.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== ""));
  const lower = /^(and|or|of|the|in)$/iu;
  const tries: readonly ((parts: readonly string[]) => string)[] = [
    (parts) =>
      parts
        .filter((part) => !lower.test(part))
        .slice(0, 2)
        .map((part) => part.slice(0, 1).toUpperCase())
        .join(""),
    ...[2, 3, 4, 5, 6].map((length) => (parts: readonly string[]) => {
      const first = parts[0] ?? "";
      return first.slice(0, 1).toUpperCase() + first.slice(1, length).toLowerCase();
    }),
    (parts) => parts.join(" "),
  ];
  const made = tries.map((make) => words.map(make));
  return names.map((name, index) => {
    for (const letters of made) {
      const mine = letters[index] ?? "";
      if (mine !== "" && letters.filter((other) => other === mine).length === 1) return mine;
    }
    return name;
  });
};
