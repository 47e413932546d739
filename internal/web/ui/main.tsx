// The page: which place is shown.

import "./style/base.css";
import "./style/head.css";
import "./style/rod.css";
import "./style/piece.css";
import "./style/shape.css";
import "./style/ripple.css";
import "./style/stages.css";
import "./style/deeper.css";
import "./style/changes.css";
import "./style/answers.css";
import "./style/print.css";

import { render, type VNode } from "preact";
import { useState } from "preact/hooks";
import { AnswersPage } from "./answers";
import { listen } from "./live";
import { Title } from "./parts";
import { PiecePage } from "./piece";
import { PiecesPage } from "./pieces";
import { follow, place } from "./route";
import { Head, Help, useShortcuts, Word } from "./shell";

function Nowhere({ path }: { path: string }): VNode {
  return (
    <main id="main" class="page">
      <Title page="No such page" />
      <p>There is nothing at <code>{path}</code>. <a href="/">The pieces in hand</a> and <a href="/answers">the quick answers</a> are there.</p>
    </main>
  );
}

function Shown(): VNode {
  const p = place.value;
  switch (p.at) {
    case "pieces": return <PiecesPage />;
    case "piece": return <PiecePage key={p.id} id={p.id} stage={p.stage} />;
    case "answers": return <AnswersPage topic={p.topic} />;
    case "nowhere": return <Nowhere path={p.path} />;
  }
}

function Page(): VNode {
  const [help, setHelp] = useState(false);
  useShortcuts(() => setHelp(true));
  return (
    <div class="all" onClick={follow}>
      <Head help={() => setHelp(true)} />
      <Word />
      <Shown />
      <Help open={help} close={() => setHelp(false)} />
    </div>
  );
}

const root = document.getElementById("page");
if (root) render(<Page />, root);
listen();
