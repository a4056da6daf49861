// Follows the state of the server and shows the sheet that is chosen. Texts go in as text, never as markup; a
// drawing is parsed as XML and moved in.
"use strict";

const $ = (id) => document.getElementById(id);
let state = null; // as last sent
let lost = false; // the server does not answer
let chosen = ""; // ID of the sheet that is looked at
let asked = 0; // counts the drawings asked for, so that a late answer is dropped
const nothing = { id: "", text: "", error: "", wide: 1, high: 1 };
let shown = { ...nothing }; // what stands in the drawing
const views = new Map(); // by sheet ID: { x, y: paper mm in the middle, k: mm per pixel }; none is the whole sheet

// ---- what is known

async function follow() {
  for (;;) {
    try {
      const answer = await fetch("/state?after=" + (state ? state.number : 0));
      if (!answer.ok) throw new Error(await answer.text());
      const next = await answer.json();
      if (lost || !state || next.number !== state.number) {
        lost = false;
        state = next;
        choose();
        draw(); // under way while the table is filled
        tell();
      }
    } catch {
      lost = true;
      if (state) tellTrouble();
      await new Promise((done) => setTimeout(done, 1000));
    }
  }
}

function tell() {
  say($("title"), state.title || state.file);
  say($("doing"), state.read ? state.doing : "The file is being read.");
  tellTrouble();
  fill($("sheets"), state.sheets, (s) => {
    const a = element("a", s.id + " " + s.title);
    a.href = "#" + s.id;
    a.dataset.sheet = s.id;
    return element("li", a);
  });
  fill($("warnings"), state.warnings, (t) => element("li", t));
  fill($("notes"), state.notes, (t) => element("li", t));
  fill($("head"), state.head, (t) => {
    const th = element("th", t);
    th.scope = "col";
    return th;
  });
  fill($("rows"), state.rows, (r) => {
    const tr = element("tr");
    if (r.class) tr.className = r.class;
    r.cells.forEach((c, i) => {
      const a = i === 0 && r.sheet ? element("a", c) : c;
      if (a !== c) a.href = "#" + r.sheet;
      tr.append(element("td", a));
    });
    return tr;
  });
  choose();
}

// tellTrouble says what is wrong, and of what is shown that it is old.
function tellTrouble() {
  const list = lost ? [] : state.problems.length ? state.problems : shown.error ? [shown.error] : [];
  const old = lost || list.length > 0;
  const past = old && state.drawing > 0;
  document.title = (old ? "NOT CURRENT: " : "") + (state.title || state.file);
  say($("verdict"), past ? "NOT CURRENT" : state.verdict);
  $("verdict").classList.toggle("bad", old || state.bad);
  say($("trouble-title"), lost ? "standclear has ended or does not answer" : "The file as it is now cannot be drawn");
  fill($("trouble-list"), list, (t) => element("li", t));
  say($("trouble-old"), past ? "OLD: the drawing and the checks below are of an earlier state of the file." : "");
  $("trouble").hidden = !old;
  $("drawing").classList.toggle("old", past || !$("absent").hidden);
  $("checks").classList.toggle("old", past);
  say($("checks-title"), past ? "Design checks of an earlier state of the file" : "Design checks");
}

function say(where, text) {
  if (where.textContent !== text) where.textContent = text; // a reader hears only what changes
}

function element(name, inside) {
  const e = document.createElement(name);
  if (inside !== undefined) e.append(inside);
  return e;
}

// fill makes the children of a place anew when what they show has changed.
function fill(place, list, make) {
  const now = JSON.stringify(list || []);
  if (place.dataset.of === now) return;
  place.dataset.of = now;
  const at = document.activeElement;
  const was = place.contains(at) && at.getAttribute("href");
  place.replaceChildren(...(list || []).map(make));
  if (was) place.querySelector('[href="' + CSS.escape(was) + '"]')?.focus({ preventScroll: true });
}

// ---- which sheet

function choose() {
  const hash = location.hash.slice(1);
  if (/^[A-Z]-[0-9-]+$/.test(hash)) chosen = hash;
  else if (!chosen && state.sheets && state.sheets.length) chosen = state.sheets[0].id;
  for (const a of $("sheets").querySelectorAll("a")) {
    if (a.dataset.sheet === chosen) a.setAttribute("aria-current", "page");
    else a.removeAttribute("aria-current");
  }
}

addEventListener("hashchange", () => {
  if (!state) return;
  choose();
  draw();
});

