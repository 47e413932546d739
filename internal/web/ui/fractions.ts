// Where the true fractions of a text stand. Only parts of one are fractions: the trade's quarters, such as 5/4 and
// 8/4 for the thickness of rough boards, stay as they are written, for an 8/4 board is no 2.

/** A stretch of text: as it is, or a fraction with the whole number before it, "" where there is none. */
export type Stretch = { readonly words: string } | { readonly whole: string; readonly part: string };

const fraction = /(?<![\d/.,-])(?:(\d+) )?(\d{1,2})\/(2|3|4|8|16|32|64)(?![\d/]|\.\d)/g;

/** The text as stretches in order; put one after the other, with a space after a whole number, they are the text. */
export function stretches(text: string): Stretch[] {
  const out: Stretch[] = [];
  let end = 0;
  for (const m of text.matchAll(fraction)) {
    const [all, whole = "", above, below] = m;
    if (Number(above) >= Number(below)) continue;
    if (m.index > end) out.push({ words: text.slice(end, m.index) });
    out.push({ whole, part: `${above}/${below}` });
    end = m.index + all.length;
  }
  if (end < text.length) out.push({ words: text.slice(end) });
  return out;
}
