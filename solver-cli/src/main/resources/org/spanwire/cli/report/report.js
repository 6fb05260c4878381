// The page says all it has to say without this: it adds a choice of bands, and values under the pointer.
"use strict";
(() => {
  const choice = document.querySelector(".bands");
  const buttons = choice ? [...choice.querySelectorAll("button")] : [];
  const show = () => {
    const chosen = new Set(buttons.filter(b => b.getAttribute("aria-pressed") === "true").map(b => b.dataset.choose));
    document.querySelectorAll("[data-band]").forEach(e => { e.hidden = !chosen.has(e.dataset.band); });
  };
  buttons.forEach(button => button.addEventListener("click", () => {
    button.setAttribute("aria-pressed", String(button.getAttribute("aria-pressed") !== "true"));
    if (!buttons.some(b => b.getAttribute("aria-pressed") === "true")) {
      buttons.forEach(b => b.setAttribute("aria-pressed", "true"));
    }
    show();
  }));
  if (choice) choice.hidden = buttons.length < 2;

  document.querySelectorAll("figure[data-marks]").forEach(figure => {
    const marks = JSON.parse(figure.dataset.marks);
    const svg = figure.querySelector("svg");
    const readout = figure.querySelector(".readout");
    if (marks.length === 0) return;
    const cursor = document.createElementNS(svg.namespaceURI, "circle");
    cursor.setAttribute("class", "cursor");
    cursor.setAttribute("r", "6");
    cursor.setAttribute("visibility", "hidden");
    svg.append(cursor);
    svg.setAttribute("tabindex", "0");
    let at = -1;
    const select = index => {
      at = index;
      const [x, y, text] = marks[at];
      cursor.setAttribute("cx", x);
      cursor.setAttribute("cy", y);
      cursor.setAttribute("visibility", "visible");
      readout.textContent = text;
    };
    const clear = () => {
      at = -1;
      cursor.setAttribute("visibility", "hidden");
      readout.textContent = "";
    };
    const nearest = event => {
      const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
      const away = marks.map(([x, y]) => Math.hypot(x - p.x, y - p.y));
      select(away.indexOf(Math.min(...away)));
    };
    svg.addEventListener("pointermove", nearest);
    svg.addEventListener("pointerdown", nearest);
    svg.addEventListener("pointerleave", clear);
    svg.addEventListener("blur", clear);
    svg.addEventListener("keydown", event => {
      const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (!step) return;
      event.preventDefault();
      select(at < 0 ? (step > 0 ? 0 : marks.length - 1) : (at + step + marks.length) % marks.length);
    });
  });
})();