async function draw() {
  if (!state.drawing) return;
  const sheet = state.sheets.find((s) => s.id === chosen);
  const mine = ++asked;
  $("absent").hidden = Boolean(sheet);
  if (!sheet) {
    if (shown.id !== chosen) clear();
    shown.error = "";
    say($("absent"), chosen + " is not in the set as it stands now" + (shown.id ? "; below as it was last." : "."));
    tellTrouble();
    return;
  }
  $("drawing").setAttribute("aria-busy", "true");
  try {
    const answer = await fetch("/sheet/" + encodeURIComponent(sheet.id) + "?drawing=" + state.drawing);
    const text = await answer.text();
    if (mine !== asked || answer.status === 409) return; // the next state is under way
    shown.error = answer.ok ? "" : text;
    if (answer.ok) put(sheet, text);
    tellTrouble();
  } catch (e) {
    if (mine !== asked) return;
    shown.error = sheet.id + " does not come: " + e.message;
    tellTrouble();
  } finally {
    if (mine === asked) $("drawing").removeAttribute("aria-busy");
  }
}

// clear takes the drawing away.
function clear() {
  say($("sheet-title"), chosen);
  $("drawing").replaceChildren();
  shown = { ...nothing };
}

function put(sheet, text) {
  say($("sheet-title"), sheet.id + " " + sheet.title);
  if (shown.id === sheet.id && shown.text === text) return;
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml");
  if (parsed.querySelector("parsererror")) throw new Error("it is not well formed");
  const svg = document.adoptNode(parsed.documentElement);
  const [, , wide, high] = svg.getAttribute("viewBox").split(" ").map(Number);
  const at = document.activeElement;
  const mark = $("drawing").contains(at) && at.getAttribute("data-mark");
  shown = { id: sheet.id, text, error: "", wide, high };
  look(svg); // before it is there, so that it is laid out once
  $("drawing").replaceChildren(svg);
  if (mark) (svg.querySelector('[tabindex][data-mark="' + CSS.escape(mark) + '"]') || $("drawing")).focus({ preventScroll: true });
}

// ---- how it is looked at

// whole is the view that shows the whole sheet.
function whole() {
  const d = $("drawing");
  return { x: shown.wide / 2, y: shown.high / 2, k: 1.02 * Math.max(shown.wide / d.clientWidth, shown.high / d.clientHeight) };
}

function look(svg = $("drawing").firstElementChild) {
  if (!svg) return;
  const d = $("drawing");
  const v = views.get(shown.id) || whole();
  svg.setAttribute("viewBox", [v.x - (v.k * d.clientWidth) / 2, v.y - (v.k * d.clientHeight) / 2, v.k * d.clientWidth, v.k * d.clientHeight].join(" "));
}

const within = (v, least, most) => Math.min(Math.max(v, least), most);

// change moves the view by dx, dy pixels and makes what is at px, py pixels from the middle larger by a factor.
function change(dx, dy, factor = 1, px = 0, py = 0) {
  const all = whole();
  const v = views.get(shown.id) || all;
  const k = within(v.k / factor, 0.01, 4 * all.k); // mm per pixel
  views.set(shown.id, {
    x: within(v.x + dx * v.k + px * (v.k - k), 0, shown.wide),
    y: within(v.y + dy * v.k + py * (v.k - k), 0, shown.high),
    k,
  });
  look();
}

function showWhole() {
  views.delete(shown.id);
  look();
}

$("rows").addEventListener("click", (e) => {
  if (e.target.closest("a")) $("drawing").scrollIntoView({ block: "nearest" });
});

const step = 1.25;
$("larger").addEventListener("click", () => change(0, 0, step));
$("smaller").addEventListener("click", () => change(0, 0, 1 / step));
$("whole").addEventListener("click", showWhole);

$("drawing").addEventListener("keydown", (e) => {
  if (e.ctrlKey || e.altKey || e.metaKey) return;
  const far = 60; // pixels
  const keys = {
    ArrowLeft: () => change(-far, 0), ArrowRight: () => change(far, 0), ArrowUp: () => change(0, -far), ArrowDown: () => change(0, far),
    "+": () => change(0, 0, step), "=": () => change(0, 0, step), "-": () => change(0, 0, 1 / step), "0": showWhole,
  };
  if (!Object.hasOwn(keys, e.key)) return;
  e.preventDefault();
  keys[e.key]();
});

$("drawing").addEventListener("wheel", (e) => {
  e.preventDefault();
  const d = $("drawing").getBoundingClientRect();
  const pixels = e.deltaY * (e.deltaMode === 1 ? 30 : e.ctrlKey ? 8 : 1); // lines; two fingers drawn apart; pixels
  change(0, 0, Math.exp(-within(pixels, -200, 200) / 400), e.clientX - d.left - d.width / 2, e.clientY - d.top - d.height / 2);
}, { passive: false });

$("drawing").addEventListener("pointerdown", (e) => {
  if (e.button !== 0) return;
  $("drawing").setPointerCapture(e.pointerId);
});
$("drawing").addEventListener("pointermove", (e) => {
  if ($("drawing").hasPointerCapture(e.pointerId)) change(-e.movementX, -e.movementY);
});

new ResizeObserver(() => look()).observe($("drawing"));
follow();
