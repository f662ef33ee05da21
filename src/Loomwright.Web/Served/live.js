// Loads the page again when the file it was made from has changed on the disk.
(() => {
  const look = async (page) => {
    try {
      const answer = document.hidden ? null : await fetch(page.dataset.changes);
      if (answer?.status === 205) location.reload();
    } catch {
      // The program is stopped: the page stays as it is.
    }
  };
  document.addEventListener("DOMContentLoaded", () => {
    const page = document.querySelector("[data-changes]");
    if (page) setInterval(look, 1000, page);
  });
})();

// Brings what is asked next to the top of the screen, and the focus to it.
window.toTop = (heading) => {
  heading.scrollIntoView();
  heading.focus({ preventScroll: true });
};
