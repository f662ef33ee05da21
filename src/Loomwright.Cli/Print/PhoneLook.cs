namespace Loomwright.Print;

/// <summary>How the phone's page looks and keeps its ticks. Light or dark by the phone's own setting.</summary>
internal static class PhoneLook
{
    public const string Css = """
        :root { color-scheme: light dark; --paper: #faf9f6; --sheet: #ffffff; --ink: #1d2327; --quiet: #55606a; --line: #c9ced2; --main: #0b5d6b; --warn: #7a3b00; --warn-paper: #fff1dd; --on: #9c1c1c; }
        @media (prefers-color-scheme: dark) { :root { --paper: #14181b; --sheet: #1d2327; --ink: #eceff1; --quiet: #b0b9c0; --line: #465059; --main: #7fd3e0; --warn: #ffcf99; --warn-paper: #3a2a16; --on: #ff9d9d; } }
        * { box-sizing: border-box; }
        html { scroll-padding: 72px 0; }
        body { margin: 0; background: var(--paper); color: var(--ink); font: 17px/1.45 system-ui, sans-serif; overflow-wrap: anywhere; }
        header, main { max-width: 46rem; margin: 0 auto; padding: 0 14px; }
        h1 { font-size: 1.35rem; margin: 16px 0 6px; }
        h3 { font-size: 1rem; margin: 20px 0 6px; }
        .quiet { color: var(--quiet); font-size: 16px; margin: 6px 0; }
        details { background: var(--sheet); border: 1px solid var(--line); border-radius: 10px; margin: 12px 0; padding: 0 14px; }
        details[open] { padding-bottom: 14px; }
        summary { min-height: 64px; padding: 8px 0; display: flex; gap: 8px; align-items: center; justify-content: space-between; font-weight: 600; cursor: pointer; }
        summary:focus-visible, input:focus-visible { outline: 3px solid var(--main); outline-offset: 2px; }
        .stage > summary { position: sticky; top: 0; background: var(--sheet); border-radius: 10px; z-index: 1; }
        .done { font-weight: 400; white-space: nowrap; color: var(--quiet); }
        .hot { position: sticky; bottom: 0; border: 2px solid var(--on); margin-bottom: 0; }
        .hot summary { color: var(--on); }
        ol { list-style: none; margin: 0; padding: 0; }
        li { border-top: 1px solid var(--line); padding: 6px 0; }
        ul li { padding: 10px 0; }
        label { display: flex; gap: 14px; align-items: center; min-height: 64px; cursor: pointer; }
        input { width: 32px; height: 32px; flex: none; margin: 0; accent-color: var(--main); }
        input:checked + span { color: var(--quiet); text-decoration: line-through; text-decoration-thickness: 1px; }
        .caution { background: var(--warn-paper); color: var(--warn); border-left: 4px solid var(--warn); padding: 8px 10px; margin: 6px 0; }
        .power { font-weight: 600; margin: 6px 0; }
        .power.on { color: var(--on); }
        .meter { display: flex; gap: 12px; border: 1px solid var(--line); border-radius: 8px; padding: 10px; margin: 6px 0; }
        .meter svg { flex: none; width: 84px; height: 98px; }
        dl { margin: 6px 0; padding: 8px 10px; border: 1px dashed var(--line); border-radius: 8px; }
        dl::before { content: "Expect, computed"; font-size: 15px; color: var(--quiet); }
        dl div { display: flex; flex-wrap: wrap; justify-content: space-between; column-gap: 14px; padding: 2px 0; }
        dt { color: var(--quiet); } dd { margin: 0; font-weight: 600; }
        @media print { body { font-size: 12px; } header, main { max-width: none; } .hot { position: static; border: 1px solid; } details { border: 0; padding: 0; } .stage { break-before: page; } .stage > summary { position: static; min-height: 0; } li, dl, .meter, .caution { break-inside: avoid; } h3 { break-after: avoid; } label { min-height: 0; } input { width: 16px; height: 16px; } .meter { padding: 4px; } .meter svg { width: 36px; height: 42px; } ol > li { display: grid; grid-template-columns: minmax(0, 1fr) 40%; grid-auto-flow: dense; gap: 2px 12px; align-items: start; padding: 3px 0; } li > * { grid-column: 1; } .caution, .power { grid-column: 1 / -1; } dl { grid-column: 2; grid-row: span 2; margin: 0; padding: 3px 6px; } dl::before { font-size: 10px; } }

        """;

    public const string Script = """
        (function () {
          var key = 'loomwright ' + document.body.dataset.plan, kept = {};
          try { kept = JSON.parse(localStorage.getItem(key) || '{}'); } catch (e) { kept = {}; }
          var boxes = document.querySelectorAll('input[type=checkbox]');
          function count() {
            document.querySelectorAll('details.stage').forEach(function (stage) {
              var all = stage.querySelectorAll('input').length, done = stage.querySelectorAll('input:checked').length, says = stage.querySelector('.done');
              if (says) { says.textContent = done + ' of ' + all; }
            });
          }
          boxes.forEach(function (box) {
            box.checked = !!kept[box.id];
            box.addEventListener('change', function () {
              kept[box.id] = box.checked;
              try { localStorage.setItem(key, JSON.stringify(kept)); } catch (e) { }
              count();
            });
          });
          count();
          // Paper has no lid to open.
          var shut = [];
          window.addEventListener('beforeprint', function () { shut = [].slice.call(document.querySelectorAll('details:not([open])')); shut.forEach(function (d) { d.open = true; }); });
          window.addEventListener('afterprint', function () { shut.forEach(function (d) { d.open = false; }); });
        })();

        """;
}
