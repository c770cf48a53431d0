
/* Fits the page to where it is shown: the time stays at hand while one scrolls, unless that takes more than a third of the height;
 * what has the focus is never behind it; and the print is two pages, however many rings there are. */
(() => {
  const { one, all } = wheelPage;
  const root = document.documentElement;
  const bar = one("controls");
  const SHARE = 3;
  const AIR_PX = 8;

  function stick() {
    const isSmall = bar.offsetHeight * SHARE <= window.innerHeight;
    bar.classList.toggle("stuck", isSmall);
    const px = isSmall ? `${bar.offsetHeight + 2 * AIR_PX}px` : "";
    root.style.scrollPaddingTop = px;
    root.style.scrollPaddingBottom = px;
  }

  /** Browsers scroll what gets the focus into sight, but some leave it behind a bar. */
  function uncover(event) {
    if (!bar.classList.contains("stuck") || bar.contains(event.target)) {
      return;
    }
    const held = event.target.closest("label") || event.target;
    const box = held.getBoundingClientRect();
    const cover = bar.getBoundingClientRect();
    if (box.bottom > cover.top - AIR_PX && box.top < cover.bottom + AIR_PX) {
      const isAbove = cover.top < window.innerHeight - cover.bottom;
      window.scrollBy(0, isAbove ? box.top - cover.bottom - AIR_PX : Math.min(box.bottom - cover.top + AIR_PX, box.top));
    }
  }

  new ResizeObserver(stick).observe(bar);
  window.addEventListener("resize", stick);
  document.addEventListener("focusin", uncover);
  stick();

  // A4 less its margins of 14 mm, as page.css has them, at 96 pixels an inch; a little is left for rounding.
  const PAPER = { width: 182 * 96 / 25.4, height: 266 * 96 / 25.4 };
  const print = [...document.styleSheets[0].cssRules].find(rule => rule.media && rule.media.mediaText === "print");
  const FIRST = ".side, .turn";
  const SECOND = ".second, .two, footer";

  // Letters smaller than this share of their size nobody reads: tables are rather left to the screen, the longest first.
  const LEAST = 0.62;
  const LONG = [["h-truth", said("truth table")], ["h-times", said("table of the programme")]];

  const zoom = (selector, share) => all(selector).forEach(part => { part.style.zoom = share === 1 ? "" : share; });

  /** How far down the page the parts reach that are seen in print. */
  const reach = (from, selector) => Math.max(0, ...all(selector).filter(part => part.offsetParent).map(part => part.getBoundingClientRect().bottom))
    - from.getBoundingClientRect().top;

  /** The largest size at which some parts fit; halved between, for their text breaks anew at every size. */
  function fit(selector, from, measured) {
    let [least, most] = [0.02, 1];
    zoom(selector, 1);
    if (reach(from, measured) <= PAPER.height) {
      return 1;
    }
    for (let step = 0; step < 8; step++) {
      const middle = (least + most) / 2;
      zoom(selector, middle);
      [least, most] = reach(from, measured) <= PAPER.height ? [middle, most] : [least, middle];
    }
    zoom(selector, least);
    return least;
  }

  const cards = LONG.map(([heading]) => one(heading).closest(".card"));

  function fitSecond() {
    const left = one("left");
    for (let count = 0; count <= cards.length; count++) {
      cards.forEach((card, i) => { card.hidden = i < count; });
      left.hidden = count === 0;
      left.textContent = said("Not printed, for it would be too small to read: {1}. The page shows all of it.", LONG.slice(0, count).map(([, name]) => name).join(", "));
      if (fit(SECOND, one("wiring").closest(".second"), SECOND) >= LEAST) {
        return;
      }
    }
  }

  window.addEventListener("beforeprint", () => {
    if (!print) {
      return;
    }
    print.media.mediaText = "all";
    document.body.style.width = `${PAPER.width}px`;
    fit(FIRST, document.body, ".top, .stage, .turn, .cautions");
    fitSecond();
    document.body.style.width = "";
    print.media.mediaText = "print";
  });
  window.addEventListener("afterprint", () => {
    zoom(`${FIRST}, ${SECOND}`, 1);
    [...cards, one("left")].forEach((part, i) => { part.hidden = i >= cards.length; });
  });
})();
