// One step a screen. Answers live on this device until the program says they are kept; the link may go and come.
(() => {
  const root = document.querySelector("[data-session]");
  const session = root.dataset.session;
  const all = (query, under = root) => [...under.querySelectorAll(query)];
  const one = (query, under = root) => under.querySelector(query);
  const screens = all("[data-screen]");
  const way = screens.filter((s) => !("aside" in s.dataset));
  const gate = way.findIndex((s) => "gate" in s.dataset);
  // What counts of a step, and the same of the stages before.
  const own = way.map((s, i) => ({ id: s.dataset.screen, check: "check" in s.dataset, late: gate >= 0 && i >= gate }));
  const earlier = JSON.parse(one("[data-earlier]").textContent);
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
  let wasNot = false;

  // What counts now: undone answers and those before a change do not.
  const standing = (of = own) => {
    const undone = new Set([...kept, ...waiting].filter((e) => e.kind === "undo").map((e) => e.of));
    const now = new Map();
    const ids = new Set(of.map((s) => s.id));
    const since = new Map();
    const had = new Set(kept.map((e) => e.id));
    for (const e of [...kept, ...waiting.filter((w) => !had.has(w.id))]) {
      if (e.kind === "undo" || undone.has(e.id)) continue;
      if (!ids.has(e.step)) continue;
      if (e.kind === "changed" || e.kind === "hot") for (const { id } of of.filter((s) => s.late || s.check)) {
        if (seen(now.get(id)) === "not" || (e.kind === "hot" && id === e.step)) since.set(id, e);
        else if (e.kind === "changed" && since.has(id)) since.set(id, e);
        now.delete(id);
      }
      else now.set(e.step, [...(now.get(e.step) ?? []).filter((o) => o.kind !== e.kind || (o.what ?? "") !== (e.what ?? "")), e]);
    }
    if (of === own) before = since;
    return now;
  };
  const seen = (answers) => answers?.find((e) => e.kind === "seen")?.raw;
  const done = (answers) => answers?.some((e) => e.kind === "done") || ["as expected", "not sure"].includes(seen(answers));
  const outside = (answers) => answers?.some((e) => e.kind === "reading" && ["not", "unreadable"].includes(e.verdict));
  // Nothing goes on with power but power-down once a check with power on was not as expected.
  const leftNow = (now) => {
    const stop = way.findIndex((s) => s.dataset.power === "on" && seen(now.get(s.dataset.screen)) === "not");
    return way.filter((s, i) => stop < 0 || i <= stop || "end" in s.dataset || (s.dataset.act === "PowerDown" && !("bare" in way[stop].dataset)));
  };
  const nextOf = (now) => {
    const left = leftNow(now);
    const stop = left.findIndex((s) => s.dataset.power === "on" && seen(now.get(s.dataset.screen)) === "not");
    return left.find((s, i) => i > stop && !("end" in s.dataset) && !done(now.get(s.dataset.screen))) ?? way.at(-1);
  };
  // How a line before power stands.
  const stands = (answers) => seen(answers) === "not" || outside(answers) ? "wrong" : !done(answers) ? "open" : seen(answers) === "not sure" ? "unsure" : "ticked";

  const give = (kind, step, more = {}) => {
    const entry = { id: crypto.randomUUID?.() ?? random(), kind, step, what: "", raw: "", of: null, at: local(new Date()), ...more };
    wait(entry);
    call();
    return entry;
  };
  // Two pages of one phone keep one list.
  const refused = new Set();
  const wait = (...more) => {
    const had = new Set(kept.map((e) => e.id));
    waiting = [...new Map([...store.read("waiting", []), ...waiting, ...more].map((e) => [e.id, e])).values()].filter((e) => !had.has(e.id) && !refused.has(e.id));
    store.write("waiting", waiting);
  };
  const hand = (to, after, entries) => fetch(`/session-api/${to}?after=${after}`, { signal: AbortSignal.timeout(1200), method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(entries.slice(0, 100)) });
  // What was given in a session that is not shown any more goes over too.
  const others = async () => {
    for (const key of Object.keys(localStorage).filter((k) => k.startsWith("waiting.") && k !== `waiting.${session}`)) {
      const left = JSON.parse(localStorage.getItem(key) ?? "[]");
      const answer = left.length && await hand(key.slice("waiting.".length), Number.MAX_SAFE_INTEGER, left);
      if (answer && answer.ok) localStorage.setItem(key, JSON.stringify(left.slice(100)));
    }
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
  const forward = () => go(nextOf(standing()).dataset.screen);
  const beside = (by) => {
    const left = leftNow(standing());
    go(left[Math.min(left.length - 1, Math.max(0, left.findIndex((s) => s.dataset.screen === at) + by))].dataset.screen);
  };
  const askedStep = () => asked ?? store.read("asked", "");
  // Whether the loom hangs free or live after that step: then it is put back before the ohms.
  const hangs = (now = standing()) => {
    const step = way.find((s) => s.dataset.screen === askedStep());
    const on = gate >= 0 && done(now.get(own[gate].id)) && way.some((s) => s.dataset.act === "PowerDown" && !done(now.get(s.dataset.screen)));
    return one("[data-put-back] li") && step && ((step.dataset.power === "on" && !("bare" in step.dataset)) || on);
  };

  const draw = () => {
    const now = standing();
    const left = leftNow(now);
    if (!screens.some((s) => s.dataset.screen === at && ("aside" in s.dataset || left.includes(s)))) at = nextOf(now).dataset.screen;
    screens.forEach((s) => { s.hidden = s.dataset.screen !== at; });
    const place = way.findIndex((s) => s.dataset.screen === at);
    say("[data-count]", place < 0 ? "" : `step ${place + 1} of ${way.length}, `);
    one("[data-beads]").replaceChildren(...way.map((s, i) => Object.assign(document.createElement("i"), { className: i === place ? "now" : done(now.get(s.dataset.screen)) ? "done" : "" })));
    const screen = screens.find((s) => s.dataset.screen === at);
    drawAnswers(screen, now.get(at));
    if ("gate" in screen.dataset) drawGate(screen, now);
    if ("end" in screen.dataset) drawEnd(screen, now);
    const told = one(`[data-screen="${asked ?? store.read("asked", "")}"]`);
    if (at === "not") say("[data-not-step]", one(".do", told ?? root)?.textContent ?? "");
    if (at === "not") all("[data-when]", screen).forEach((p) => { p.hidden = !p.dataset.when.split(" ").includes(told && "bare" in told.dataset ? "bare" : told?.dataset.power ?? "on"); });
    if (at === "not") all("[data-was-not]", screen).forEach((p) => { p.hidden = !wasNot; });
    if (at === "hot-at") drawHot(screen);
  };
  // What is to be read off at a step and was not entered.
  const lacking = (screen, answers) => all("[data-read]", screen).filter((r) => !answers?.some((e) => e.kind === "reading" && e.what === r.dataset.read));
  // As it was typed, with the unit it was taken in.
  const withUnit = (raw, sign) => { const text = raw.trim(); return /[kmMµ]$/.test(text) ? text + sign : /\p{L}|Ω/u.test(text) || sign === "" ? text : `${text} ${sign}`; };
  const mark = (e) => (e.number ? "Kept." : "On this phone.");
  const drawAnswers = (screen, answers) => {
    const answer = answers?.find((e) => e.kind === "seen") ?? answers?.find((e) => e.kind === "done");
    say(`[data-screen="${at}"] [data-answered]`, answer ? `${answer.kind === "done" ? "Done" : answer.raw}. ${mark(answer)}` : "");
    all("[data-seen]", screen).forEach((b) => b.setAttribute("aria-pressed", String(b.dataset.seen === answer?.raw)));
    const again = one("[data-before]", screen);
    if (again) {
      again.hidden = !before.has(at);
      const since = before.get(at);
      again.textContent = `Last time ${since?.kind === "hot" ? "something got hot, smoked or smelt here" : `this was not as expected. Since then: ${since?.raw || "something was changed"}`}.`;
    }
    all("[data-onward]", screen).forEach((b) => { b.hidden = !done(answers); });
    for (const read of all("[data-read]", screen)) {
      const given = answers?.find((e) => e.kind === "reading" && e.what === read.dataset.read);
      const word = { asExpected: "inside", not: "outside", unreadable: "this is not a number in the unit asked for: write it like 12.4" }[given?.verdict];
      one("[data-told]", read).textContent = !given ? "" : given.verdict === "unreadable" ? `${given.raw}: ${word}.` : `${withUnit(given.raw, read.dataset.sign)}${word ? `: ${word}` : ""}. ${mark(given)}${given.number ? "" : " Compare it with the band; the laptop reads it when it is back."}`;
      read.dataset.verdict = given?.verdict ?? "";
    }
    const [missing, wrong] = [lacking(screen, answers), all("[data-read]", screen).filter((r) => ["not", "unreadable"].includes(r.dataset.verdict))];
    say(`[data-screen="${at}"] [data-lacks]`, missing.length ? `Still to be read: ${missing.map((r) => r.dataset.read).join("; ")}. Then “As expected” counts.`
      : wrong.some((r) => r.dataset.verdict === "unreadable") ? "What was typed is no number in that unit: enter it again."
      : wrong.length ? "A reading is outside what is expected: choose “Not”, or read again." : "");
    all('[data-seen="as expected"]', screen).forEach((b) => b.setAttribute("aria-disabled", String(missing.length + wrong.length > 0)));
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
      if (at === "not" && !one("[data-instead-form]").hidden && select.value !== select.dataset.was) give("reading", step, { what: told.dataset.instead, raw: select.value });
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
    const list = (how) => {
      const some = lines.filter(([step]) => stands(now.get(step)) === how);
      const where = one(`[data-${how}]`, screen);
      where.replaceChildren(...some.map(([step, text]) => {
        const li = document.createElement("li");
        const b = Object.assign(document.createElement("button"), { type: "button", textContent: text });
        b.addEventListener("click", () => go(step));
        li.append(b);
        return li;
      }));
      where.parentElement.hidden = some.length === 0;
      return some.length;
    };
    const [wrong, open, unsure, ticked] = ["wrong", "open", "unsure", "ticked"].map(list);
    const count = (n, word) => `${n} ${n === 1 ? "line is" : "lines are"} ${word}`;
    const lacks = (wrongs, opens) => [[wrongs, "not as expected"], [opens, "open"]].filter(([n]) => n).map(([n, word]) => count(n, word)).join(", ");
    const stages = earlier.map(({ number, steps }) => {
      const stood = standing(steps);
      const how = steps.filter((s) => s.check).map((s) => stands(stood.get(s.id)));
      const [wrongs, opens] = ["wrong", "open"].map((w) => how.filter((h) => h === w).length);
      return [number, opens > 0 && opens === how.length ? `Stage ${number} was not done` : wrongs + opens ? `Stage ${number}: ${lacks(wrongs, opens)}` : ""];
    }).filter(([, says]) => says);
    const where = one("[data-stages]", screen);
    where.replaceChildren(...stages.map(([number, says]) => {
      const li = document.createElement("li");
      const b = Object.assign(document.createElement("button"), { type: "button", textContent: says });
      b.addEventListener("click", () => { location.href = `${location.pathname}?on=${root.dataset.on}&stage=${number}`; });
      li.append(b);
      return li;
    }));
    where.parentElement.hidden = stages.length === 0;
    const against = [...stages.map(([, says]) => says), lacks(wrong, open)].filter(Boolean).join(", ");
    say("[data-gate-says]", against ? `Not yet: ${against}, ${ticked} ticked.` : `${count(ticked, "ticked")}, none is open.${unsure ? ` ${count(unsure, "not sure")}.` : ""}`);
    const connect = one("[data-connect]", screen);
    connect.setAttribute("aria-disabled", String(against !== ""));
    connect.textContent = against ? `Connect: closed, ${against}` : "Connect";
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

  // What got hot: the same row once more with that in it, in place of the one without.
  const lastHot = () => {
    const undone = new Set([...kept, ...waiting].filter((e) => e.kind === "undo").map((e) => e.of));
    return [...kept, ...waiting].filter((e) => e.kind === "hot" && e.step === (asked ?? store.read("asked", "")) && !undone.has(e.id)).at(-1);
  };
  const hotAt = (select) => {
    const [hot, chosen] = [lastHot(), select.selectedOptions[0]];
    if (!hot || chosen.value === "") return;
    give("hot", hot.step, { what: chosen.value, raw: chosen.dataset.name ?? "", at: hot.at });
    give("undo", hot.step, { of: hot.id });
    draw();
  };
  const drawHot = (screen) => {
    const hot = lastHot();
    const select = one("[data-hot-at]", screen);
    select.selectedIndex = Math.max(0, [...select.options].findIndex((o) => o.value === (hot?.what ?? "") && (o.dataset.name ?? "") === (hot?.raw ?? "")));
    say("[data-hot-says]", hot?.what ? `${select.selectedOptions[0].dataset.says ?? "Not known where"}. ${mark(hot)}` : "");
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
      if (b.getAttribute("aria-disabled") === "true") {
        const screen = one(`[data-screen="${at}"]`);
        one("input", lacking(screen, standing().get(at))[0] ?? one("[data-read]", screen)).focus();
        return;
      }
      // What was “not” does not become “as expected” before it is said what changed.
      wasNot = b.dataset.seen !== "not" && seen(standing().get(at)) === "not";
      if (!wasNot) give("seen", at, { raw: b.dataset.seen });
      if (!wasNot && b.dataset.seen !== "not") return forward();
      asked = at;
      store.write("asked", asked);
      go("not");
    },
    enter: (b) => enter(b.closest("[data-read]"), one("input", b.closest("[data-read]")).value),
    nothing: (b) => enter(b.closest("[data-read]"), b.dataset.nothing),
    back: () => beside(-1),
    onward: () => beside(1),
    undo,
    undoNot: () => {
      const step = asked ?? store.read("asked", at);
      const told = new Set(all("[data-instead]").map((e) => e.dataset.instead));
      for (const e of standing().get(step) ?? []) if (e.kind === "seen" || (e.kind === "reading" && told.has(e.what))) give("undo", step, { of: e.id });
      go(step);
    },
    cause: (b) => toTheCause(b.dataset.cause),
    connect: (b) => { if (b.getAttribute("aria-disabled") !== "true") { give("done", at); forward(); } },
    changed: () => { if (hangs()) return go("restore"); give("changed", asked ?? store.read("asked", at)); forward(); },
    restored: () => { if (lastGiven()?.kind !== "changed") give("changed", asked ?? store.read("asked", at)); forward(); },
    openOn: () => { give("done", asked ?? store.read("asked", at)); forward(); },
    hot: () => { if (at !== "not") { asked = at; store.write("asked", asked); } go("hot"); },
    off: () => { give("hot", asked ?? store.read("asked", "")); go("hot-at"); },
    mistake: () => go(asked ?? store.read("asked", null)),
    built: (b) => { give("built", b.dataset.built); b.textContent = "Built, as the file says"; draw(); },
  };
  root.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    const act = button && Object.keys(acts).find((name) => name in button.dataset);
    if (act) acts[act](button);
  });
  root.addEventListener("change", (event) => { if ("hotAt" in event.target.dataset) hotAt(event.target); });
  root.addEventListener("keydown", (event) => {
    const read = event.key === "Enter" && event.target.closest("[data-read]");
    if (read && event.target.matches("input")) enter(read, event.target.value);
  });

  const linked = (yes) => {
    if (yes) lostSince = null;
    else lostSince ??= new Date();
    say("[data-link]", lostSince ? "no link to the laptop" : "linked to the laptop");
    root.classList.toggle("lost-link", lostSince !== null);
    const n = waiting.length;
    say("[data-lost]", lostSince ? `No link to the laptop since ${lostSince.toTimeString().slice(0, 5)}. Go on: the whole stage is on this phone. ${n === 1 ? "1 answer waits" : `${n} answers wait`} here and ${n === 1 ? "goes" : "go"} over when the laptop is back.` : "");
  };
  // Asks twice a second or so, and hands over what waits; an answer goes from the phone only when it came back as kept.
  const call = async () => {
    if (calling) return;
    calling = true;
    try {
      const after = kept.at(-1)?.number ?? 0;
      const answer = waiting.length ? await hand(session, after, waiting) : await fetch(`/session-api/${session}?after=${after}`, { signal: AbortSignal.timeout(1200) });
      if (answer.ok) {
        const news = await answer.json();
        kept = [...kept, ...news];
        for (const id of (answer.headers.get("Loomwright-Not-Answers") ?? "").split(",").filter(Boolean)) refused.add(decodeURIComponent(id));
        if (news.length || refused.size) wait();
        say("[data-refused]", refused.size ? "The laptop could not read some of what was given here: look at the last steps again." : "");
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
    at = hangs() ? "restore" : null;
    store.write(`at.${root.dataset.stage}`, at);
  } else if (at === null && lastGiven()?.kind === "hot") {
    asked = lastGiven().step;
    store.write("asked", asked);
    at = "hot-at";
  }
  if (at === "not") otherwise();
  draw();
  call();
  others().catch(() => {});
  setInterval(call, 700);
})();
