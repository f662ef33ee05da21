// One step a screen. Answers live on this device until the program says they are kept; the link may go and come.
(() => {
  const root = document.querySelector("[data-session]");
  const session = root.dataset.session;
  const all = (query, under = root) => [...under.querySelectorAll(query)];
  const one = (query, under = root) => under.querySelector(query);
  const screens = all("[data-screen]");
  const way = screens.filter((s) => !("aside" in s.dataset));
  const stages = JSON.parse(one("[data-stages-of]").textContent);
  const number = Number(root.dataset.stage);
  const own = stages.find((s) => s.number === number).steps;
  const stepOf = (id) => own.find((s) => s.id === id);
  const screenOf = (name) => screens.find((s) => s.dataset.screen === name);
  const store = {
    read(name, otherwise) { try { return JSON.parse(localStorage.getItem(`${name}.${session}`)) ?? otherwise; } catch { return otherwise; } },
    write(name, value) { try { localStorage.setItem(`${name}.${session}`, JSON.stringify(value)); } catch { say("[data-refused]", "This browser lets nothing be kept on the phone: do not close this page while there is no link."); } },
  };
  let kept = JSON.parse(one("[data-entries]").textContent);
  let waiting = store.read("waiting", []);
  let at = store.read(`at.${number}`, null);
  // The step that was not as expected, or got hot.
  let asked = store.read(`asked.${number}`, null);
  let lostSince = null;
  let calling = false;
  let wasNot = false;
  let [shown, shownAt] = [null, 0];
  // How a search left the loom: "live", or "apart" with a fuse or a plug out; "mended" once something was changed then. Null when it was put back.
  let searched = store.read(`searched.${number}`, null);
  // The screen the plan was opened from.
  let from = store.read(`from.${number}`, null);

  const given = () => { const had = new Set(kept.map((e) => e.id)); return [...kept, ...waiting.filter((w) => !had.has(w.id))]; };
  const standing = () => Standing.of(stages, number, given());

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
  const look = (after) => fetch(`/session-api/${session}?after=${after}`, { signal: AbortSignal.timeout(1200) });
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
    const came = at;
    at = name;
    store.write(`at.${number}`, at);
    if (at === "not" && came !== "plan") otherwise();
    draw();
    screenOf(at)?.focus({ preventScroll: true });
    scrollTo(0, 0);
  };
  const search = (how) => { searched = how; store.write(`searched.${number}`, how); };
  const ask = (step) => { asked = step; store.write(`asked.${number}`, step); };
  const forward = () => go(standing().next);
  const beside = (by) => {
    const { left } = standing();
    go(left[Math.min(left.length - 1, Math.max(0, left.indexOf(at) + by))]);
  };
  // Whether the loom hangs free or live: then it is put back before the ohms.
  const hangs = (stands) => searched !== null || (one("[data-put-back] li") !== null && (stands.power === "on" || stands.hangs));
  // Where the page may stand by what everybody answered; nothing else is asked or shown.
  const place = (stands) => {
    if (Standing.stillOn(stages, number, given()) !== undefined) return "held";
    if (searched && !["plan", "hot"].includes(at)) return "restore";
    const may = { hot: true, plan: !stands.hot || searched || from === "hot-at", "hot-at": stands.hot, restore: hangs(stands), not: stepOf(asked) && stands.how(stepOf(asked)) === "wrong" };
    if (stands.hot && (at === "not" || !may[at])) { ask(stands.hot.step); return "hot-at"; }
    return may[at] || stands.left.includes(at) ? at : stands.next;
  };

  const draw = () => {
    const stands = standing();
    at = place(stands);
    if (at !== shown) [shown, shownAt] = [at, performance.now()];
    screens.forEach((s) => { s.hidden = s.dataset.screen !== at; });
    root.classList.toggle("at-hot", at === "hot");
    const bead = way.findIndex((s) => s.dataset.screen === at);
    say("[data-count]", bead < 0 ? "" : `step ${bead + 1} of ${way.length}, `);
    one("[data-beads]").replaceChildren(...way.map((s, i) => Object.assign(document.createElement("i"), { className: i === bead ? "now" : stepOf(s.dataset.screen) && stands.isPassed(stepOf(s.dataset.screen)) ? "done" : "" })));
    const screen = screenOf(at);
    drawPower(screen, stands);
    drawAnswers(screen, stands);
    if ("gate" in screen.dataset) drawGate(screen, stands);
    if ("end" in screen.dataset) drawEnd(screen, stands);
    if (at === "not") drawNot(screen, stands);
    if (at === "hot-at") drawHot(screen);
    if (at === "held") say("[data-held]", String(Standing.stillOn(stages, number, given())));
  };
  // What is live is what was done, not where the page stands: gone back to, a step says so, and is not to be done then.
  const drawPower = (screen, stands) => {
    const [on, here] = [screen.dataset.power === "on" && !("bare" in screen.dataset), own.findIndex((s) => s.id === at)];
    const later = own.slice(here + 1).some((s) => s.late && s.act !== "PowerDown" && stands.now.has(s.id));
    const still = here >= 0 && !on && own[here].act !== "PowerDown" && stands.power !== "off" && (here <= stands.gate || later);
    const off = on && stands.power === "off";
    all("[data-still-on]", screen).forEach((s) => { s.hidden = !still; });
    all("[data-now-off]", screen).forEach((s) => { s.hidden = !off; });
    all("[data-power-says]", screen).forEach((s) => { s.hidden = still || off; });
    all("[data-not-live]", screen).forEach((s) => { s.hidden = still; });
    // Beside the way: as it stands, as a search left it, or as the step is that the plan was opened from.
    const came = screenOf(from)?.dataset;
    const beside = (searched && searched !== "apart") || (at === "plan" && came?.power === "on" && !("bare" in came)) ? "on" : stands.power;
    all("[data-when-live]", screen).forEach((s) => { s.hidden = "aside" in screen.dataset ? beside === "off" : screen.dataset.power !== "on" && !still; });
    all("[data-when]", screen).forEach((p) => { p.hidden = p.dataset.when !== beside; });
  };
  const drawNot = (screen, stands) => {
    say("[data-not-step]", one(".do", screenOf(asked) ?? root)?.textContent ?? "");
    const read = all("[data-read]", screenOf(asked) ?? root).map((r) => [r, Standing.reading(stands.now.get(asked), r.dataset.read)]).filter(([, given]) => given);
    one("[data-not-read]", screen).replaceChildren(...read.map(([r, given]) => Object.assign(document.createElement("li"), { textContent: `${r.dataset.read}: ${withUnit(given.raw, r.dataset.sign)}, expected ${r.dataset.shows}` })));
    all("[data-was-not]", screen).forEach((p) => { p.hidden = !wasNot; });
  };
  // What is to be read off at a step and was not entered.
  const lacking = (screen, answers) => all("[data-read]", screen).filter((r) => !Standing.reading(answers, r.dataset.read));
  // As it was typed, with the unit it was taken in.
  const withUnit = (raw, sign) => { const text = raw.trim(); return /[kmMµ]$/.test(text) ? text + sign : /\p{L}|Ω/u.test(text) || sign === "" ? text : `${text} ${sign}`; };
  const mark = (e) => (e.number ? "Kept." : "On this phone.");
  const drawAnswers = (screen, { now, before, isPassed }) => {
    const [step, answers] = [stepOf(at), now.get(at)];
    const answer = answers?.find((e) => e.kind === "seen") ?? answers?.find((e) => e.kind === "done");
    say(`[data-screen="${at}"] [data-answered]`, answer ? `${answer.kind === "done" ? "Done" : answer.raw}. ${mark(answer)}` : "");
    all("[data-seen]", screen).forEach((b) => b.setAttribute("aria-pressed", String(b.dataset.seen === answer?.raw)));
    const again = one("[data-before]", screen);
    if (again) {
      again.hidden = !before.has(at);
      const since = before.get(at);
      again.textContent = `Last time ${since?.kind === "hot" ? "something got hot, smoked or smelt here" : `this was not as expected. Since then ${since?.raw ? `you mended: ${since.raw}` : "something was changed"}`}.`;
    }
    all("[data-onward]", screen).forEach((b) => { b.hidden = !isPassed(step); });
    all("[data-undo]", screen).forEach((b) => b.setAttribute("aria-disabled", String(!lastGiven())));
    for (const read of all("[data-read]", screen)) {
      const given = Standing.reading(answers, read.dataset.read);
      read.dataset.verdict = (given && Standing.verdict(step, given)) ?? "";
      const word = { asExpected: "inside", not: "outside", unreadable: "this is not a number in the unit asked for: write it like 12.4" }[read.dataset.verdict];
      one("[data-told]", read).textContent = !given ? "" : read.dataset.verdict === "unreadable" ? `${given.raw}: ${word}.` : `${withUnit(given.raw, read.dataset.sign)}${word ? `: ${word}` : ""}. ${mark(given)}${read.dataset.verdict === "not" ? Standing.hint(step, given) : ""}${word ? "" : " The laptop reads it when it is back; a number alone is read here."}`;
    }
    const missing = lacking(screen, answers);
    const [wrong, unread] = [["not", "unreadable"], [""]].map((verdicts) => all("[data-read]", screen).filter((r) => !missing.includes(r) && verdicts.includes(r.dataset.verdict)));
    say(`[data-screen="${at}"] [data-lacks]`, missing.length ? `Still to be read: ${missing.map((r) => r.dataset.read).join("; ")}. Then “As expected” counts.${step.bare ? " Nothing goes on the supply before." : ""}`
      : wrong.some((r) => r.dataset.verdict === "unreadable") ? "What was typed is no number in that unit: enter it again."
      : wrong.length ? "A reading is outside what is expected: choose “Not”, or read again."
      : unread.length ? "“As expected” counts when it is read: type the number alone, or wait for the laptop." : "");
    all('[data-seen="as expected"]', screen).forEach((b) => b.setAttribute("aria-disabled", String(missing.length + wrong.length + unread.length > 0)));
  };
  // Each list begins with what was told, or as it should be.
  const otherwise = () => {
    const should = JSON.parse(screenOf(asked)?.dataset.should ?? "null");
    one("[data-instead-form]").hidden = !should;
    const answers = standing().now.get(asked);
    for (const told of should ? all("[data-instead]") : []) {
      const select = one("select", told);
      select.value = Standing.reading(answers, told.dataset.instead)?.raw ?? should[told.dataset.instead];
      select.dataset.was = select.value;
    }
  };
  const toTheCause = async (address) => {
    for (const told of all("[data-instead]")) {
      const select = one("select", told);
      if (at === "not" && !one("[data-instead-form]").hidden && select.value !== select.dataset.was) give("reading", asked, { what: told.dataset.instead, raw: select.value });
      select.dataset.was = select.value;
    }
    say("[data-cause-says]", "Handing over what you told …");
    for (let tries = 0; waiting.length && tries < 8; tries++) {
      await call();
      await new Promise((then) => setTimeout(then, 150));
    }
    const left = !waiting.length && !lostSince && await leave(`${address}?session=${session}&step=${encodeURIComponent(asked)}`);
    say("[data-cause-says]", left ? "" : "No link to the laptop. What you told stays on this phone; press again when it is back.");
  };
  // A list of buttons, each with where it leads; hidden with its heading where there is none.
  const fill = (list, lines) => {
    list.replaceChildren(...lines.map(([text, lead]) => {
      const b = Object.assign(document.createElement("button"), { type: "button", textContent: text });
      b.addEventListener("click", lead);
      const li = document.createElement("li");
      li.append(b);
      return li;
    }));
    return lines.length;
  };
  const count = (n, word) => `${n} ${n === 1 ? "line is" : "lines are"} ${word}`;
  const lacks = ({ wrong, open }) => [[wrong, "not as expected"], [open, "open"]].filter(([n]) => n).map(([n, word]) => count(n, word)).join(", ");
  const unmeasured = (id, { now, how }) => Standing.seen(now.get(id)) === "not sure" && how(stepOf(id)) === "open" ? " Not measured yet." : "";
  const drawGate = (screen, stands) => {
    const lines = all("[data-line]", one("[data-lines]", screen).content).map((li) => [li.dataset.line, li.textContent]);
    const list = (how) => {
      const where = one(`[data-${how}]`, screen);
      const n = fill(where, lines.filter(([id]) => stands.how(stepOf(id)) === how).map(([id, text]) => [text + unmeasured(id, stands), () => go(id)]));
      where.parentElement.hidden = n === 0;
      return n;
    };
    const [wrong, open, unsure, ticked] = ["wrong", "open", "unsure", "ticked"].map(list);
    const earlier = stands.earlier.map((s) => [s.none ? `Stage ${s.number} was not done` : `Stage ${s.number}: ${lacks(s)}`, () => toStage(s.number)]);
    const where = one("[data-stages]", screen);
    where.parentElement.hidden = fill(where, earlier) === 0;
    const against = [...earlier.map(([says]) => says), lacks({ wrong, open })].filter(Boolean).join(", ");
    say("[data-gate-says]", against ? `Not yet: ${against}, ${ticked} ticked.` : `${count(ticked, "ticked")}, none is open.${unsure ? ` ${count(unsure, "not sure")}.` : ""}`);
    const connect = one("[data-connect]", screen);
    connect.setAttribute("aria-disabled", String(against !== ""));
    connect.textContent = against ? `Power-up: closed, ${against}` : stands.power === "off" ? "Begin power-up" : "Power is on: go on where you were";
    const when = stands.heat && `At ${stands.heat.at.slice(11, 16)} ${stands.heat.raw ? `the ${stands.heat.what} ${stands.heat.raw}` : "something"}`;
    say("[data-heat]", when ? `${when} got hot, smoked or smelt here with power on, and nothing was named as mended since. Look there once more before power goes on.` : "");
  };
  const drawEnd = (screen, stands) => {
    const checks = own.filter((s) => s.check);
    const open = checks.filter((s) => stands.how(s) !== "ticked");
    say("[data-end-title]", `Stage ${number} is ${open.length ? "open: mend what is not as expected before more is put on" : "through"}`);
    say("[data-end-says]", `${checks.length - open.length} of ${checks.length} checks were as expected${open.length ? "; these were not, or are not sure:" : "."}`);
    const word = (s) => stands.how(s) === "wrong" ? "not" : Standing.seen(stands.now.get(s.id)) ?? "not answered";
    fill(one("[data-end-open]", screen), open.map((s) => [`${one(".do", screenOf(s.id)).textContent} (${word(s)})`, () => go(s.id)]));
  };

  // What got hot: the same row once more with that in it, in place of the one without.
  const lastHot = () => standing().hot;
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
    const lone = one("[data-lone]", read);
    if (lone) lone.hidden = !Standing.isLoneOne(stepOf(at), read.dataset.read, raw);
    if (lone && !lone.hidden) return one("button", lone).focus();
    give("reading", at, { what: read.dataset.read, raw });
    one("input", read).value = "";
    draw();
  };
  const lastGiven = () => Standing.taken(stages, number, given());
  const undo = () => {
    const last = lastGiven();
    if (!last) return;
    give("undo", last.step, { of: last.id });
    go(last.step);
  };
  // Heat told at the gate, which is no step of the plan, or at a step gone back to is told of what was done last behind the gate.
  const heated = (id) => {
    const [{ now }, behind] = [standing(), own.filter((s) => s.late && s.act !== "Gate")];
    return behind.includes(stepOf(id)) ? id : (behind.filter((s) => now.has(s.id)).at(-1) ?? behind[0]).id;
  };
  const acts = {
    done: () => { give("done", at); forward(); },
    seen: (b) => {
      if (b.getAttribute("aria-disabled") === "true") {
        const screen = screenOf(at);
        one("input", lacking(screen, standing().now.get(at))[0] ?? one("[data-read]", screen)).focus();
        return;
      }
      // What was “not” does not become “as expected” before it is said what changed.
      wasNot = b.dataset.seen !== "not" && Standing.seen(standing().now.get(at)) === "not";
      if (!wasNot) give("seen", at, { raw: b.dataset.seen });
      if (!wasNot && standing().how(stepOf(at)) !== "wrong") return forward();
      ask(at);
      go("not");
    },
    enter: (b) => enter(b.closest("[data-read]"), one("input", b.closest("[data-read]")).value),
    reads: (b) => enter(b.closest("[data-read]"), b.dataset.reads),
    back: () => beside(-1),
    onward: () => beside(1),
    undo,
    undoNot: () => {
      const told = new Set(all("[data-instead]").map((e) => e.dataset.instead));
      for (const e of standing().now.get(asked) ?? []) if (e.kind === "seen" || (e.kind === "reading" && told.has(e.what))) give("undo", asked, { of: e.id });
      go(asked);
    },
    cause: (b) => toTheCause(b.dataset.cause),
    connect: (b) => { if (b.getAttribute("aria-disabled") !== "true") { give("done", at); forward(); } },
    changed: () => { if (hangs(standing())) { search(searched && "mended"); return go("restore"); } give("changed", asked); forward(); },
    restored: () => { if (!["live", "apart"].includes(searched) && standing().last?.kind !== "changed") give("changed", asked); search(null); forward(); },
    openOn: () => { give("done", asked); forward(); },
    plan: () => { if (at !== "plan") store.write(`from.${number}`, from = at); if (stepOf(at)) ask(at); go("plan"); },
    fromPlan: () => go(from ?? asked),
    hot: () => { if (stepOf(at)) ask(at); if (!stepOf(asked)) ask(standing().last.step); go("hot"); },
    off: () => { ask(heated(asked)); give("hot", asked); go("hot-at"); },
    mistake: () => go(asked),
    toHeld: () => toStage(Standing.stillOn(stages, number, given())),
    built: (b) => { give("built", b.dataset.built); b.textContent = "Built, as the file says"; draw(); },
  };
  root.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    const act = button && Object.keys(acts).find((name) => name in button.dataset);
    if (act && !(ahead.has(act) && isTwice(event))) acts[act](button);
  });
  // A second tap of a double one would answer a screen nobody has read.
  const ahead = new Set(["done", "seen", "connect", "onward", "changed", "restored", "openOn", "off", "mistake", "cause", "undo", "undoNot"]);
  const isTwice = (event) => event.detail > 1 || (event.pointerType === "touch" && event.timeStamp - shownAt < (at === "hot" ? 1200 : 400));
  // Another page is gone to only when the laptop answers now: with the link lost it would not come, and this one would be gone.
  const leave = async (address) => {
    if (waiting.length) await call();
    try { if (!(await look(Number.MAX_SAFE_INTEGER)).ok) return false; } catch { linked(false); return false; }
    location.href = address;
    return true;
  };
  const toStage = (stage) => leave(`${location.pathname}?session=${session}&stage=${stage}`);
  root.addEventListener("click", (event) => {
    const link = event.target.closest("a[href]");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    if (!isTwice(event)) leave(link.href);
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
    say("[data-lost]", lostSince ? `No link to the laptop since ${lostSince.toTimeString().slice(0, 5)}. Go on, on this page: the whole stage is on this phone, and what leads to another page waits. ${n === 1 ? "1 answer waits" : `${n} answers wait`} here and ${n === 1 ? "goes" : "go"} over when the laptop is back.` : "");
  };
  // Asks twice a second or so, and hands over what waits; an answer goes from the phone only when it came back as kept.
  const call = async () => {
    if (calling) return;
    calling = true;
    try {
      const after = kept.at(-1)?.number ?? 0;
      const answer = waiting.length ? await hand(session, after, waiting) : await look(after);
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
  // A page that is loaded again stays with this session, whichever was begun since.
  const here = new URL(location.href);
  here.searchParams.set("session", session);
  history.replaceState(null, "", here);
  // From a search: what it left live or apart is put back first.
  if (["#live", "#apart"].includes(location.hash)) {
    search(location.hash.slice(1));
    history.replaceState(null, "", location.pathname + location.search);
  }
  if (at === "not") otherwise();
  draw();
  call();
  others().catch(() => {});
  setInterval(call, 700);
})();
