// Light or dim, kept on this device; the system's wish until the person chooses.
(() => {
  const kept = localStorage.getItem("theme");
  const dim = kept ? kept === "dim" : matchMedia("(prefers-color-scheme: dark)").matches;
  const show = (d) => document.documentElement.dataset.theme = d ? "dim" : "light";
  show(dim);
  document.addEventListener("DOMContentLoaded", () => {
    const box = document.getElementById("dim");
    if (!box) return;
    box.checked = document.documentElement.dataset.theme === "dim";
    box.addEventListener("change", () => {
      localStorage.setItem("theme", box.checked ? "dim" : "light");
      show(box.checked);
    });
  });
})();
