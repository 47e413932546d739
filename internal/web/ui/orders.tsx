// Changes that the client asked for and that wait for an answer.

import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { type Trouble, troubleFrom } from "./asking";
import { NotStored } from "./clash";
import { Frac } from "./frac";
import type { Build, OrderLine } from "./types";
import { tell } from "./underway";
import { more, pathWords, sentence, written } from "./words";

function One({ o, currency, answer, busy }: { o: OrderLine; currency: string; answer: (yes: boolean) => void; busy: boolean }): VNode {
  return (
    <li class="order" data-order={o.no}>
      <h4>Change {o.no}{o.words && <>: {sentence(o.words)}</>}</h4>
      <ul class="plain">{o.edits.map((e) => <li key={e.path}>{pathWords(e.path)} becomes <Frac text={e.value} /></li>)}</ul>
      <p>
        <b>{o.cents === null ? "Price not known" : sentence(more(o.cents, currency))}</b>
        {o.ready && <>, ready on <b>{written(o.ready)}</b></>}
      </p>
      <p class="ways">
        <button type="button" class="main-way" disabled={busy} onClick={() => answer(true)} aria-label={`The client says yes to change ${o.no}`}>Client says yes</button>
        <button type="button" disabled={busy} onClick={() => answer(false)} aria-label={`The client says no to change ${o.no}`}>Client says no</button>
      </p>
    </li>
  );
}

/** The orders without an answer; nothing where there are none. */
export function Orders({ id, base, build, orders }: { id: string; base: number; build: Build; orders: readonly OrderLine[] }): VNode | null {
  const [trouble, setTrouble] = useState<Trouble | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const waiting = orders.filter((o) => !o.answered);
  const answer = async (o: OrderLine, yes: boolean): Promise<void> => {
    setBusy(true);
    try {
      await tell(id, base, [{ kind: "answer", names: o.id, yes }]);
      setTrouble(undefined);
    } catch (e) {
      setTrouble(troubleFrom(e));
    } finally {
      setBusy(false);
    }
  };
  if (waiting.length === 0 && !trouble) return null;
  return (
    <div class="orders">
      <h3>Waiting for the client’s answer</h3>
      {trouble && <NotStored trouble={trouble} />}
      <ul>{waiting.map((o) => <One key={o.id} o={o} currency={build.currency} busy={busy} answer={(yes) => void answer(o, yes)} />)}</ul>
    </div>
  );
}
