// How the sheet lies under the window it is seen through: larger, smaller, moved, and kept in place when the window changes.
const narrow = 600, readable = 0.8;
const held = (low, value, high) => Math.min(high, Math.max(low, value));

/** @param {() => { svg, body }} sheet the sheet as it now is; without svg before there is one
    @param {() => void} firstRoom told when there is room for the first time: on a phone the sheet lies folded until somebody wants it */
export function over(host, sheet, firstRoom) {
  let k = 1, x = 0, y = 0, whole = true, roomy = false, size = [host.clientWidth, host.clientHeight];
  const place = () => sheet().svg && (sheet().svg.style.transform = `translate(${x}px,${y}px) scale(${k})`);
  const zoom = (by, px = host.clientWidth / 2, py = host.clientHeight / 2) => {
    const next = held(0.15, k * by, 4);
    [x, y, k] = [px - (px - x) * next / k, py - (py - y) * next / k, next];
    whole = false;
    place();
  };
  const look = (box, most, room = 12) => {
    // A strip may just have opened: the place is chosen for the size as it is now, and the observer need not move it.
    size = [host.clientWidth, host.clientHeight];
    if (!host.clientHeight || !sheet().svg) return;
    k = held(0.15, Math.min((host.clientWidth - 2 * room) / box.width, (host.clientHeight - 2 * room) / box.height), most);
    [x, y] = [host.clientWidth / 2 - k * (box.x + box.width / 2), host.clientHeight / 2 - k * (box.y + box.height / 2)];
    whole = false;
    place();
  };
  const fit = () => { look(sheet().body, 1.2); whole = true; };
  // The whole of a large sheet is not to be read on a phone: it opens at its largest part, as large as can be read.
  const open = () => {
    fit();
    if (host.clientWidth >= narrow || k >= readable || !sheet().parts?.size) return;
    [k, whole] = [readable, false];
    const area = (b) => b.width * b.height;
    const at = [...sheet().parts.values()].flat().map((p) => p.box).reduce((most, b) => area(b) > area(most) ? b : most);
    [x, y] = [host.clientWidth / 2 - k * (at.x + at.width / 2), host.clientHeight / 2 - k * (at.y + at.height / 2)];
    place();
  };
  const pan = (right, down) => { whole = false; x += right; y += down; place(); };
  const spot = (e) => { const f = host.getBoundingClientRect(); return [e.clientX - f.left, e.clientY - f.top]; };

  new ResizeObserver(() => {
    if (!host.clientHeight) return;
    const first = !roomy;
    roomy = true;
    if (!size[1]) host.scrollIntoView();
    if (first && !sheet().svg) firstRoom();
    else if (whole) fit();
    else pan((host.clientWidth - size[0]) / 2, (host.clientHeight - size[1]) / 2);
    size = [host.clientWidth, host.clientHeight];
  }).observe(host);

  return {
    zoom, fit, pan, look, spot,
    scale: () => k,
    /** Of an event, on the sheet. */
    onSheet: (e) => { const at = spot(e); return [(at[0] - x) / k, (at[1] - y) / k]; },
    /** After another sheet was put there; one of another name is shown whole, on a phone from its largest part on. */
    renew: (other) => other ? open() : whole ? fit() : place(),
    /** Moves the sheet only when what is looked at lies outside. */
    reach: (node) => {
      const [a, b] = [node.getBoundingClientRect(), host.getBoundingClientRect()];
      const right = a.left < b.left || a.right > b.right ? b.left + b.width / 2 - (a.left + a.width / 2) : 0;
      const down = a.top < b.top || a.bottom > b.bottom ? b.top + b.height / 2 - (a.top + a.height / 2) : 0;
      if (right || down) pan(right, down);
    },
  };
}
