// The ripple: what an edit would move, from and to.

import type { ComponentChildren, VNode } from "preact";
import { Frac } from "./frac";
import { type Fineness, text } from "./length";
import type { Ripple } from "./types";
import { Told } from "./verdict";
import { counted, kilograms, money, rounded, sentence } from "./words";

const mostShown = 8;

function Move({ name, from, to }: { name: ComponentChildren; from: ComponentChildren; to: ComponentChildren }): VNode {
  return (
    <li>
      <span class="move-name">{name}</span>
      <span class="move-from">{from}</span>
      <span class="move-arrow" aria-label="becomes">→</span>
      <span class="move-to">{to}</span>
    </li>
  );
}

function Group({ title, all }: { title: string; all: VNode[] }): VNode | null {
  if (all.length === 0) return null;
  return (
    <section class="moves">
      <h3>{title}</h3>
      <ul>{all.slice(0, mostShown)}</ul>
      {all.length > mostShown && (
        <details class="fold">
          <summary>{all.length - mostShown} more</summary>
          <ul>{all.slice(mostShown)}</ul>
        </details>
      )}
    </section>
  );
}

function whole(r: Ripple, currency: string): VNode[] {
  const out: VNode[] = [];
  const cents = (c: number | null): string => money(c === null ? null : c / 100, currency);
  if (r.money.from !== r.money.to) out.push(<Move key="money" name="Price" from={cents(r.money.from)} to={cents(r.money.to)} />);
  if (r.days.from !== r.days.to) out.push(<Move key="days" name="Days" from={r.days.from} to={r.days.to} />);
  if (kilograms(r.massKg.from) !== kilograms(r.massKg.to)) {
    out.push(<Move key="mass" name="Weight" from={kilograms(r.massKg.from)} to={kilograms(r.massKg.to)} />);
  }
  return out;
}

function made(r: Ripple): VNode[] {
  return [
    ...r.parts.added.map((t) => <Move key={`a${t}`} name={t} from="none" to="new" />),
    ...r.parts.gone.map((t) => <Move key={`g${t}`} name={t} from="there" to="gone" />),
  ];
}

/** The ripple in one sentence, to be said aloud. */
export function spoken(r: Ripple, currency: string): string {
  const parts: string[] = [];
  if (r.cuts.length > 0) parts.push(`${counted(r.cuts.length, "cut")} ${r.cuts.length === 1 ? "moves" : "move"}`);
  if (r.boards.length > 0) parts.push(`${counted(r.boards.length, "line")} to buy ${r.boards.length === 1 ? "changes" : "change"}`);
  if (r.findings.length > 0) parts.push(`${counted(r.findings.length, "finding")} ${r.findings.length === 1 ? "turns" : "turn"}`);
  if (r.money.from !== r.money.to) parts.push(`the price becomes ${money(r.money.to === null ? null : r.money.to / 100, currency)}`);
  if (r.days.from !== r.days.to) parts.push(`${counted(r.days.to, "day")} instead of ${r.days.from}`);
  return parts.length === 0 ? "Nothing moves." : `${sentence(parts.join(", "))}.`;
}

/** Everything that moves, in groups. */
export function Groups({ ripple: r, f }: { ripple: Ripple; f: Fineness }): VNode {
  return (
    <div class="ripple-groups" tabIndex={0} role="group" aria-label="What moves, in detail">
      <Group title="The whole" all={whole(r, r.money.currency)} />
      <Group title="Findings" all={r.findings.map((x) => (
        <Move key={`${x.check} ${x.place}`} name={<>{sentence(x.check)} <span class="soft">{x.place}</span></>}
          from={x.from ? <Told of={x.from} /> : "none"} to={x.to ? <Told of={x.to} /> : "gone"} />
      ))} />
      <Group title="Cuts" all={r.cuts.map((c) => (
        <Move key={`${c.tag} ${c.what}`} name={<><b class="tag">{c.tag}</b> {c.name}{c.what !== "cut" && `, ${c.what}`}{c.count > 1 && <span class="soft"> × {c.count}</span>}</>}
          from={<Frac text={text(c.from, f)} />} to={<Frac text={text(c.to, f)} />} />
      ))} />
      <Group title="To buy" all={r.boards.map((b) => (
        <Move key={b.item} name={<Frac text={b.item} />} from={`${rounded(b.from, 2)}`} to={`${rounded(b.to, 2)} ${b.unit}`} />
      ))} />
      <Group title="Parts" all={made(r)} />
    </div>
  );
}
