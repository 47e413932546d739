// What the reader of the page chose; kept on this device.

import { effect, type Signal, signal } from "@preact/signals";

export type Units = "own" | "inch" | "metric";
export type Theme = "device" | "light" | "dark";

function kept<T extends string>(name: string, all: readonly T[]): Signal<T> {
  let start = all[0] as T;
  try {
    const old = localStorage.getItem(name);
    start = all.find((v) => v === old) ?? start;
  } catch {
    // Storage can be forbidden; then the choice lasts as long as the page.
  }
  const s = signal<T>(start);
  effect(() => {
    const v = s.value;
    try {
      localStorage.setItem(name, v);
    } catch {
      // As above.
    }
  });
  return s;
}

/** The units of lengths: each piece's own, or one for all. */
export const units = kept<Units>("units", ["own", "inch", "metric"]);
/** Light, dark, or as the device has it. */
export const theme = kept<Theme>("theme", ["device", "light", "dark"]);
/** Whether single keys are shortcuts. */
export const keys = kept<"on" | "off">("keys", ["on", "off"]);
/** Whether the work is shown one step at a time. */
export const pace = kept<"fitting" | "one" | "all">("pace", ["fitting", "one", "all"]);

/** The units as the server takes them; empty: each piece's own. */
export function unitsWord(): string {
  return units.value === "own" ? "" : units.value;
}

effect(() => {
  const root = document.documentElement;
  if (theme.value === "device") delete root.dataset["theme"];
  else root.dataset["theme"] = theme.value;
});
