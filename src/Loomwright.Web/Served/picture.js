// Puts a drawn sheet on the page once, and from then on changes only what it is told. Zoom, pan, picking and dragging happen
// here, in the browser; what a pick or a drag means is for the page to say.
const NEAR = { mouse: 12, pen: 12, touch: 22 };
const held = (low, value, high) => Math.min(high, Math.max(low, value));
const make = (name, attributes, text = "") => {
  const e = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const key in attributes) e.setAttribute(key, attributes[key]);
  e.textContent = text;
  return e;
};
const away = (p, [a, b], [c, d]) => {
  const along = held(0, ((p[0] - a) * (c - a) + (p[1] - b) * (d - b)) / ((c - a) ** 2 + (d - b) ** 2 || 1), 1);
  return Math.hypot(p[0] - a - along * (c - a), p[1] - b - along * (d - b));
};

export function mount(host, page, style) {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  let svg, wires = new Map(), parts = new Map(), things = [], numbers = "letters", last = new Map(), k = 1, x = 0, y = 0, body = { x: 0, y: 0, width: 1, height: 1 }, whole = true, shown = "", size = [host.clientWidth, host.clientHeight];
  const call = (what, ...rest) => page.invokeMethodAsync(what, ...rest);
  const place = () => svg && (svg.style.transform = `translate(${x}px,${y}px) scale(${k})`);
  const zoom = (by, px = host.clientWidth / 2, py = host.clientHeight / 2) => {
    const next = held(0.2, k * by, 4);
    [x, y, k] = [px - (px - x) * next / k, py - (py - y) * next / k, next];
    whole = false;
    place();
  };
  const look = (box, most, room = 12) => {
    if (!host.clientHeight || !svg) return;
    k = held(0.2, Math.min((host.clientWidth - 2 * room) / box.width, (host.clientHeight - 2 * room) / box.height), most);
    [x, y] = [host.clientWidth / 2 - k * (box.x + box.width / 2), host.clientHeight / 2 - k * (box.y + box.height / 2)];
    whole = false;
    place();
  };
  const fit = () => { look(body, 1.2); whole = true; };
  const around = (spots) => {
    const [xs, ys] = [spots.map(s => s[0]), spots.map(s => s[1])];
    return { x: Math.min(...xs), y: Math.min(...ys), width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
  };
  const say = (label) => {
    const now = last.get(label.wire);
    const number = numbers === "letters" || !now ? null : numbers === "amps" ? now.amps : label.end ? now.to : now.from;
    label.text.classList.toggle("number", number !== null);
    label.text.textContent = number ?? label.words;
    number === null ? label.text.setAttribute("textLength", label.length) : label.text.removeAttribute("textLength");
  };

  function draw(text, name, wide, movable) {
    root.innerHTML = `${text}<style>${style}</style>`;
    svg = root.querySelector("svg");
    whole ||= shown !== name;
    [wires, parts, things, shown] = [new Map(), new Map(), [], name];
    svg.classList.toggle("wide", wide);
    svg.classList.toggle("movable", movable);
    svg.setAttribute("role", "group");
    svg.setAttribute("aria-label", name);
    for (const side of ["width", "height"]) svg.setAttribute(side, svg.viewBox.baseVal[side]);
    for (const g of svg.querySelectorAll("g.w[data-wire]")) {
      const called = g.dataset.wire, d = root.querySelector(g.querySelector("use").getAttribute("href")).getAttribute("d").match(/-?[\d.]+/g).map(Number);
      const spots = d.flatMap((n, i) => i % 2 ? [] : [[n, d[i + 1]]]);
      if (!wires.has(called)) wires.set(called, { groups: [], strands: [], labels: [] });
      wires.get(called).groups.push(g);
      wires.get(called).strands.push(spots);
      thing(g, "wire", called, spots[0]);
    }
    for (const cell of svg.querySelectorAll("rect:is(.cell, .point)")) {
      const box = cell.getBBox(), state = make("g", { class: "state", transform: `translate(${box.x + box.width - 4} ${box.y})` });
      state.append(make("rect", { height: 22, y: -21, rx: 3 }), make("text", { y: -4 }));
      parts.set(cell.dataset.part, [...parts.get(cell.dataset.part) ?? [], { cell, box, state }]);
      thing(cell, "part", cell.dataset.part, [box.x - 40, box.y]);
    }
    for (const text of svg.querySelectorAll("text.l")) {
      const wire = text.dataset.wire;
      if (!wires.has(wire)) continue;
      const at = [Number(text.getAttribute("x")), Number(text.getAttribute("y"))];
      const [from, to] = [0, -1].map(i => Math.min(...wires.get(wire).strands.map(s => away(at, s.at(i), s.at(i)))));
      wires.get(wire).labels.push({ text, wire, end: from <= to ? 0 : 1, words: text.textContent, length: text.getAttribute("textLength") });
    }
    things.sort((a, b) => Math.round(a.at[0] / 120) - Math.round(b.at[0] / 120) || a.at[1] - b.at[1]);
    if (things[0]) things[0].node.tabIndex = 0;
    body = around([...wires.values()].flatMap(w => w.strands.flat()).concat([...[...parts.values()].flat().map(p => p.box), ...[...svg.querySelectorAll(".room")].map(r => r.getBBox())].flatMap(b => [[b.x, b.y], [b.x + b.width, b.y + b.height]])));
    last = new Map();
    dim();
    whole ? fit() : place();
  }
  function thing(node, kind, name, at) {
    node.setAttribute("role", "button");
    node.setAttribute("aria-label", `${kind} ${name}`);
    node.tabIndex = -1;
    things.push({ node, kind, name, at });
  }
  const dim = () => svg?.classList.toggle("dim", document.documentElement.dataset.theme === "dim");
  new MutationObserver(dim).observe(document.documentElement, { attributeFilter: ["data-theme"] });

  // On a phone the sheet lies folded; nothing is drawn before somebody wants to see it.
  new ResizeObserver(() => {
    if (!host.clientHeight) return;
    if (svg === undefined) { svg = null; call("Seen"); }
    else if (whole) fit();
    else { x += (host.clientWidth - size[0]) / 2; y += (host.clientHeight - size[1]) / 2; place(); }
    size = [host.clientWidth, host.clientHeight];
  }).observe(host);

  function show(told) {
    for (const now of told.wires) {
      last.set(now.wire, now);
      const wire = wires.get(now.wire);
      wire?.groups.forEach(g => g.dataset.flow = now.flow);
      wire?.groups.forEach(g => g.classList.toggle("touched", now.touched));
      wire?.labels.forEach(l => { say(l); l.text.classList.toggle("differs", now.differs); });
    }
    for (const now of told.parts) {
      for (const { cell, state } of parts.get(now.part) ?? []) {
        cell.dataset.is = now.is;
        state.classList.toggle("differs", now.differs);
        now.says ? svg.append(state) : state.remove();
        const [plate, words] = state.children;
        words.textContent = now.says;
        const wide = now.says ? words.getComputedTextLength() + 10 : 0;
        plate.setAttribute("width", wide);
        plate.setAttribute("x", -wide);
        words.setAttribute("x", 5 - wide);
      }
    }
  }
  function light(kind, name) {
    for (const t of things) t.node.setAttribute("aria-pressed", t.kind === kind && t.name === name);
  }
  function follow(stops) {
    svg?.querySelectorAll(".stop").forEach(s => s.remove());
    svg?.classList.toggle("following", stops.length > 0);
    const on = new Set(stops.map(s => s.wire)), at = new Set(stops.map(s => s.part));
    for (const [name, { groups, labels }] of wires) [...groups, ...labels.map(l => l.text)].forEach(e => e.classList.toggle("on", on.has(name)));
    for (const [name, all] of parts) all.flatMap(p => [p.cell, p.state]).forEach(e => e.classList.toggle("on", at.has(name)));
    for (const { number, wire, end } of stops) {
      const spots = wires.get(wire)?.strands[0];
      if (!spots) continue;
      const [a, b] = end ? [spots.at(-1), spots.at(-2)] : spots;
      const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1, step = far < 60 ? far / 2 : Math.min(80, far - 14);
      const stop = make("g", { class: "stop", transform: `translate(${a[0] + (b[0] - a[0]) * step / far} ${a[1] + (b[1] - a[1]) * step / far})` });
      stop.append(make("circle", { r: 12 }), make("text", { y: 5.5 }, number));
      svg.append(stop);
    }
  }
  function centre(kind, name) {
    // A strip may just have opened: the place is chosen for the size as it is now, and the observer need not move it.
    size = [host.clientWidth, host.clientHeight];
    const box = kind === "part" ? parts.get(name)?.[0].box : wires.has(name) ? around(wires.get(name).strands.flat()) : null;
    if (box) look(box, 1.2, 60);
  }

  // Which wires pass near a point of the screen, the nearest first; those as near as the first are not told apart.
  const near = (e) => {
    const frame = host.getBoundingClientRect(), p = [(e.clientX - frame.left - x) / k, (e.clientY - frame.top - y) / k];
    const found = [...wires].map(([name, w]) => [Math.min(...w.strands.map(s => Math.min(...s.slice(1).map((end, i) => away(p, s[i], end))))) * k, name])
      .filter(f => f[0] <= (NEAR[e.pointerType] ?? 12)).sort((a, b) => a[0] - b[0]);
    return found.filter(f => f[0] - found[0][0] < 3).map(f => f[1]);
  };
  const move = (name, right, down) => { const b = parts.get(name)[0].box; call("Moved", name, b.x + right, b.y + down); };
  const under = (e) => things.find(t => e.composedPath().includes(t.node));
  const spot = (e) => { const f = host.getBoundingClientRect(); return [e.clientX - f.left, e.clientY - f.top]; };
  const pick = (e, menu) => {
    const [part, wires] = [under(e), near(e)], at = spot(e);
    const back = e.composedPath()[0].closest(".r[data-wire]")?.dataset.wire;
    if (back) call("Pick", "wire", back, menu, ...at);
    else if (part?.kind === "part") call("Pick", "part", part.name, menu, ...at);
    else if (wires.length > 1 && !menu) call("Which", wires, ...at);
    else if (wires.length) call("Pick", "wire", wires[0], menu, ...at);
    else if (part) call("Pick", part.kind, part.name, menu, ...at);
  };

  const down = new Map();
  let moved, box, ghost, long;
  host.addEventListener("pointerdown", (e) => {
    if (e.button) return;
    down.set(e.pointerId, e);
    moved = down.size > 1;
    const t = under(e);
    box = t?.kind === "part" && svg.classList.contains("movable") && (e.pointerType !== "touch" || t.node.getAttribute("aria-pressed") === "true") ? t : null;
    clearTimeout(long);
    if (e.pointerType === "touch") long = setTimeout(() => { if (!moved) { moved = true; pick(e, true); } }, 550);
  });
  host.addEventListener("pointermove", (e) => {
    const was = down.get(e.pointerId), other = [...down.values()].find(o => o.pointerId !== e.pointerId);
    if (!was || (!moved && Math.hypot(e.clientX - was.clientX, e.clientY - was.clientY) < 6)) return;
    if (!moved) host.setPointerCapture(e.pointerId);
    moved = true;
    if (box && !other) {
      const b = parts.get(box.name)[0].box;
      if (!ghost) svg.append(ghost = make("rect", { class: "ghost", width: b.width, height: b.height, rx: 3 }));
      ghost.setAttribute("x", b.x + (e.clientX - was.clientX) / k);
      ghost.setAttribute("y", b.y + (e.clientY - was.clientY) / k);
      return;
    }
    if (other) zoom(Math.hypot(e.clientX - other.clientX, e.clientY - other.clientY) / Math.hypot(was.clientX - other.clientX, was.clientY - other.clientY), ...spot(other));
    else { whole = false; x += e.clientX - was.clientX; y += e.clientY - was.clientY; place(); }
    down.set(e.pointerId, e);
  });
  const up = (e) => {
    const was = down.get(e.pointerId);
    down.delete(e.pointerId);
    clearTimeout(long);
    if (ghost) {
      ghost.remove();
      ghost = null;
      if (e.type === "pointerup") move(box.name, (e.clientX - was.clientX) / k, (e.clientY - was.clientY) / k);
    } else if (was && !moved && e.type === "pointerup") pick(e, false);
  };
  host.addEventListener("pointerup", up);
  host.addEventListener("pointercancel", up);
  host.addEventListener("contextmenu", (e) => { e.preventDefault(); if (e.button === 2) pick(e, true); });
  host.addEventListener("wheel", (e) => { e.preventDefault(); zoom(Math.exp(-e.deltaY * 0.0015), ...spot(e)); }, { passive: false });
  host.addEventListener("keydown", (e) => {
    const t = under(e), arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    const middle = t && (({ left, top, width, height }) => spot({ clientX: left + width / 2, clientY: top + height / 2 }))(t.node.getBoundingClientRect());
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    if (e.key === "+" || e.key === "=") zoom(1.25);
    else if (e.key === "-") zoom(0.8);
    else if (e.key === "0") fit();
    else if (arrow && t?.kind === "part" && e.shiftKey && svg.classList.contains("movable")) move(t.name, 20 * arrow[0], 20 * arrow[1]);
    else if (arrow && t) step(things[(things.indexOf(t) + arrow[0] + arrow[1] + things.length) % things.length]);
    else if (arrow) { x -= 60 * arrow[0]; y -= 60 * arrow[1]; place(); }
    else if (t && (e.key === "Enter" || e.key === " ")) call("Pick", t.kind, t.name, false, ...middle);
    else if (t && (e.key === "ContextMenu" || e.key === "m" || (e.key === "F10" && e.shiftKey))) call("Pick", t.kind, t.name, true, ...middle);
    else return;
    e.preventDefault();
  });
  function step(next) {
    for (const t of things) t.node.tabIndex = t === next ? 0 : -1;
    next.node.focus({ preventScroll: true });
    const [a, b] = [next.node.getBoundingClientRect(), host.getBoundingClientRect()];
    if (a.left < b.left || a.right > b.right) x += b.left + b.width / 2 - (a.left + a.width / 2);
    if (a.top < b.top || a.bottom > b.bottom) y += b.top + b.height / 2 - (a.top + a.height / 2);
    place();
  }
  return {
    draw, show, light, follow, centre, zoom: (by) => by ? zoom(by) : fit(), number: (which) => { numbers = which; for (const w of wires.values()) w.labels.forEach(say); },
    seen: () => host.clientHeight > 0,
    focus: (kind, name) => { const t = things.find(t => t.kind === kind && t.name === name); t ? step(t) : host.focus(); },
  };
}
