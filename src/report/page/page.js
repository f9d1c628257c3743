"use strict";
// Finds things and opens their stories. Every fact stands in the page already.
(() => {
  const root = document.documentElement;
  const one = (what, within = document) => within.querySelector(what);
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const query = one("#query"), family = one("#family"), found = one("#found"), hits = one("#hits");
  const stories = all("#stories > article");
  // All that shows a thing in a drawing: its box, which is a link, its hidden edges and its name.
  const LINK = "a[data-placement]";
  const boxes = all(".sheet [data-placement]");
  const address = box => "#item-" + box.dataset.placement;

  // Letters without their accents, so that either spelling is found.
  const plain = text => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const things = stories.map(story => ({
    story,
    name: one("h3", story).textContent,
    words: plain(story.dataset.words),
    family: story.dataset.family || "",
  }));

  const made = (tag, text, traits = {}) => Object.assign(document.createElement(tag), { textContent: text }, traits);

  function hit(thing, words) {
    const line = made("li", "");
    line.append(made("a", thing.name, { href: "#" + thing.story.id }), " " + thing.story.dataset.where);
    const held = thing.story.dataset.words.split(" / ").slice(1);
    const inside = words.length ? held.filter(h => words.some(w => plain(h).includes(w))) : [];
    if (inside.length) line.append("; " + inside.join(", "));
    return line;
  }

  function search() {
    const words = plain(query.value).split(/\s+/).filter(Boolean);
    const asked = words.length > 0 || family.value !== "";
    const fits = t => (!family.value || t.family === family.value) && words.every(w => t.words.includes(w));
    const shown = asked ? things.filter(fits) : [];
    const ids = new Set(shown.map(t => "#" + t.story.id));
    hits.replaceChildren(...shown.map(t => hit(t, words)));
    hits.hidden = shown.length === 0;
    root.classList.toggle("finding", asked);
    for (const box of boxes) box.classList.toggle("hit", ids.has(address(box)));
    const count = shown.length === 1 ? "1 thing" : shown.length + " things";
    found.textContent = asked ? count + " found of " + things.length : "";
  }

  // A story opens by its address, so that going back closes it again.
  let opener = null;
  const open = () => location.hash ? stories.find(s => "#" + s.id === location.hash) : undefined;

  function told() {
    const story = open();
    for (const box of boxes) box.classList.toggle("here", story !== undefined && address(box) === location.hash);
    if (story) {
      one("h3", story).focus({ preventScroll: true });
      reveal(boxes.find(b => b.matches(LINK + ".here")));
    }
  }

  function reveal(box) {
    if (!box) return;
    const at = box.getBoundingClientRect();
    const low = innerHeight - one("article:target").getBoundingClientRect().height;
    if (at.top < 0 || at.bottom > low || at.left < 0 || at.right > innerWidth) {
      box.scrollIntoView({ block: "start", inline: "center" });
    }
  }

  function close() {
    const back = opener && opener.isConnected ? opener : boxes.find(b => b.matches(LINK + ".here"));
    // An address without an end leads to the top of the page: stay where one is.
    const at = [scrollX, scrollY];
    location.hash = "";
    history.replaceState(null, "", location.pathname + location.search);
    scrollTo(...at);
    if (back) back.focus();
  }

  for (const story of stories) {
    const button = made("button", "Close", { type: "button", className: "close" });
    button.addEventListener("click", close);
    story.prepend(button);
  }

  // Within a drawing the arrows lead from box to box, and Tab leads on.
  const middle = box => {
    const r = box.getBoundingClientRect();
    return [(r.left + r.right) / 2, (r.top + r.bottom) / 2];
  };

  function next(box, [x, y]) {
    const [a, b] = middle(box);
    let best = null, least = Infinity;
    for (const other of all(LINK, box.closest(".sheet"))) {
      const [c, d] = middle(other);
      const along = (c - a) * x + (d - b) * y, aside = Math.abs((c - a) * y + (d - b) * x);
      const far = along + 2 * aside;
      if (other !== box && along > 0.5 && far < least) [best, least] = [other, far];
    }
    return best;
  }

  const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

  function onBox(event) {
    const box = event.target.closest(".sheet " + LINK);
    const within = box && all(LINK, box.closest(".sheet"));
    if (!box) return;
    const to = event.key === "Home" ? within[0] : event.key === "End" ? within.at(-1)
      : ARROWS[event.key] && next(box, ARROWS[event.key]);
    if (to) { step(to); to.focus(); event.preventDefault(); }
    else if (ARROWS[event.key]) event.preventDefault();
  }

  // Down and up the list of what was found; over its first line is the search again.
  function onHit(event) {
    const line = event.target.closest("li");
    const to = event.key === "ArrowDown" ? line.nextElementSibling || line
      : event.key === "ArrowUp" ? line.previousElementSibling
      : event.key === "Escape" ? null : undefined;
    if (to === undefined) return;
    (to ? one("a", to) : query).focus();
    event.preventDefault();
  }

  // One box of each drawing is in the order of Tab: the one last visited.
  function step(to) {
    for (const box of all(LINK, to.closest(".sheet"))) box.setAttribute("tabindex", box === to ? "0" : "-1");
  }

  document.addEventListener("keydown", event => {
    const typing = event.target.matches("input, select");
    if (event.key === "Escape" && open()) close();
    else if (event.key === "Escape" && event.target === query) { query.value = ""; search(); }
    else if (event.key === "/" && !typing) { query.focus(); event.preventDefault(); }
    else if (event.key === "ArrowDown" && event.target === query && !hits.hidden) { one("a", hits).focus(); event.preventDefault(); }
    else if (event.target.closest("#hits")) onHit(event);
    else onBox(event);
  });
  document.addEventListener("click", event => {
    const link = event.target.closest("a[href^='#item-'], a[href^='#off-']");
    const box = event.target.closest(".sheet [data-placement]");
    if (link && !link.closest("article")) opener = link;
    // A name in a drawing opens what its box opens.
    if (box && !link) {
      opener = one(LINK + "[data-placement='" + box.dataset.placement + "']", box.closest(".sheet"));
      location.hash = address(box);
    }
  });
  document.addEventListener("focusin", event => {
    const box = event.target.closest(".sheet " + LINK);
    if (box) step(box);
  });
  addEventListener("hashchange", told);
  query.addEventListener("input", search);
  family.addEventListener("change", search);

  root.classList.add("js");
  for (const sheet of all(".sheet")) {
    const first = one(LINK, sheet);
    if (first) step(first);
  }
  search();
  told();
})();
