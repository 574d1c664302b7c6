/** Hatches that tell stages apart without colour; the name is part of the id of the pattern. */

const strokes = {
  dots: <circle cx="3.5" cy="3.5" r="0.9" className="hatch-dot" />,
  rising: <path d="M-2 9L9 -2M-2 2L2 -2M5 9L9 5" />,
  falling: <path d="M-2 -2L9 9M-2 5L2 9M5 -2L9 2" />,
  flat: <path d="M0 2H7M0 5.5H7" />,
  upright: <path d="M2 0V7M5.5 0V7" />,
  open: <path d="M-2 9L9 -2" />,
  crossed: <path d="M0 0L7 7M7 0L0 7" />,
  rings: <circle cx="3.5" cy="3.5" r="2" />,
  dashes: <path d="M0 2H4M3.5 5.5H7" />,
} as const;
const names = Object.keys(strokes) as (keyof typeof strokes)[];

/** Name of the hatch of the stage at a place in the order of stages. */
export const hatchOf = (index: number): string => names[index % names.length] ?? "dots";

/** The patterns, each as `{id}-{name}`; `{id}-none` is for where nothing could be seen. */
export const Hatches = ({ id }: { readonly id: string }) => (
  <defs>
    {names.map((name) => (
      <pattern key={name} id={`${id}-${name}`} width="7" height="7" patternUnits="userSpaceOnUse" className="hatch">
        {strokes[name]}
      </pattern>
    ))}
    <pattern id={`${id}-none`} width="6" height="6" patternUnits="userSpaceOnUse" className="hatch hatch-none">
      <path d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5" />
    </pattern>
  </defs>
);
