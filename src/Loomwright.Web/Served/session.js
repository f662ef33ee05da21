// One step a screen. Answers live on this device until the program says they are kept; the link may go and come.
(() => {
  const root = document.querySelector("[data-session]");
  const session = root.dataset.session;
  const all = (query, under = root) => [...under.querySelectorAll(query)];
  const one = (query, under = root) => under.querySelector(query);
  const screens = all("[data-screen]");
  const way = screens.filter((s) => !("aside" in s.dataset));
  const gate = way.findIndex((s) => "gate" in s.dataset);
  const store = {
    read(name, otherwise) { try { return JSON.parse(localStorage.getItem(`${name}.${session}`)) ?? otherwise; } catch { return otherwise; } },
    write(name, value) { try { localStorage.setItem(`${name}.${session}`, JSON.stringify(value)); } catch { say("[data-refused]", "This browser lets nothing be kept on the phone: do not close this page while there is no link."); } },
  };
  let kept = JSON.parse(one("[data-entries]").textContent);
  let waiting = store.read("waiting", []);
  let at = store.read(`at.${root.dataset.stage}`, null);
  let asked = null;
  let lostSince = null;
  let calling = false;
  let before = new Map();

  // What counts now: undone answers and those before a change do not.
  const standing = () => {
    const undone = new Set([...kept, ...waiting].filter((e) => e.kind === "undo").map((e) => e.of));
    const now = new Map();
    before = new Map();
    const had = new Set(kept.map((e) => e.id));
    for (const e of [...kept, ...waiting.filter((w) => !had.has(w.id))]) {
      if (e.kind === "undo" || undone.has(e.id)) continue;
      const place = way.findIndex((s) => s.dataset.screen === e.step);
      if (place < 0) continue;
      if (e.kind === "changed") for (const s of repeated()) {
        if (seen(now.get(s.dataset.screen)) === "not") before.set(s.dataset.screen, e.raw);
        now.delete(s.dataset.screen);
      }
      else if (e.kind !== "hot") now.set(e.step, [...(now.get(e.step) ?? []).filter((o) => o.kind !== e.kind || (o.what ?? "") !== (e.what ?? "")), e]);
    }
    return now;
  };
  // After a change: every check of the stage, and from the gate on everything.
  const repeated = () => way.filter((s, i) => (gate >= 0 && i >= gate) || "check" in s.dataset);
  const seen = (answers) => answers?.find((e) => e.kind === "seen")?.raw;
  const done = (answers) => answers?.some((e) => e.kind === "done") || ["as expected", "not sure"].includes(seen(answers));

  const give = (kind, step, more = {}) => {
    const entry = { id: crypto.randomUUID?.() ?? random(), kind, step, what: "", raw: "", of: null, at: local(new Date()), ...more };
    waiting.push(entry);
    store.write("waiting", waiting);
    call();
    return entry;
  };
  const random = () => [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, "0")).join("");
  const local = (d) => {
    const pad = (n) => String(Math.trunc(Math.abs(n))).padStart(2, "0");
    const off = -d.getTimezoneOffset();
    return new Date(d - d.getTimezoneOffset() * 60000).toISOString().slice(0, -1) + (off < 0 ? "-" : "+") + pad(off / 60) + ":" + pad(off % 60);
  };
  const say = (where, text) => all(where).forEach((e) => { e.textContent = text; e.hidden = text === ""; });

  const go = (name) => {
    at = name;
    store.write(`at.${root.dataset.stage}`, at);
    if (at === "not") otherwise();
    draw();
    const screen = screens.find((s) => s.dataset.screen === at);
    screen?.focus({ preventScroll: true });
    scrollTo(0, 0);
  };
  const forward = () => {
    const now = standing();
    go((way.find((s) => !("end" in s.dataset) && !done(now.get(s.dataset.screen))) ?? way.at(-1)).dataset.screen);
  };

  const draw = () => {
    const now = standing();
    if (!screens.some((s) => s.dataset.screen === at)) at = (way.find((s) => !("end" in s.dataset) && !done(now.get(s.dataset.screen))) ?? way.at(-1)).dataset.screen;
    screens.forEach((s) => { s.hidden = s.dataset.screen !== at; });
    const place = way.findIndex((s) => s.dataset.screen === at);
    say("[data-count]", place < 0 ? "" : `step ${place + 1} of ${way.length}, `);
    one("[data-beads]").replaceChildren(...way.map((s, i) => Object.assign(document.createElement("i"), { className: i === place ? "now" : done(now.get(s.dataset.screen)) ? "done" : "" })));
    const screen = screens.find((s) => s.dataset.screen === at);
    drawAnswers(screen, now.get(at));
    if ("gate" in screen.dataset) drawGate(screen, now);
    if ("end" in screen.dataset) drawEnd(screen, now);
    if (at === "not") say("[data-not-step]", one(`[data-screen="${asked ?? store.read("asked", "")}"] .do`)?.textContent ?? "");
  };
  const mark = (e) => (e.number ? "Kept." : "On this phone.");
  const drawAnswers = (screen, answers) => {
    const answer = answers?.find((e) => e.kind === "seen") ?? answers?.find((e) => e.kind === "done");
    say(`[data-screen="${at}"] [data-answered]`, answer ? `${answer.kind === "done" ? "Done" : answer.raw}. ${mark(answer)}` : "");
    all("[data-seen]", screen).forEach((b) => b.setAttribute("aria-pressed", String(b.dataset.seen === answer?.raw)));
    const again = one("[data-before]", screen);
    if (again) {
      again.hidden = !before.has(at);
      again.textContent = `Last time this was not as expected. Since then: ${before.get(at) || "something was changed"}.`;
    }
    all("[data-onward]", screen).forEach((b) => { b.hidden = !done(answers); });
    for (const read of all("[data-read]", screen)) {
      const given = answers?.find((e) => e.kind === "reading" && e.what === read.dataset.read);
      const word = { asExpected: "inside", not: "outside", unreadable: "this is not a number in the unit asked for: write it like 12.4" }[given?.verdict];
      one("[data-told]", read).textContent = !given ? "" : `${given.raw}${word ? `: ${word}` : ""}. ${mark(given)}${given.number ? "" : " Compare it with the band; the laptop reads it when it is back."}`;
      read.dataset.verdict = given?.verdict ?? "";
    }
  };
  // Each list begins with what was told, or as it should be.
  const otherwise = () => {
    const step = one(`[data-screen="${asked ?? store.read("asked", "")}"]`);
    const should = JSON.parse(step?.dataset.should ?? "null");
    one("[data-instead-form]").hidden = !should;
    const answers = standing().get(step?.dataset.screen);
    for (const told of should ? all("[data-instead]") : []) {
      const select = one("select", told);
      select.value = answers?.find((e) => e.kind === "reading" && e.what === told.dataset.instead)?.raw ?? should[told.dataset.instead];
      select.dataset.was = select.value;
    }
  };
  const toTheCause = async (address) => {
    const step = asked ?? store.read("asked", at);
    for (const told of all("[data-instead]")) {
      const select = one("select", told);
      if (!one("[data-instead-form]").hidden && select.value !== select.dataset.was) give("reading", step, { what: told.dataset.instead, raw: select.value });
      select.dataset.was = select.value;
    }
    say("[data-cause-says]", "Handing over what you told …");
    for (let tries = 0; waiting.length && tries < 8; tries++) {
      await call();
      await new Promise((then) => setTimeout(then, 150));
    }
    if (waiting.length) return say("[data-cause-says]", "No link to the laptop. What you told stays on this phone; press again when it is back.");
    say("[data-cause-says]", "");
    location.href = `${address}?session=${session}&step=${encodeURIComponent(step)}`;
  };
  const drawGate = (screen, now) => {
    const lines = all("[data-line]", one("[data-lines]", screen).content).map((li) => [li.dataset.line, li.textContent]);
    const isOpen = ([step]) => !done(now.get(step));
    const list = (where, some) => one(where, screen).replaceChildren(...some.map(([step, text]) => {
      const li = document.createElement("li");
      const b = Object.assign(document.createElement("button"), { type: "button", textContent: text });
      b.addEventListener("click", () => go(step));
      li.append(b);
      return li;
    }));
    const open = lines.filter(isOpen);
    list("[data-open]", open);
    list("[data-ticked]", lines.filter((l) => !isOpen(l)));
    one("[data-open]", screen).parentElement.hidden = open.length === 0;
    const count = (n, word) => `${n} ${n === 1 ? "line is" : "lines are"} ${word}`;
    say("[data-gate-says]", open.length ? `Not yet: ${count(open.length, "open")}, ${lines.length - open.length} ticked.` : `${count(lines.length, "ticked")}, none is open.`);
    const connect = one("[data-connect]", screen);
    connect.setAttribute("aria-disabled", String(open.length > 0));
    connect.textContent = open.length ? `Connect: closed, ${count(open.length, "open")}` : "Connect";
  };
  const drawEnd = (screen, now) => {
    const checks = way.filter((s) => "check" in s.dataset);
    const open = checks.filter((s) => seen(now.get(s.dataset.screen)) !== "as expected");
    say("[data-end-says]", `${checks.length - open.length} of ${checks.length} checks were as expected${open.length ? "; these were not, or are not sure:" : "."}`);
    one("[data-end-open]", screen).replaceChildren(...open.map((s) => {
      const li = document.createElement("li");
      const b = Object.assign(document.createElement("button"), { type: "button", textContent: `${one(".do", s).textContent} (${seen(now.get(s.dataset.screen)) ?? "not answered"})` });
      b.addEventListener("click", () => go(s.dataset.screen));
      li.append(b);
      return li;
    }));
  };

  const enter = (read, raw) => {
    if (raw.trim() === "") return;
    give("reading", at, { what: read.dataset.read, raw });
    one("input", read).value = "";
    draw();
  };
  const lastGiven = () => {
    const undone = new Set([...kept, ...waiting].filter((e) => e.kind === "undo").map((e) => e.of));
    const had = new Set(kept.map((e) => e.id));
    return [...kept, ...waiting.filter((w) => !had.has(w.id))].filter((e) => e.kind !== "undo" && !undone.has(e.id) && way.some((s) => s.dataset.screen === e.step)).at(-1);
  };
  const undo = () => {
    const last = lastGiven();
    if (!last) return;
    give("undo", last.step, { of: last.id });
    go(last.step);
  };
  const acts = {
    done: () => { give("done", at); forward(); },
    seen: (b) => {
      const screen = one(`[data-screen="${at}"]`);
      const answers = standing().get(at);
      const lacks = all("[data-read]", screen).find((r) => "needed" in r.dataset && !answers?.some((e) => e.kind === "reading" && e.what === r.dataset.read));
      if (b.dataset.seen === "as expected" && lacks) {
        one("[data-told]", lacks).textContent = "Enter what the meter shows first; or press “Not sure”.";
        one("input", lacks).focus();
        return;
      }
      give("seen", at, { raw: b.dataset.seen });
      if (b.dataset.seen !== "not") return forward();
      asked = at;
      store.write("asked", asked);
      go("not");
    },
    enter: (b) => enter(b.closest("[data-read]"), one("input", b.closest("[data-read]")).value),
    nothing: (b) => enter(b.closest("[data-read]"), b.dataset.nothing),
    back: () => go(way[Math.max(0, way.findIndex((s) => s.dataset.screen === at) - 1)].dataset.screen),
    onward: () => { const next = way[way.findIndex((s) => s.dataset.screen === at) + 1]; go(next.dataset.screen); },
    undo,
    undoNot: () => {
      const step = asked ?? store.read("asked", at);
      const told = new Set(all("[data-instead]").map((e) => e.dataset.instead));
      for (const e of standing().get(step) ?? []) if (e.kind === "seen" || (e.kind === "reading" && told.has(e.what))) give("undo", step, { of: e.id });
      go(step);
    },
    cause: (b) => toTheCause(b.dataset.cause),
    connect: (b) => { if (b.getAttribute("aria-disabled") !== "true") { give("done", at); forward(); } },
    changed: () => { give("changed", asked ?? store.read("asked", at)); forward(); },
    openOn: () => { give("done", asked ?? store.read("asked", at)); forward(); },
    hot: () => { if (at !== "not") { asked = at; store.write("asked", asked); } go("hot"); },
    off: () => { give("hot", asked ?? store.read("asked", "")); go("not"); },
    mistake: () => go(asked ?? store.read("asked", null)),
    built: (b) => { give("built", b.dataset.built); b.textContent = "Built, as the file says"; draw(); },
  };
  root.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    const act = button && Object.keys(acts).find((name) => name in button.dataset);
    if (act) acts[act](button);
  });
  root.addEventListener("keydown", (event) => {
    const read = event.key === "Enter" && event.target.closest("[data-read]");
    if (read && event.target.matches("input")) enter(read, event.target.value);
  });

  const linked = (yes) => {
    if (yes) lostSince = null;
    else lostSince ??= new Date();
    say("[data-link]", lostSince ? "no link" : "linked");
    root.classList.toggle("lost-link", lostSince !== null);
    const n = waiting.length;
    say("[data-lost]", lostSince ? `No link to the laptop since ${lostSince.toTimeString().slice(0, 5)}. Go on: the whole stage is on this phone. ${n === 1 ? "1 answer waits" : `${n} answers wait`} here and ${n === 1 ? "goes" : "go"} over when the laptop is back.` : "");
  };
  // Asks twice a second or so, and hands over what waits; an answer goes from the phone only when it came back as kept.
  const call = async () => {
    if (calling) return;
    calling = true;
    try {
      const address = `/session-api/${session}?after=${kept.at(-1)?.number ?? 0}`;
      const limit = { signal: AbortSignal.timeout(1200) };
      const answer = waiting.length ? await fetch(address, { ...limit, method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(waiting.slice(0, 100)) }) : await fetch(address, limit);
      if (answer.ok) {
        const news = await answer.json();
        kept = [...kept, ...news];
        const had = new Set(kept.map((e) => e.id));
        waiting = waiting.filter((e) => !had.has(e.id));
        store.write("waiting", waiting);
        say("[data-refused]", "");
        if (news.length) draw();
      } else {
        say("[data-refused]", answer.status === 409 ? (await answer.json()).why : answer.status === 401 ? "The laptop does not know this phone any more: scan its square again. What you answered stays on this phone." : answer.status === 404 ? "The laptop does not know this session any more. What you answered stays on this phone." : "The laptop did not take this. What you answered stays on this phone.");
      }
      linked(true);
    } catch {
      linked(false);
    } finally {
      calling = false;
    }
  };
  root.classList.add("runs");
  // From a repair: on with what is to be checked again.
  if (location.hash === "#again") {
    history.replaceState(null, "", location.pathname + location.search);
    at = null;
  }
  if (at === "not") otherwise();
  draw();
  call();
  setInterval(call, 700);
})();
