// Draws the chosen curves into the plots, and compares readings with them. Nothing leaves the page.
"use strict";
(() => {
  const site = JSON.parse(document.getElementById("site-data").textContent);
  const key = "spanwire readings " + site.key;
  const svgNames = "http://www.w3.org/2000/svg";
  // A handheld meter is good to this much of |reflection coefficient|: common practice, no source.
  const METER = 0.05;
  const selects = ["ground", "line", "height"].map(name => document.getElementById("choose-" + name));
  const body = document.querySelector("#readings tbody");
  const judgement = document.getElementById("judgement");
  const figures = [...document.querySelectorAll("figure[data-index]")];

  const toSwr = g => g >= 1 ? Infinity : (1 + g) / (1 - g);
  const toGamma = s => (s - 1) / (s + 1);
  const words = swr => !Number.isFinite(swr) ? "inf" : swr < 9.995 ? swr.toFixed(2) : swr < 99.95 ? swr.toFixed(1) : swr.toFixed(0);
  const choice = () => selects.map(s => Number(s.value));
  const place = ([ground, line, height]) =>
    site.places[(ground * site.lines.length + line) * site.heights.length + height];
  const called = ([ground, line, height]) =>
    `height ${site.heights[height]}, soil ${site.grounds[ground]}, feed line ${site.lines[line]}`;
  const all = [];
  site.grounds.forEach((g, i) => site.lines.forEach((l, j) => site.heights.forEach((h, k) => {
    if (place([i, j, k])) all.push([i, j, k]);
  })));

  const bandOf = mhz => site.bands.findIndex(b => mhz >= b.from - 1e-9 && mhz <= b.to + 1e-9);
  // |reflection coefficient| of a place, straight between the table's frequencies.
  const gamma = (where, mhz) => {
    const index = bandOf(mhz);
    const curves = place(where);
    if (index < 0 || !curves) return NaN;
    const band = site.bands[index];
    const values = curves[index];
    const at = Math.min(values.length - 1, Math.max(0, (mhz - band.from) / (band.to - band.from) * (values.length - 1)));
    const low = Math.min(values.length - 2, Math.floor(at));
    return (values[low] + (at - low) * (values[low + 1] - values[low])) / 1e4;
  };

  const make = (parent, name, attributes) => {
    const element = document.createElementNS(svgNames, name);
    Object.entries(attributes).forEach(([k, v]) => element.setAttribute(k, v));
    parent.append(element);
    return element;
  };

  const plots = figures.map(figure => {
    const svg = figure.querySelector("svg");
    const [[left, bottom], [right, top]] = JSON.parse(figure.dataset.corners);
    const band = site.bands[Number(figure.dataset.index)];
    const layer = make(svg, "g", {});
    // The axis of SWR is that of |reflection coefficient|, from 0 to 1.
    const x = mhz => left + (mhz - band.from) / (band.to - band.from) * (right - left);
    const y = g => bottom + g * (top - bottom);
    return { figure, svg, layer, band, index: Number(figure.dataset.index), x, y };
  });

  const rows = () => [...body.rows].map(row => {
    const [mhz, swr] = [...row.querySelectorAll("input")].map(input => parseFloat(input.value.replace(",", ".")));
    return { row, mhz, swr };
  });
  const complete = () => rows().filter(r => Number.isFinite(r.mhz) && r.swr >= 1);

  const draw = () => {
    const where = choice();
    plots.forEach(plot => {
      plot.layer.replaceChildren();
      const curves = place(where);
      const caption = plot.figure.querySelector(".readout");
      if (!curves) {
        caption.textContent = "chosen: cannot be modelled";
      } else {
        const values = curves[plot.index];
        const step = (plot.band.to - plot.band.from) / (values.length - 1);
        const points = values.map((v, i) => `${plot.x(plot.band.from + i * step).toFixed(1)},${plot.y(v / 1e4).toFixed(1)}`);
        make(plot.layer, "polyline", { class: "chosen", points: points.join(" ") });
        const inside = values.map((v, i) => [plot.band.from + i * step, v / 1e4])
          .filter(([mhz]) => mhz >= plot.band.low - 1e-6 && mhz <= plot.band.high + 1e-6);
        const best = inside.reduce((a, b) => b[1] < a[1] ? b : a);
        const worst = inside.reduce((a, b) => b[1] > a[1] ? b : a);
        caption.textContent = `chosen: SWR ${words(toSwr(best[1]))} at ${best[0].toFixed(3)} to ${words(toSwr(worst[1]))} at ${worst[0].toFixed(3)} MHz`;
      }
      complete().filter(r => bandOf(r.mhz) === plot.index).forEach(r => {
        const [cx, cy] = [plot.x(r.mhz), plot.y(toGamma(r.swr))];
        make(plot.layer, "path", { class: "read", d: `M${cx - 5},${cy}L${cx},${cy - 5}L${cx + 5},${cy}L${cx},${cy + 5}Z` });
      });
    });
  };

  const spread = (places, mhz) => {
    const values = places.map(p => gamma(p, mhz));
    return [Math.min(...values), Math.max(...values)];
  };
  const nearest = (places, mhz, read) =>
    places.reduce((a, b) => Math.abs(gamma(b, mhz) - read) < Math.abs(gamma(a, mhz) - read) ? b : a);

  const difference = (mhz, swr) => {
    const where = choice();
    const read = toGamma(swr);
    const expected = gamma(where, mhz);
    if (bandOf(mhz) < 0) return ["-", "outside the bands of this page"];
    const shown = Number.isNaN(expected) ? "-" : words(toSwr(expected));
    if (Math.abs(read - expected) <= METER) return [shown, "as expected"];
    const way = read > expected ? "higher" : "lower";
    const heights = all.filter(p => p[0] === where[0] && p[1] === where[1]);
    const [low, high] = heights.length ? spread(heights, mhz) : [NaN, NaN];
    if (read >= low - METER && read <= high + METER) {
      const near = nearest(heights, mhz, read);
      return [shown, `reads ${way}; at height ${site.heights[near[2]]} ${words(toSwr(gamma(near, mhz)))} is expected`];
    }
    const [least, most] = spread(all, mhz);
    if (read > most + METER) {
      return [shown, "reads higher than any height, soil or line in the table explains: look at wire, connections and transformer"];
    }
    if (read < least - METER) {
      return [shown, "reads lower than any height, soil or line in the table explains: loss in the line or the transformer hides the antenna"];
    }
    const near = nearest(all, mhz, read);
    return [shown, `reads ${way} than any height explains here; ${called(near)} would: ${words(toSwr(gamma(near, mhz)))}`];
  };

  const misfit = (where, readings) =>
    Math.sqrt(readings.reduce((sum, r) => sum + (gamma(where, r.mhz) - toGamma(r.swr)) ** 2, 0) / readings.length);
  const best = readings => all.reduce((a, b) => misfit(b, readings) < misfit(a, readings) ? b : a);

  const judge = () => {
    rows().forEach(r => {
      const [expected, text] = Number.isFinite(r.mhz) && r.swr >= 1
        ? difference(r.mhz, r.swr)
        : ["", Number.isFinite(r.swr) && r.swr < 1 ? "an SWR is at least 1" : ""];
      r.row.cells[2].textContent = expected;
      r.row.cells[3].textContent = text;
    });
    const readings = complete().filter(r => bandOf(r.mhz) >= 0);
    document.getElementById("best-choice").disabled = readings.length < 2;
    if (readings.length < 2) {
      judgement.textContent = readings.length === 0 ? "" : "One reading fits many places: read at both edges of each band.";
      return;
    }
    const found = best(readings);
    const off = misfit(found, readings);
    judgement.textContent = off <= METER
      ? `All readings together fit best: ${called(found)}.`
      : `Nothing in the table explains all readings together; nearest is ${called(found)}. Look for a fault, a wrong length, or metal nearby before trimming.`;
  };

  const kept = document.getElementById("kept");
  const keep = () => {
    const values = [...body.rows].map(row => [...row.querySelectorAll("input")].map(input => input.value));
    try {
      localStorage.setItem(key, JSON.stringify({ choice: choice(), readings: values }));
      kept.textContent = "Readings are kept in this browser only, for this page.";
    } catch (e) {
      kept.textContent = "This browser keeps nothing: write the readings down before closing the page.";
    }
  };
  const update = () => { draw(); judge(); keep(); };

  const add = (mhz, swr) => {
    const row = body.insertRow();
    [["frequency in MHz", mhz], ["SWR read", swr]].forEach(([label, value]) => {
      const input = document.createElement("input");
      input.type = "text";
      input.inputMode = "decimal";
      input.autocomplete = "off";
      input.size = 8;
      input.value = value;
      input.setAttribute("aria-label", label);
      input.addEventListener("input", update);
      row.insertCell().append(input);
    });
    row.insertCell();
    row.insertCell();
    const remove = document.createElement("button");
    remove.type = "button";
    remove.textContent = "Remove";
    remove.addEventListener("click", () => { row.remove(); if (body.rows.length === 0) add("", ""); update(); });
    row.insertCell().append(remove);
    return row;
  };

  const restore = () => {
    let stored = null;
    try {
      stored = JSON.parse(localStorage.getItem(key));
    } catch (e) {
      stored = null;
    }
    if (!stored || !Array.isArray(stored.readings)) return false;
    stored.readings.forEach(([mhz, swr]) => add(String(mhz), String(swr)));
    selects.forEach((select, i) => { if (select.options[stored.choice[i]]) select.value = String(stored.choice[i]); });
    return stored.readings.length > 0;
  };

  if (!restore()) for (let i = 0; i < 3; i++) add("", "");
  selects.forEach(select => select.addEventListener("change", update));
  document.getElementById("add-reading").addEventListener("click", () => add("", "").querySelector("input").focus());
  document.getElementById("clear-readings").addEventListener("click", () => { body.replaceChildren(); add("", ""); update(); });
  document.getElementById("best-choice").addEventListener("click", () => {
    best(complete().filter(r => bandOf(r.mhz) >= 0)).forEach((index, i) => { selects[i].value = String(index); });
    update();
  });
  document.querySelectorAll(".choice, .entry, .scripted").forEach(e => { e.hidden = false; });
  update();
})();
