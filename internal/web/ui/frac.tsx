// Text with true fractions: 3/8 is set as one sign, and stays 3/8 for copying and for a screen reader.

import type { VNode } from "preact";
import { type Stretch, stretches } from "./fractions";

function set(s: Stretch, key: number): string | VNode {
  if ("words" in s) return s.words;
  const part = <span key={key} class="frac">{s.part}</span>;
  // Between a whole number and its fraction the space is thin, and no line ends there.
  return s.whole === "" ? part : <span key={key} class="mixed">{s.whole}<span class="thin"> </span>{part}</span>;
}

/** Sets the fractions in a text. */
export function Frac({ text }: { text: string }): VNode {
  return <>{stretches(text).map(set)}</>;
}
