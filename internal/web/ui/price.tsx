// Price: what it costs and how that comes about.

import type { VNode } from "preact";
import { Assumed } from "./parts";
import type { PieceProps } from "./piece";
import { money } from "./words";

function Sum({ name, value, currency, strong = false }: { name: string; value: number | null; currency: string; strong?: boolean }): VNode {
  return (
    <div class={strong ? "sum is-strong" : "sum"}>
      <dt>{name}</dt>
      <dd>{money(value, currency)}</dd>
    </div>
  );
}

/** The stage Price. */
export function PricePage({ build }: PieceProps): VNode {
  const { price: p, currency } = build;
  const known = p.total !== null;
  return (
    <div class="price">
      <section class="quote" aria-labelledby="quote">
        <h2 id="quote">Quote</h2>
        <p class="total"><span class="soft">in all, with tax</span> <b data-total>{money(p.total, currency)}</b></p>
        {!known && <p class="note is-wrong">The price can’t be told until the prices below are known.</p>}
        <dl class="sums">
          <Sum name="Price" value={p.price} currency={currency} />
          <Sum name="Tax" value={p.tax} currency={currency} />
          <Sum name="In all" value={p.total} currency={currency} strong />
          <Sum name="Of it as deposit" value={p.deposit} currency={currency} />
        </dl>
      </section>
      <section aria-labelledby="comes">
        <h2 id="comes">How it comes about</h2>
        <dl class="sums">
          <Sum name="Material" value={p.material} currency={currency} />
          <Sum name="Consumables" value={p.consumables} currency={currency} />
          <Sum name="Hours" value={p.hours} currency={currency} />
          <Sum name="Overhead" value={p.overhead} currency={currency} />
          <Sum name="Cost" value={p.cost} currency={currency} strong />
          <Sum name="Margin" value={p.margin} currency={currency} />
          <Sum name="Price" value={p.price} currency={currency} strong />
        </dl>
        {p.warnings.map((w) => <p key={w} class="note">{w}</p>)}
      </section>
      <section aria-labelledby="unknown">
        <h2 id="unknown">Prices that are not known</h2>
        {build.unknown.length === 0 ? <p>None: every price is known.</p> : <ul class="plain">{build.unknown.map((u) => <li key={u}>{u}</li>)}</ul>}
        <Assumed all={p.assumed} title="Taken for granted in the price" />
      </section>
    </div>
  );
}
