// Text with true fractions: 3/8 is set as one sign, and stays 3/8 for copying and for a screen reader.

import type { VNode } from "preact";

const fraction = /(?<![\d/.,-])(\d{1,2})\/(1|2|3|4|8|16|32|64)(?![\d/])/g;

/** Sets the fractions in a text. */
export function Frac({ text }: { text: string }): VNode {
  const out: (string | VNode)[] = [];
  let end = 0;
  for (const m of text.matchAll(fraction)) {
    // Between a whole number and its fraction the space is thin.
    const before = text.slice(end, m.index);
    out.push(/\d $/.test(before) ? before.slice(0, -1) : before);
    if (/\d $/.test(before)) out.push(<span class="thin"> </span>);
    out.push(<span class="frac">{m[0]}</span>);
    end = m.index + m[0].length;
  }
  out.push(text.slice(end));
  return <>{out}</>;
}
