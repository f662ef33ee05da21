// Tells how long the further checks still take; a session begun before waits for them.
(() => {
  const says = document.querySelector("[data-ready]");
  const form = says.closest("form");
  let waits = true;
  const look = async () => {
    try {
      const answer = await fetch(says.dataset.ready);
      if (!answer.ok) return;
      const text = await answer.text();
      waits = text !== "";
      says.textContent = !waits ? "" : form.classList.contains("sent") ? `${text} The session begins by itself then.` : text;
    } catch {
      // The program is away: what it said last stays.
    }
    if (waits) setTimeout(look, 700);
  };
  form.addEventListener("submit", () => form.classList.add("sent"));
  look();
})();
