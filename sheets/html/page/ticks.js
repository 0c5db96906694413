"use strict";
// Remembers which boxes are ticked, under the sheet's own key. Where the
// browser keeps nothing, the boxes work as they do without this script.
(() => {
  const boxes = [...document.querySelectorAll("main input[type=checkbox]")];
  const bar = document.getElementById("ticks");
  if (!boxes.length || !bar) return;
  const key = "bodkin " + document.body.dataset.key;
  const given = boxes.map((box) => box.defaultChecked);
  const kept = () => {
    try { return localStorage.getItem(key); } catch { return null; }
  };
  const keep = () => {
    try { localStorage.setItem(key, boxes.map((box) => (box.checked ? "1" : "0")).join("")); } catch { /* nothing is kept */ }
  };
  const done = document.getElementById("done");
  const next = document.getElementById("next");
  const tell = () => {
    const n = boxes.filter((box) => box.checked).length;
    done.textContent = `${n} of ${boxes.length} ticked`;
    next.disabled = n === boxes.length;
  };
  const marks = kept();
  if (marks !== null && marks.length === boxes.length) {
    boxes.forEach((box, i) => { box.checked = marks[i] === "1"; });
  }
  document.addEventListener("change", (event) => {
    if (boxes.includes(event.target)) { keep(); tell(); }
  });
  next.addEventListener("click", () => {
    const box = boxes.find((b) => !b.checked);
    if (!box) return;
    box.closest("label").scrollIntoView({ block: "center" });
    box.focus({ preventScroll: true });
  });
  document.getElementById("clear").addEventListener("click", () => {
    if (!confirm("Clear all ticks of this sheet?")) return;
    boxes.forEach((box, i) => { box.checked = given[i]; });
    keep();
    tell();
  });
  bar.hidden = false;
  tell();
})();
