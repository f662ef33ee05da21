// Light or dim, kept on this device; the system's wish until the person chooses.
(() => {
  const kept = localStorage.getItem("theme");
  const show = (dim) => document.documentElement.dataset.theme = dim ? "dim" : "light";
  show(kept ? kept === "dim" : matchMedia("(prefers-color-scheme: dark)").matches);
  document.addEventListener("change", (e) => {
    if (e.target.id !== "dim") return;
    localStorage.setItem("theme", e.target.checked ? "dim" : "light");
    show(e.target.checked);
  });

  // A page that comes alive puts a new box in the old one's place.
  let ticked = null;
  new MutationObserver(() => {
    const box = document.getElementById("dim");
    if (!box || box === ticked) return;
    ticked = box;
    box.checked = document.documentElement.dataset.theme === "dim";
  }).observe(document, { childList: true, subtree: true });
})();
