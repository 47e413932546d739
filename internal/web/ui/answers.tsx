// Answers: one formula of the trade, answered at once, without a piece.

import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { answer, Trouble } from "./asking";
import { Frac } from "./frac";
import { Assumed, Here, Title } from "./parts";
import { useJSON } from "./reading";
import { seeking } from "./route";
import type { Answer, Topic, TopicInput, Topics } from "./types";
import { sentence } from "./words";

function fits(t: Topic, sought: string): boolean {
  const words = sought.toLowerCase().split(/\s+/).filter((w) => w !== "");
  const all = `${t.topic} ${t.question} ${t.inputs.map((i) => `${i.name} ${i.help}`).join(" ")}`.toLowerCase();
  return words.every((w) => all.includes(w));
}

function List({ topics, at }: { topics: Topic[]; at: string }): VNode {
  const [sought, setSought] = useState("");
  const shown = topics.filter((t) => fits(t, sought));
  const field = useRef<HTMLInputElement>(null);
  const wanted = seeking.value;
  useEffect(() => {
    if (!wanted) return;
    field.current?.focus();
    seeking.value = false;
  }, [wanted]);
  return (
    <div class="topics">
      <label class="search">
        <span>Look for</span>
        <input ref={field} type="search" id="search" value={sought} placeholder="sag, shelf, pipe …" onInput={(e) => setSought(e.currentTarget.value)} />
      </label>
      <p class="for-ears" role="status">{sought === "" ? "" : `${shown.length} of ${topics.length} questions`}</p>
      {shown.length === 0 && <p>No question has these words. There are {topics.length}; take words out to see more.</p>}
      <ul>
        {shown.map((t) => (
          <li key={t.topic}>
            <a href={`/answers/${encodeURIComponent(t.topic)}`} {...(t.topic === at ? { "aria-current": "page" as const } : {})}>
              <b>{sentence(t.question)}</b> <span>{t.topic}</span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

function helpOf(i: TopicInput): string {
  const more = [i.optional && i.default ? `left out: ${i.default}` : i.optional ? "may be left out" : "", i.example ? `for example ${i.example}` : ""];
  return [sentence(i.help), ...more.filter((m) => m !== "")].join("; ");
}

function Input({ i, value, set, wrong }: { i: TopicInput; value: string; set: (v: string) => void; wrong: Trouble | undefined }): VNode {
  const key = `a-${i.name}`;
  const about = `${key}-help${wrong ? ` ${key}-wrong` : ""}`;
  const shared = { id: key, name: i.name, value, "aria-describedby": about, "aria-invalid": wrong !== undefined };
  return (
    <div class={wrong ? "ask is-refused" : "ask"}>
      <label for={key}>{sentence(i.name.replace(/_/g, " "))}</label>
      {i.choices && i.choices.length > 0 ? (
        <select {...shared} onChange={(e) => set(e.currentTarget.value)}>
          {i.optional && <option value="">not given</option>}
          {i.choices.map((c) => <option key={c} value={c}>{c}</option>)}
        </select>
      ) : <input type="text" autocomplete="off" spellcheck={false} {...shared} onInput={(e) => set(e.currentTarget.value)} />}
      <p class="ask-help" id={`${key}-help`}><Frac text={helpOf(i)} /></p>
      {wrong && <p class="entry-wrong" id={`${key}-wrong`} role="alert">{sentence(wrong.message)} {wrong.right}</p>}
    </div>
  );
}

function Result({ of: a }: { of: Answer }): VNode {
  const [first, ...rest] = a.answers;
  return (
    <div class="answer">
      {first && <p class="answer-first"><span class="soft">{sentence(first.name.replace(/_/g, " "))}</span> <b><Frac text={first.shown} /></b></p>}
      {rest.length > 0 && <dl class="inputs">{rest.map((r) => <div key={r.name}><dt>{r.name.replace(/_/g, " ")}</dt><dd><Frac text={r.shown} /></dd></div>)}</dl>}
      <h3>Why</h3>
      <ul class="why">
        {a.because.map((b, n) => (
          <li key={n}>
            <p class="formula">{b.formula}</p>
            <dl class="inputs">{Object.entries(b.inputs ?? {}).map(([name, shown]) => <div key={name}><dt>{name}</dt><dd><Frac text={shown} /></dd></div>)}</dl>
            {b.source && <p class="source">{b.source}</p>}
            {b.range && <p class="source">Holds for {b.range}</p>}
          </li>
        ))}
      </ul>
      {(a.cautions ?? []).length > 0 && <ul class="cautions">{(a.cautions ?? []).map((c) => <li key={c}>{sentence(c)}</li>)}</ul>}
      <Assumed all={a.assumed ?? []} />
    </div>
  );
}

/** What stands in the form at first: what must be given, as in the example. */
function beginning(t: Topic): Record<string, string> {
  return Object.fromEntries(t.inputs.map((i) => [i.name, i.optional ? "" : (i.choices?.[0] ?? "")]));
}

function Question({ t }: { t: Topic }): VNode {
  const [words, setWords] = useState<Record<string, string>>(() => beginning(t));
  const [result, setResult] = useState<Answer | undefined>(undefined);
  const [wrong, setWrong] = useState<Trouble | undefined>(undefined);
  const asked = useRef(0);
  const send = async (): Promise<void> => {
    const mine = ++asked.current;
    try {
      const got = await answer(t.topic, Object.fromEntries(Object.entries(words).filter(([, v]) => v.trim() !== "")));
      if (mine !== asked.current) return;
      setResult(got);
      setWrong(undefined);
    } catch (e) {
      if (mine !== asked.current) return;
      setResult(undefined);
      setWrong(e instanceof Trouble ? e : new Trouble(0, String(e)));
    }
  };
  const placed = t.inputs.some((i) => i.name === wrong?.path);
  return (
    <div class="question">
      <h2>{sentence(t.question)}</h2>
      {t.rules && t.rules.length > 0 && <p class="soft">{sentence(t.rules.join("; "))}.</p>}
      <form onSubmit={(e) => { e.preventDefault(); void send(); }}>
        {t.inputs.map((i) => (
          <Input key={i.name} i={i} value={words[i.name] ?? ""} set={(v) => setWords({ ...words, [i.name]: v })} wrong={wrong?.path === i.name ? wrong : undefined} />
        ))}
        <p class="ask-ways">
          <button type="submit" class="main-way">Answer</button>
          {t.example && <button type="button" onClick={() => setWords({ ...beginning(t), ...t.example })}>Fill in the example</button>}
        </p>
        {wrong && !placed && <p class="note is-wrong" role="alert">{sentence(wrong.message)} {wrong.right}</p>}
      </form>
      <div aria-live="polite">{result && <Result of={result} />}</div>
    </div>
  );
}

/** The page of quick answers; topic is empty where none is open. */
export function AnswersPage({ topic }: { topic: string }): VNode {
  const read = useJSON<Topics>("/api/answers");
  const open = read.value?.topics.find((t) => t.topic === topic);
  const question = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (open && matchMedia("(max-width: 60rem)").matches) question.current?.scrollIntoView();
  }, [open?.topic]);
  return (
    <main id="main" class="page answers">
      <Title page="Answers" {...(open ? { of: sentence(open.topic.replace(/-/g, " ")) } : {})} />
      <Here from={read} what="the questions">
        {({ topics }) => (
          <div class={open ? "answers-two is-open" : "answers-two"}>
            {open && (
              <div class="answers-open" ref={question}>
                <p class="back"><a href="/answers">All {topics.length} questions</a></p>
                <Question key={open.topic} t={open} />
              </div>
            )}
            {!open && topic !== "" && <p class="note is-wrong">There is no question “{topic}”. Choose one of these.</p>}
            <List topics={topics} at={topic} />
          </div>
        )}
      </Here>
    </main>
  );
}
