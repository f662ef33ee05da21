// Puts a drawn sheet on the page once, and from then on changes only what it is told.
const [{ read, make, around, lightKey }, { over }, { hands }] = await Promise.all(["sheet", "view", "hands"].map(name => import(`./${name}.js${new URL(import.meta.url).search}`)));

export function mount(host, page, style) {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  const call = (what, ...rest) => page.invokeMethodAsync(what, ...rest);
  let sheet = { svg: null, wires: new Map(), parts: new Map(), lights: new Map(), things: [], body: { x: 0, y: 0, width: 1, height: 1 } };
  let numbers = "letters", last = new Map(), shown = "";
  const view = over(host, () => sheet, () => call("Seen"));
  const { step } = hands(host, () => sheet, view, call);

  function draw(text, name, wide, movable) {
    root.innerHTML = `${text}<style>${style}</style>`;
    const svg = root.querySelector("svg"), other = shown !== name;
    shown = name;
    svg.classList.toggle("wide", wide);
    svg.classList.toggle("movable", movable);
    svg.setAttribute("role", "group");
    svg.setAttribute("aria-label", name);
    for (const side of ["width", "height"]) svg.setAttribute(side, svg.viewBox.baseVal[side]);
    sheet = read(svg);
    last = new Map();
    dim();
    view.renew(other);
  }
  const dim = () => sheet.svg?.classList.toggle("dim", document.documentElement.dataset.theme === "dim");
  new MutationObserver(dim).observe(document.documentElement, { attributeFilter: ["data-theme"] });

  function say(label) {
    const now = last.get(label.wire);
    const number = numbers === "letters" || !now ? null : numbers === "amps" ? now.amps : label.end ? now.to : now.from;
    label.text.classList.toggle("number", number !== null);
    label.text.textContent = number ?? label.words;
    number === null ? label.text.setAttribute("textLength", label.length) : label.text.removeAttribute("textLength");
  }
  function show(told) {
    for (const now of told.wires) {
      last.set(now.wire, now);
      const wire = sheet.wires.get(now.wire);
      wire?.groups.forEach(g => g.dataset.flow = now.flow);
      wire?.groups.forEach(g => g.classList.toggle("touched", now.touched));
      wire?.labels.forEach(l => { say(l); l.text.classList.toggle("differs", now.differs); });
    }
    for (const now of told.parts) {
      for (const { cell, state } of sheet.parts.get(now.part) ?? []) {
        cell.dataset.is = now.is;
        state.classList.toggle("differs", now.differs);
        now.says ? sheet.svg.append(state) : state.remove();
        const [plate, words] = state.children;
        words.textContent = now.says;
        const wide = now.says ? words.getComputedTextLength() + 10 : 0;
        plate.setAttribute("width", wide);
        plate.setAttribute("x", -wide);
        words.setAttribute("x", 5 - wide);
      }
    }
    for (const now of told.lights) {
      for (const light of sheet.lights.get(lightKey(now.part, now.terminal)) ?? []) {
        light.dataset.is = now.is;
        light.classList.toggle("differs", now.differs);
      }
    }
  }

  function light(kind, name) {
    for (const t of sheet.things) t.node.setAttribute("aria-pressed", t.kind === kind && t.name === name);
  }
  function follow(stops) {
    sheet.svg?.querySelectorAll(".stop").forEach(s => s.remove());
    sheet.svg?.classList.toggle("following", stops.length > 0);
    const on = new Set(stops.map(s => s.wire)), at = new Set(stops.map(s => s.part));
    for (const [name, { groups, labels }] of sheet.wires) [...groups, ...labels.map(l => l.text)].forEach(e => e.classList.toggle("on", on.has(name)));
    for (const [name, all] of sheet.parts) all.flatMap(p => [p.cell, p.state]).forEach(e => e.classList.toggle("on", at.has(name)));
    for (const { number, wire, end } of stops) {
      const spots = sheet.wires.get(wire)?.strands[0];
      if (!spots) continue;
      const [a, b] = end ? [spots.at(-1), spots.at(-2)] : spots;
      const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1, along = far < 60 ? far / 2 : Math.min(80, far - 14);
      const stop = make("g", { class: "stop", transform: `translate(${a[0] + (b[0] - a[0]) * along / far} ${a[1] + (b[1] - a[1]) * along / far})` });
      stop.append(make("circle", { r: 12 }), make("text", { y: 5.5 }, number));
      sheet.svg.append(stop);
    }
  }
  function centre(kind, name) {
    const box = kind === "part" ? sheet.parts.get(name)?.[0].box : sheet.wires.has(name) ? around(sheet.wires.get(name).strands.flat()) : null;
    if (box) view.look(box, 1.2, 60);
  }
  return {
    draw, show, light, follow, centre,
    zoom: (by) => by ? view.zoom(by) : view.fit(),
    number: (which) => { numbers = which; for (const w of sheet.wires.values()) w.labels.forEach(say); },
    seen: () => host.clientHeight > 0,
    focus: (kind, name) => { const t = sheet.things.find(t => t.kind === kind && t.name === name); t ? step(t) : host.focus(); },
  };
}
