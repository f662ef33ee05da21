// Pointer, wheel and keyboard on the sheet. What a pick or a drag means is for the page to say.
const { make, away } = await import(`./sheet.js${new URL(import.meta.url).search}`);
const NEAR = { mouse: 12, pen: 12, touch: 22 };
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const HELD = 550;

export function hands(host, sheet, view, call) {
  const movable = () => sheet().svg.classList.contains("movable");
  const under = (e) => sheet().things.find(t => e.composedPath().includes(t.node));
  const boxOf = (name) => sheet().parts.get(name)[0].box;
  const move = (name, right, down) => { const b = boxOf(name); call("Moved", name, b.x + right, b.y + down); };

  // Which wires pass near a point of the screen, the nearest first; those as near as the first are not told apart.
  const near = (e) => {
    const p = view.onSheet(e);
    const found = [...sheet().wires].map(([name, w]) => [Math.min(...w.strands.map(s => Math.min(...s.slice(1).map((end, i) => away(p, s[i], end))))) * view.scale(), name])
      .filter(f => f[0] <= (NEAR[e.pointerType] ?? 12)).sort((a, b) => a[0] - b[0]);
    return found.filter(f => f[0] - found[0][0] < 3).map(f => f[1]);
  };
  const pick = (e, menu) => {
    const [part, wires, at] = [under(e), near(e), view.spot(e)];
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
    box = t?.kind === "part" && movable() && (e.pointerType !== "touch" || t.node.getAttribute("aria-pressed") === "true") ? t : null;
    clearTimeout(long);
    if (e.pointerType === "touch") long = setTimeout(() => { if (!moved) { moved = true; pick(e, true); } }, HELD);
  });
  host.addEventListener("pointermove", (e) => {
    const was = down.get(e.pointerId), other = [...down.values()].find(o => o.pointerId !== e.pointerId);
    if (!was || (!moved && Math.hypot(e.clientX - was.clientX, e.clientY - was.clientY) < 6)) return;
    if (!moved) host.setPointerCapture(e.pointerId);
    moved = true;
    if (box && !other) {
      const b = boxOf(box.name);
      if (!ghost) sheet().svg.append(ghost = make("rect", { class: "ghost", width: b.width, height: b.height, rx: 3 }));
      ghost.setAttribute("x", b.x + (e.clientX - was.clientX) / view.scale());
      ghost.setAttribute("y", b.y + (e.clientY - was.clientY) / view.scale());
      return;
    }
    if (other) view.zoom(Math.hypot(e.clientX - other.clientX, e.clientY - other.clientY) / Math.hypot(was.clientX - other.clientX, was.clientY - other.clientY), ...view.spot(other));
    else view.pan(e.clientX - was.clientX, e.clientY - was.clientY);
    down.set(e.pointerId, e);
  });
  const up = (e) => {
    const was = down.get(e.pointerId);
    down.delete(e.pointerId);
    clearTimeout(long);
    if (ghost) {
      ghost.remove();
      ghost = null;
      if (e.type === "pointerup") move(box.name, (e.clientX - was.clientX) / view.scale(), (e.clientY - was.clientY) / view.scale());
    } else if (was && !moved && e.type === "pointerup") pick(e, false);
  };
  host.addEventListener("pointerup", up);
  host.addEventListener("pointercancel", up);
  host.addEventListener("contextmenu", (e) => { e.preventDefault(); if (e.button === 2) pick(e, true); });
  host.addEventListener("wheel", (e) => { e.preventDefault(); view.zoom(Math.exp(-e.deltaY * 0.0015), ...view.spot(e)); }, { passive: false });

  const step = (next) => {
    for (const t of sheet().things) t.node.tabIndex = t === next ? 0 : -1;
    next.node.focus({ preventScroll: true });
    view.reach(next.node);
  };
  host.addEventListener("keydown", (e) => {
    const things = sheet().things, t = under(e), arrow = ARROWS[e.key];
    const middle = t && (({ left, top, width, height }) => view.spot({ clientX: left + width / 2, clientY: top + height / 2 }))(t.node.getBoundingClientRect());
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    if (e.key === "+" || e.key === "=") view.zoom(1.25);
    else if (e.key === "-") view.zoom(0.8);
    else if (e.key === "0") view.fit();
    else if (arrow && t?.kind === "part" && e.shiftKey && movable()) move(t.name, 20 * arrow[0], 20 * arrow[1]);
    else if (arrow && t) step(things[(things.indexOf(t) + arrow[0] + arrow[1] + things.length) % things.length]);
    else if (arrow) view.pan(-60 * arrow[0], -60 * arrow[1]);
    else if (t && (e.key === "Enter" || e.key === " ")) call("Pick", t.kind, t.name, false, ...middle);
    else if (t && (e.key === "ContextMenu" || e.key === "m" || (e.key === "F10" && e.shiftKey))) call("Pick", t.kind, t.name, true, ...middle);
    else return;
    e.preventDefault();
  });
  return { step };
}
