// What a change does, weighed: in sentences, part by part, and in money and time.

import type { ComponentChildren, VNode } from "preact";
import { Frac } from "./frac";
import { type Fineness, fineness, text } from "./length";
import { Groups } from "./ripple";
import type { Build, Fate, Weighed } from "./types";
import { Sentences } from "./sentences";
import { Shape, Told, verdictWord } from "./verdict";
import { counted, dayAhead, hours, money, more, sentence } from "./words";

const mostShown = 6; // of a list; the rest is folded

function Off({ of, f }: { of: Fate; f: Fineness }): VNode {
  if (of.off.length === 0) return <>–</>;
  return <ul>{of.off.map((o) => <li key={o.side}><b><Frac text={text(o.mm, f)} /></b> {o.side}</li>)}</ul>;
}

/** Where a part is now and how far it is made. */
function whence(of: Fate): string {
  return `${of.from || "on the rack"}, ${of.state}`;
}

/** Parts of which the same becomes, together, in the order they were told of. */
function alike(fates: readonly Fate[]): Fate[][] {
  const groups = new Map<string, Fate[]>();
  for (const f of fates) {
    const key = JSON.stringify([f.words, f.off, f.tools, f.shows, f.cents, f.state]);
    groups.set(key, [...(groups.get(key) ?? []), f]);
  }
  return [...groups.values()];
}

/** What else could become of parts, each way once. */
function Others({ all, currency }: { all: readonly Fate[]; currency: string }): VNode | null {
  const ways = all.flatMap((x) => x.others.map((o) => ({ ...o, line: `${all.length > 1 ? `${x.label}: ` : ""}${all.length > 1 ? o.words : sentence(o.words)}` })));
  if (ways.length === 0) return null;
  return (
    <details class="fold">
      <summary>Next best</summary>
      <ul class="plain">{ways.map((o, i) => <li key={i}><Frac text={o.line} />: {more(o.cents, currency)}</li>)}</ul>
    </details>
  );
}

function FateRow({ all, f, currency, shows }: { all: readonly Fate[]; f: Fineness; currency: string; shows: boolean }): VNode | null {
  const [of] = all;
  if (!of) return null;
  return (
    <tr data-label={all.map((x) => x.label).join(" ")}>
      <th scope="row">{all.map((x) => <div key={x.thing}><span class="tag">{x.label}</span> <span class="soft">{whence(x)}</span></div>)}</th>
      <td>
        <Frac text={sentence(of.words)} />
        {of.tools.length > 0 && <span class="soft">with <Frac text={of.tools.join(", ")} /></span>}
        <Others all={all} currency={currency} />
      </td>
      <td data-what="off" class={of.off.length === 0 ? "is-none" : ""}><Off of={of} f={f} /></td>
      {shows && <td data-what="shows" class={of.shows.length === 0 ? "is-none" : ""}>{of.shows.length > 0 ? <Frac text={of.shows.join("; ")} /> : "–"}</td>}
      <td data-what="cost" class="num">{money((of.cents * all.length) / 100, currency)}{all.length > 1 && <span class="soft">each {money(of.cents / 100, currency)}</span>}</td>
    </tr>
  );
}

/** The parts of which nothing becomes, in one folded line. */
function Unchanged({ all }: { all: readonly Fate[] }): VNode | null {
  if (all.length === 0) return null;
  return (
    <details class="fold">
      <summary>{counted(all.length, "part")} {all.length === 1 ? "stays as it is" : "stay as they are"}</summary>
      <ul class="unchanged">{all.map((x) => <li key={x.thing}><span class="tag">{x.label}</span> <span class="soft">{whence(x)}</span></li>)}</ul>
    </details>
  );
}

function Fates({ w, f, currency }: { w: Weighed; f: Fineness; currency: string }): VNode | null {
  if (w.fates.length === 0) return null;
  const turned = alike(w.fates.filter((x) => !x.unchanged));
  const shows = turned.some(([x]) => x && x.shows.length > 0);
  return (
    <>
      {turned.length === 0 ? <h3>The parts already made</h3> : (
        <div class="table-wrap" role="region" aria-label="The parts already made" tabIndex={0}>
          <table class="fates">
            <caption>The parts already made</caption>
            <thead>
              <tr>
                <th scope="col">Part</th><th scope="col">What becomes of it</th><th scope="col">Off</th>{shows && <th scope="col">What shows</th>}<th scope="col" class="num">Cost</th>
              </tr>
            </thead>
            <tbody>{turned.map((all) => <FateRow key={all[0]?.thing} all={all} f={f} currency={currency} shows={shows} />)}</tbody>
          </table>
        </div>
      )}
      <Unchanged all={w.fates.filter((x) => x.unchanged)} />
    </>
  );
}

function List({ title, all }: { title: string; all: readonly ComponentChildren[] }): VNode | null {
  if (all.length === 0) return null;
  const rows = all.map((x, i) => <li key={i}>{x}</li>);
  return (
    <section>
      <h3>{title}</h3>
      <ul class="plain">{rows.slice(0, mostShown)}</ul>
      {rows.length > mostShown && <details class="fold"><summary>{rows.length - mostShown} more</summary><ul class="plain">{rows.slice(mostShown)}</ul></details>}
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
      <div class="big"><dt>Work left</dt><dd>{counted(days.to, "day")}, {days.from === days.to ? "as before" : `was ${days.from}`}</dd></div>
      <div class="big"><dt>May be promised</dt><dd data-promise>in {counted(w.promise.to, "day")}, {w.promise.from === w.promise.to ? "as before" : `was ${w.promise.from}`} <span class="soft">{dayAhead(w.promise.to)}</span></dd></div>
    </dl>
  );
}

/** Findings that say the same as before with another figure, folded away: nobody has to act on them. */
function Moved({ w }: { w: Weighed }): VNode | null {
  if (w.figures.length === 0) return null;
  return (
    <details class="fold figures-moved">
      <summary>Figures that move ({w.figures.length})</summary>
      <p class="soft">Each figure with its limit behind it. What stood still stands, what was tight stays tight.</p>
      <ul class="moves">{w.figures.map((m, i) => (
        <li key={i}>
          <Shape of={m.verdict} />
          <div>
            <span class="for-ears">{verdictWord(m.verdict)} as before: </span>{sentence(m.check)} <span class="soft"><Frac text={m.place} /></span>{" "}
            <span class="move-from"><Frac text={m.from} /></span> <span aria-label="becomes">→</span> <span class="move-to"><Frac text={m.to} /></span>
          </div>
        </li>
      ))}</ul>
    </details>
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
      <Sentences all={w.words} />
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
      <Moved w={w} />
      <details class="fold">
        <summary>Everything that moves, from and to</summary>
        <Groups ripple={w.ripple} f={f} />
      </details>
    </div>
  );
}
