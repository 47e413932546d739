// Small things that every page is put together from.

import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Reading } from "./reading";
import { clock } from "./words";

/** The page's title, in the window and as its first heading; it takes the focus when the reader comes here. */
export function Title({ page, of, children }: { page: string; of?: string; children?: ComponentChildren }): VNode {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${of ? `${of}: ` : ""}${page} · Rodwright`;
  }, [page, of]);
  useEffect(() => {
    if (document.activeElement !== null && document.activeElement !== document.body) head.current?.focus({ preventScroll: true });
  }, [page, of]);
  return (
    <h1 ref={head} tabIndex={-1}>
      {children ?? page}
    </h1>
  );
}

/** Shows what was read, or in words that it is on its way or why it can't be had. */
export function Here<T>({ from, what, children }: { from: Reading<T>; what: string; children: (value: T) => ComponentChildren }): VNode {
  if (from.value === undefined && from.trouble === undefined) return <p class="waiting" role="status">Fetching {what} …</p>;
  if (from.value === undefined) {
    return (
      <div class="note is-wrong" role="alert">
        <p><strong>{what.charAt(0).toUpperCase() + what.slice(1)} can’t be shown.</strong> {from.trouble?.message}</p>
        <p>{from.trouble?.right || "Nothing is lost. Look whether the program is still running where it was started, then load this page again."}</p>
      </div>
    );
  }
  return (
    <>
      {from.trouble && (
        <p class="note" role="status">Shown is what came at {clock(from.at)}. {from.trouble.message}</p>
      )}
      {children(from.value)}
    </>
  );
}

/** A named number in large figures. */
export function Big({ name, children }: { name: string; children: ComponentChildren }): VNode {
  return (
    <div class="big">
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** A row of buttons of which one is chosen. */
export function Choice<T extends string>({ name, value, all, set }: {
  name: string; value: T; all: readonly (readonly [T, string])[]; set: (v: T) => void;
}): VNode {
  return (
    <fieldset class="choice">
      <legend>{name}</legend>
      {all.map(([v, word]) => (
        <label key={v} class={v === value ? "is-chosen" : ""}>
          <input type="radio" name={name} checked={v === value} onChange={() => set(v)} />
          <span>{word}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** The same as a list that opens, where there is little room. */
export function Pick<T extends string>({ name, value, all, set }: {
  name: string; value: T; all: readonly (readonly [T, string])[]; set: (v: T) => void;
}): VNode {
  return (
    <label class="pick">
      <span>{name}</span>
      <select value={value} onChange={(e) => { const v = all.find(([w]) => w === e.currentTarget.value); if (v) set(v[0]); }}>
        {all.map(([v, word]) => <option key={v} value={v} selected={v === value}>{word}</option>)}
      </select>
    </label>
  );
}

/** A list of what was taken for granted, folded away. */
export function Assumed({ all, title = "Taken for granted" }: { all: readonly string[]; title?: string }): VNode | null {
  if (all.length === 0) return null;
  return (
    <details class="fold">
      <summary>{title} ({all.length})</summary>
      <ul class="plain">{all.map((a) => <li key={a}>{a}</li>)}</ul>
    </details>
  );
}
