// What a change does, weighed: in sentences, part by part, and in money and time.

import type { ComponentChildren, VNode } from "preact";
import { Frac } from "./frac";
import { type Fineness, fineness, text } from "./length";
import { Groups } from "./ripple";
import type { Build, Fate, Weighed } from "./types";
import { Told } from "./verdict";
import { hours, money, more, sentence } from "./words";

function Off({ of, f }: { of: Fate; f: Fineness }): VNode {
  if (of.off.length === 0) return <>–</>;
  return <ul>{of.off.map((o) => <li key={o.side}><b><Frac text={text(o.mm, f)} /></b> {o.side}</li>)}</ul>;
}

function FateRow({ of, f, currency }: { of: Fate; f: Fineness; currency: string }): VNode {
  return (
    <tr class={of.unchanged ? "is-unchanged" : ""} data-label={of.label}>
      <th scope="row"><span class="tag">{of.label}</span> <span class="soft">{of.from || "on the rack"}, {of.state}</span></th>
      <td>
        {of.unchanged ? "stays as it is" : <Frac text={sentence(of.words)} />}
        {of.others.length > 0 && !of.unchanged && (
          <details class="fold">
            <summary>Next best</summary>
            <ul class="plain">{of.others.map((o, i) => <li key={i}><Frac text={sentence(o.words)} />: {more(o.cents, currency)}</li>)}</ul>
          </details>
        )}
      </td>
      <td data-what="off" class={of.off.length === 0 ? "is-none" : ""}><Off of={of} f={f} /></td>
      <td data-what="with" class={of.tools.length === 0 ? "is-none" : ""}>{of.tools.length > 0 ? <Frac text={of.tools.join(", ")} /> : "–"}</td>
      <td data-what="shows" class={of.shows.length === 0 ? "is-none" : ""}>{of.shows.length > 0 ? of.shows.join("; ") : "–"}</td>
      <td data-what="cost" class={of.unchanged ? "num is-none" : "num"}>{of.unchanged ? "–" : money(of.cents / 100, currency)}</td>
    </tr>
  );
}

function Fates({ w, f, currency }: { w: Weighed; f: Fineness; currency: string }): VNode | null {
  if (w.fates.length === 0) return null;
  const sorted = [...w.fates.filter((x) => !x.unchanged), ...w.fates.filter((x) => x.unchanged)];
  return (
    <div class="table-wrap" role="region" aria-label="The parts already made" tabIndex={0}>
      <table class="fates">
        <caption>The parts already made</caption>
        <thead>
          <tr>
            <th scope="col">Part</th><th scope="col">What becomes of it</th><th scope="col">Off</th><th scope="col">With</th><th scope="col">What shows</th><th scope="col" class="num">Cost</th>
          </tr>
        </thead>
        <tbody>{sorted.map((x) => <FateRow key={x.thing} of={x} f={f} currency={currency} />)}</tbody>
      </table>
    </div>
  );
}

function List({ title, all }: { title: string; all: readonly ComponentChildren[] }): VNode | null {
  if (all.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <ul class="plain">{all.map((x, i) => <li key={i}>{x}</li>)}</ul>
    </section>
  );
}

function wordsOfHours(h: number): string {
  if (Math.round(h * 60) === 0) return "no change";
  return `${hours(Math.abs(h))} ${h > 0 ? "more" : "less"}`;
}

/** Money, hours and days of the change, in large figures. */
function Sums({ w }: { w: Weighed }): VNode {
  const { days } = w.ripple;
  return (
    <dl class="figures weighed-sums">
      <div class="big"><dt>Price</dt><dd data-cost>{w.cost.total === null ? "not known" : w.cost.total === 0 ? "no change" : more(w.cost.total, w.cost.currency)}</dd></div>
      <div class="big"><dt>Of it for parts already made</dt><dd>{money(w.cost.parts / 100, w.cost.currency)}</dd></div>
      <div class="big"><dt>Hands</dt><dd>{wordsOfHours(w.cost.handsH)}</dd></div>
      <div class="big"><dt>Days left</dt><dd>{days.from === days.to ? `${days.to}, as before` : `${days.to} instead of ${days.from}`}</dd></div>
    </dl>
  );
}

/** The answer of the scales; below it what can be done about it. */
export function WeighedShown({ w, build, children }: { w: Weighed; build: Build; children: ComponentChildren }): VNode {
  const f = fineness(build.fineness);
  const { currency } = w.cost;
  if (w.nothing) return <div class="weighed"><p class="weighed-words"><strong>Nothing changes.</strong></p>{children}</div>;
  return (
    <div class="weighed" role="group" aria-label="What the change does">
      <Sums w={w} />
      <ul class="weighed-words">{w.words.map((x, i) => <li key={i}><Frac text={sentence(x)} /></li>)}</ul>
      {children}
      <Fates w={w} f={f} currency={currency} />
      <div class="weighed-lists">
        <List title="To be made again" all={w.again.map((a) => <><b class="tag">{a.tag}</b> {a.place}, {money(a.cents / 100, currency)}: <Frac text={a.why} /></>)} />
        <List title="Work that puts parts right" all={w.redo.map((r) => <><Frac text={sentence(r.title)} /> <span class="soft">{[r.tool, hours(r.handsH)].filter((x) => x !== "").join(", ")}</span></>)} />
        <List title="Laid out again" all={w.stock.map((s) => <><b class="tag">{s.tag}</b> {s.before.join(", ") || "nothing"} becomes {s.after.join(", ") || "nothing"}</>)} />
        <List title="Made in vain" all={w.cost.lost} />
        <List title="Findings that turn" all={w.ripple.findings.map((t) => (
          <>{sentence(t.check)} <span class="soft">{t.place}</span> {t.from ? <Told of={t.from} /> : "none"} → {t.to ? <Told of={t.to} /> : "gone"}</>
        ))} />
        <List title="Papers out of date" all={w.papers.map((p) => <Frac text={p} />)} />
        <List title="Prices that are not known" all={w.unknown.map((u) => <Frac text={u} />)} />
      </div>
      <details class="fold">
        <summary>Everything that moves, from and to</summary>
        <Groups ripple={w.ripple} f={f} />
      </details>
    </div>
  );
}
