// What falls short on the page as it is laid out now, one line each.
const shown = e => e.checkVisibility({ opacityProperty: true, visibilityProperty: true });
const out = [];
const say = (kind, text) => out.push(kind + ": " + text.slice(0, 160));
const pieces = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
for (let node; (node = walker.nextNode());) {
  const text = node.textContent.trim(), parent = node.parentElement;
  if (!text || parent.closest("script, style, title, option") || !shown(parent)) continue;
  const range = document.createRange();
  range.selectNodeContents(node);
  for (const r of range.getClientRects()) {
    if (r.width > 1 && r.height > 1) pieces.push({ text, parent, r, sheet: parent.closest(".sheet") });
  }
}

// Text over text.
pieces.sort((a, b) => a.r.left - b.r.left);
for (let i = 0; i < pieces.length; i++) {
  for (let j = i + 1; j < pieces.length && pieces[j].r.left < pieces[i].r.right; j++) {
    const [a, b] = [pieces[i], pieces[j]];
    const wide = Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left);
    const high = Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top);
    const lower = Math.min(a.r.height, b.r.height);
    if (a.parent !== b.parent && wide > 2 && high > 0.35 * lower) say("overlap", a.text + " / " + b.text);
  }
}

// Text cut off: outside its sheet, or outside a box that hides what leaves it.
for (const { text, parent, r, sheet } of pieces) {
  if (sheet) {
    const s = sheet.getBoundingClientRect();
    if (r.left < s.left - 1 || r.right > s.right + 1 || r.top < s.top - 1 || r.bottom > s.bottom + 1) say("cut", text);
    continue;
  }
  for (let e = parent; e !== document.body; e = e.parentElement) {
    const b = e.getBoundingClientRect();
    if (["hidden", "clip"].includes(getComputedStyle(e).overflowX) && (r.left < b.left - 1 || r.right > b.right + 1)) say("cut", text);
  }
  if (r.right > innerWidth + 1) say("beyond the edge", text);
}

// Text too faint, on paper and in drawings.
const parts = colour => (colour.match(/[\d.]+/g) || []).map(Number);
const light = colour => {
  const [r, g, b] = parts(colour).map(v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a, b) => {
  const [low, high] = [light(a), light(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
};
const solid = colour => { const p = parts(colour); return p.length === 3 || p[3] > 0.9; };
const fills = new Map();
for (const sheet of document.querySelectorAll(".sheet")) {
  const shapes = [...sheet.querySelectorAll("rect, polygon, circle, text")];
  fills.set(sheet, shapes.map(s => ({ s, r: s.getBoundingClientRect(), fill: getComputedStyle(s).fill })));
}
function behind({ parent, r, sheet }) {
  const [x, y] = [(r.left + r.right) / 2, (r.top + r.bottom) / 2];
  let fill = getComputedStyle(sheet).backgroundColor;
  for (const shape of fills.get(sheet)) {
    if (shape.s === parent) break;
    const b = shape.r, over = b.left <= x && x <= b.right && b.top <= y && y <= b.bottom;
    if (over && shape.s.tagName !== "text" && shape.fill !== "none" && solid(shape.fill)) fill = shape.fill;
  }
  return fill;
}
for (const piece of pieces) {
  const style = getComputedStyle(piece.parent);
  let ground = null;
  if (piece.sheet) ground = behind(piece);
  else for (let e = piece.parent; e && !ground; e = e.parentElement) {
    const colour = getComputedStyle(e).backgroundColor;
    if (solid(colour)) ground = colour;
  }
  const k = contrast(piece.sheet ? style.fill : style.color, ground || "rgb(255, 255, 255)");
  if (k < 4.5) say("faint", piece.text + " " + k.toFixed(1));
}

// Letters too small for a screen.
for (const { text, parent, r, sheet } of pieces) {
  const size = sheet ? (parent.hasAttribute("transform") ? r.width : r.height) / 1.2 : parseFloat(getComputedStyle(parent).fontSize);
  if (size < 9) say("small", text + " " + size.toFixed(1));
}

// What can be used or is a picture has a name.
for (const e of document.querySelectorAll("a[href], button, input, select, svg, [role=region]")) {
  if (!shown(e) || e.closest("[aria-hidden=true]")) continue;
  const by = (e.getAttribute("aria-labelledby") || "").split(" ").map(id => document.getElementById(id)).filter(Boolean);
  const name = e.getAttribute("aria-label") || by.map(n => n.textContent).join(" ") || (e.labels && [...e.labels].map(l => l.textContent).join(" ")) || e.textContent;
  if (!name.trim()) say("nameless", e.outerHTML);
}
const ids = [...document.querySelectorAll("[id]")].map(e => e.id);
for (const id of ids.filter((id, k) => ids.indexOf(id) !== k)) say("twice", id);
for (const link of document.querySelectorAll("a[href^='#']")) {
  const to = link.getAttribute("href").slice(1);
  if (!document.getElementById(to)) say("leads nowhere", to);
}
if (document.documentElement.scrollWidth > innerWidth) say("sideways", document.documentElement.scrollWidth + " in " + innerWidth);
if (pieces.length < 30) say("bare", pieces.length + " pieces of text");
return out;
