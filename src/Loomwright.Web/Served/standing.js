// What the answers of a session say of a stage: which of them count, whether the gate holds, what is live, what may come next. The page knows no other judge of it.
const Standing = (() => {
  const seen = (answers) => answers?.find((e) => e.kind === "seen")?.raw;
  // A check by its answer; one that was not as expected when it was left open.
  const done = (step, answers) => ["as expected", "not sure"].includes(seen(answers)) || ((!step.check || seen(answers) === "not") && answers?.some((e) => e.kind === "done") === true);

  // As the program judged it; until it has, what stands there plainly is held against the band here. Nothing where it does not.
  const verdict = (step, entry) => {
    if (entry.verdict) return entry.verdict;
    const band = step.reads?.find((r) => r.what === entry.what);
    const raw = entry.raw.trim();
    if (band?.ohms && /^ol$/i.test(raw)) return "most" in band ? "not" : "asExpected";
    if (!band || !/^[-+−]?\d+([.,]\d+)?$/.test(raw)) return undefined;
    const value = Number(raw.replace(",", ".").replace("−", "-"));
    return value < band.least || value > band.most ? "not" : "asExpected";
  };
  // A cheap meter shows a lone 1 where it reads nothing: whether that and 1 ohm come to different ends.
  const isLoneOne = (step, what, raw) => /^1\s*[.,]?$/.test(raw.trim()) && step.reads.some((r) => r.what === what && r.ohms && !(r.most < 1));
  // What a reading outside may be at heart, in words; empty where nothing speaks for it.
  const hint = (step, entry) => {
    const band = step.reads?.find((r) => r.what === entry.what);
    const value = Number(entry.raw.trim().replace(",", ".").replace("−", "-"));
    if (!band || !Number.isFinite(value)) return "";
    const fits = (v) => v >= (band.least ?? -Infinity) && v <= (band.most ?? Infinity);
    if (band.ohms) return band.least >= 100 && value < 30 ? " Nearly a short: nothing goes on before it is found." : "";
    if (value < 0 && fits(-value)) return " The minus says: the tips are the wrong way round, or plus and minus are. Nothing goes on before that is clear.";
    // Only what no battery of twelve volts and no small fuse lets through is a slip of the pen.
    const meant = value > 30 ? [10, 100, 1000].map((by) => Number((value / by).toPrecision(6))).find(fits) : undefined;
    return band.least > 0 && meant !== undefined ? ` Was it ${meant}?` : "";
  };
  const reading = (answers, what) => answers?.find((e) => e.kind === "reading" && e.what === what);

  // How a step stands. What guards power counts as open while it is neither seen nor measured.
  const how = (step, answers) => {
    const verdicts = (step.reads ?? []).map((r) => reading(answers, r.what)).map((e) => e && verdict(step, e));
    if (seen(answers) === "not" || verdicts.some((v) => v === "not" || v === "unreadable")) return "wrong";
    if (!done(step, answers)) return "open";
    if (seen(answers) !== "not sure") return "ticked";
    return (!step.late || step.bare) && verdicts.some((v) => v !== "asExpected") ? "open" : "unsure";
  };
  // Whether the way goes on past a step.
  const passed = (step, answers) => done(step, answers) && !(step.bare && how(step, answers) === "open");
  const isDown = (steps, now) => steps.some((s) => s.act === "PowerDown") && steps.every((s) => s.act !== "PowerDown" || passed(s, now.get(s.id)));
  const isLive = (steps, now) => steps.some((s) => s.act === "Gate" && done(s, now.get(s.id))) && !isDown(steps, now);
  // The supply is measured before anything is on it.
  const isBare = (steps, now) => steps.some((s) => s.bare) && !steps.some((s) => s.act === "PowerUp" && !s.bare && now.has(s.id));

  // What counts now: what was undone and what was told before a change does not.
  const counting = (steps, entries) => {
    const undone = new Set(entries.filter((e) => e.kind === "undo").map((e) => e.of));
    const of = new Map(steps.map((s) => [s.id, s]));
    const [now, before] = [new Map(), new Map()];
    const drop = (which) => steps.filter(which).forEach((s) => now.delete(s.id));
    let [hot, heat, hangs, last] = [null, null, false, null];
    for (const e of entries) {
      const step = of.get(e.step);
      if (e.kind === "undo" || undone.has(e.id) || !step) continue;
      last = e;
      if (e.kind === "changed" || e.kind === "hot") {
        hangs ||= isLive(steps, now) && (!isBare(steps, now) || (step.late && !step.bare && step.act !== "Gate"));
        hot = e.kind === "hot" ? e : null;
        heat = e.kind === "hot" ? e : e.raw ? null : heat;
        for (const { id } of steps.filter((s) => s.again)) {
          if (seen(now.get(id)) === "not" || (hot && id === e.step) || (!hot && before.has(id))) before.set(id, e);
          now.delete(id);
        }
        continue;
      }
      // Power goes on anew: so does all that brings it. What power-down put back is not in any more.
      if (step.act === "Gate" && isDown(steps, now)) drop((s) => s.act === "PowerUp" || s.act === "PowerDown");
      if (step.act === "PowerDown" && step.part) drop((s) => !s.late && s.part === step.part);
      now.set(e.step, [...(now.get(e.step) ?? []).filter((o) => o.kind !== e.kind || (o.what ?? "") !== (e.what ?? "")), e]);
      hangs = false;
    }
    return { now, before, hot, heat, hangs, last };
  };

  // What is against power at a stage: its own lines before the gate, and the checks of the stages before.
  const checks = (stage, entries) => {
    const { now } = counting(stage.steps, entries);
    const hows = stage.steps.filter((s) => s.check).map((s) => how(s, now.get(s.id)));
    const [wrong, open] = ["wrong", "open"].map((w) => hows.filter((h) => h === w).length);
    return { number: stage.number, wrong, open, none: open > 0 && open === hows.length };
  };

  /** A stage, by all the entries of a session: `power` is "off", "bare" (the supply alone is live) or "on"; `next` is what comes, `left` what may be looked at. */
  const of = (stages, number, entries) => {
    const { steps } = stages.find((s) => s.number === number);
    const counted = counting(steps, entries);
    const { now } = counted;
    const [is, isPassed] = [(s) => how(s, now.get(s.id)), (s) => passed(s, now.get(s.id))];
    const gate = steps.findIndex((s) => s.act === "Gate");
    const downs = steps.filter((s) => s.act === "PowerDown");
    const rest = steps.filter((s) => s.late && s.act !== "PowerDown" && s.act !== "Gate");
    // Nothing goes on with power but power-down once a check with power on was not as expected.
    const stop = steps.findIndex((s) => s.late && is(s) === "wrong");
    const down = isDown(steps, now);
    const over = down && (stop >= 0 || rest.every(isPassed));
    // Powered down before its end, a stage comes to its gate once more.
    const live = isLive(steps, now);
    const earlier = stages.filter((s) => s.number < number).map((s) => checks(s, entries)).filter((s) => s.wrong + s.open);
    const against = earlier.length > 0 || steps.slice(0, Math.max(0, gate)).some((s) => ["wrong", "open"].includes(is(s)));
    const holds = gate < 0 || over || (live && !against);
    const power = !live ? "off" : isBare(steps, now) ? "bare" : "on";
    const begun = power === "on" && downs.some(isPassed);
    const last = Math.min(...[[stop >= 0, stop], [!holds, gate], [begun, steps.indexOf(rest.find((s) => !isPassed(s)) ?? downs[0]) - 1]].filter(([counts]) => counts).map(([, at]) => at));
    const left = steps.filter((s, i) => i <= last || (s.act === "PowerDown" && (power === "on" || over)));
    const open = power === "on" && (!holds || stop >= 0 || begun) ? downs.find((s) => !isPassed(s))
      : over || (stop >= 0 && holds) ? undefined
      : left.find((s) => s.act === "Gate" ? !holds : !isPassed(s));
    return { ...counted, how: is, isPassed, gate, earlier, holds, power, left: [...left.map((s) => s.id), ...(holds ? ["end"] : [])], next: open?.id ?? "end" };
  };

  /** The answer a tap may take back, or null. That a loom was put back is no slip, and power goes off by its own steps alone. */
  const taken = (stages, number, entries) => {
    const { last, power } = of(stages, number, entries);
    const without = last && of(stages, number, [...entries, { kind: "undo", of: last.id }]).power;
    const much = ["off", "bare", "on"];
    return !last || ["changed", "hot"].includes(last.kind) || much.indexOf(without) < much.indexOf(power) ? null : last;
  };

  /** The number of another stage whose power is still on, or undefined. */
  const stillOn = (stages, number, entries) => stages.find(({ number: other, steps }) => {
    const { now } = counting(steps, entries);
    return other !== number && isLive(steps, now) && !isBare(steps, now);
  })?.number;

  return { of, taken, stillOn, seen, reading, verdict, hint, isLoneOne };
})();
