// What was read from the server, kept by address and read anew when the server says that it changed.

import { type Signal, signal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { read, readText, Trouble } from "./asking";

/** A value on its way, here, or not to be had; an old value stays while a new one comes. */
export interface Reading<T> {
  readonly value: T | undefined;
  readonly trouble: Trouble | undefined;
  readonly at: number; // when the value came, ms; 0: not yet
}

interface Kept { state: Signal<Reading<unknown>>; load: () => Promise<void>; used: number }

const kept = new Map<string, Kept>();
const nothing: Reading<unknown> = { value: undefined, trouble: undefined, at: 0 };

/** Whether the server was silent when last asked. */
export const silent = signal(false);

function keep(url: string, fetcher: (url: string) => Promise<unknown>): Kept {
  const there = kept.get(url);
  if (there) return there;
  const state = signal(nothing);
  const load = async (): Promise<void> => {
    try {
      state.value = { value: await fetcher(url), trouble: undefined, at: Date.now() };
      silent.value = false;
    } catch (e) {
      const trouble = e instanceof Trouble ? e : new Trouble(0, String(e));
      state.value = { ...state.value, trouble };
      if (trouble.silent) silent.value = true;
    }
  };
  const made = { state, load, used: 0 };
  kept.set(url, made);
  void load();
  return made;
}

function useKept<T>(url: string, fetcher: (url: string) => Promise<T>): Reading<T> {
  const k = useMemo(() => keep(url, fetcher), [url]);
  useEffect(() => {
    k.used++;
    return () => void k.used--;
  }, [k]);
  return k.state.value as Reading<T>;
}

/** Reads JSON of the stated shape from an address. */
export function useJSON<T>(url: string): Reading<T> {
  return useKept(url, read<T>);
}

/** Reads text from an address. */
export function useText(url: string): Reading<string> {
  return useKept(url, readText);
}

/** A reading that shows the last value while another address, such as that of other units, is on its way or silent. */
export function useLasting<T>(now: Reading<T>): Reading<T> {
  const last = useRef<Reading<T> | undefined>(undefined);
  if (now.value !== undefined) last.current = now;
  if (now.value !== undefined || !last.current) return now;
  return { ...last.current, trouble: now.trouble };
}

/** Reads anew what is in use among the addresses that fit, and forgets the rest of them. */
export function renew(fits: (url: string) => boolean): void {
  for (const [url, k] of kept) {
    if (!fits(url)) continue;
    if (k.used > 0) void k.load();
    else kept.delete(url);
  }
}
