// Reads a drawn sheet once: its wires, parts, lights and labels by name, and what can be pointed at.
export const make = (name, attributes, text = "") => {
  const e = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const key in attributes) e.setAttribute(key, attributes[key]);
  e.textContent = text;
  return e;
};

/** How far a point lies from a straight run. */
export const away = (p, [a, b], [c, d]) => {
  const along = Math.min(1, Math.max(0, ((p[0] - a) * (c - a) + (p[1] - b) * (d - b)) / ((c - a) ** 2 + (d - b) ** 2 || 1)));
  return Math.hypot(p[0] - a - along * (c - a), p[1] - b - along * (d - b));
};

/** The rectangle around some spots. */
export const around = (spots) => {
  const [xs, ys] = [spots.map(s => s[0]), spots.map(s => s[1])];
  return { x: Math.min(...xs), y: Math.min(...ys), width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
};

export const lightKey = (part, terminal) => `${part}\n${terminal}`;

export function read(svg) {
  const wires = new Map(), parts = new Map(), lights = new Map(), things = [];
  const thing = (node, kind, name, at) => {
    node.setAttribute("role", "button");
    node.setAttribute("aria-label", `${kind} ${name}`);
    node.tabIndex = -1;
    things.push({ node, kind, name, at });
  };
  for (const g of svg.querySelectorAll("g.w[data-wire]")) {
    const called = g.dataset.wire, d = svg.querySelector(g.querySelector("use").getAttribute("href")).getAttribute("d").match(/-?[\d.]+/g).map(Number);
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
  for (const light of svg.querySelectorAll(".glow[data-light]")) {
    const key = lightKey(light.dataset.part, light.dataset.light);
    lights.set(key, [...lights.get(key) ?? [], light]);
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
  const boxes = [...[...parts.values()].flat().map(p => p.box), ...[...svg.querySelectorAll(".room")].map(r => r.getBBox())];
  const body = around([...wires.values()].flatMap(w => w.strands.flat()).concat(boxes.flatMap(b => [[b.x, b.y], [b.x + b.width, b.y + b.height]])));
  return { svg, wires, parts, lights, things, body };
}
