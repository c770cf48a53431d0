
"use strict";

/* Follows the savings of the parameter file. The design's own page stands in a frame, or one of its sheets as a picture; a new one is
 * loaded behind the old, set to the same time, inputs, faults and screws, and then takes its place. */
(() => {
  const one = id => document.getElementById(id);
  const picture = one("picture");
  const sheet = one("sheet");
  let asked = 0;

  const control = (page, name) => page.contentDocument && page.contentDocument.getElementById(name);
  const boxes = page => [...page.contentDocument.querySelectorAll("input[type=checkbox]")];
  const screws = page => [...page.contentDocument.querySelectorAll("input[data-screw]")];
  const wordsOf = box => box.labels[0].textContent;
  const moved = (slider, value) => {
    slider.value = value;
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  };

  /** How a page is set, to set the next one alike. */
  function settingsOf(page) {
    const slider = control(page, "time");
    return slider && {
      time: slider.value,
      speed: control(page, "speed").value,
      plays: control(page, "play").textContent.trim() === "Pause",
      checked: boxes(page).filter(box => box.checked).map(wordsOf),
      screws: screws(page).map(screw => [wordsOf(screw), screw.value]),
      scroll: page.contentWindow.scrollY,
    };
  }

  function apply(page, settings) {
    boxes(page).filter(box => settings.checked.includes(wordsOf(box))).forEach(box => box.click());
    control(page, "speed").value = settings.speed;
    const turned = new Map(settings.screws);
    screws(page).filter(screw => Number(turned.get(wordsOf(screw)))).forEach(screw => moved(screw, turned.get(wordsOf(screw))));
    moved(control(page, "time"), settings.time);
    if (settings.plays) {
      control(page, "play").click();
    }
    page.contentWindow.scrollTo(0, settings.scroll);
  }

  /** Draws the design anew; done when it is shown. A drawing that a later one overtakes is never done. */
  const redraw = version => new Promise(shown => {
    const old = picture.querySelector("iframe:not(.coming)");
    picture.querySelectorAll(".coming").forEach(coming => coming.remove());
    const next = document.createElement(sheet.value ? "img" : "iframe");
    next.className = "coming";
    next.addEventListener("load", () => {
      const settings = old && !sheet.value && settingsOf(old);
      if (settings) {
        apply(next, settings);
      }
      next.classList.remove("coming");
      next.dataset.version = version;
      [...picture.children].filter(other => other !== next).forEach(other => other.remove());
      picture.dataset.version = version;
      shown();
    });
    next.addEventListener("error", () => {
      // The saving has no such sheet any more.
      next.remove();
      choose("");
      shown();
    });
    if (sheet.value) {
      next.alt = `Sheet ${sheet.value}, saving ${version}`;
      next.src = `/files/draw/${encodeURIComponent(sheet.value)}.svg?${version}`;
    } else {
      next.title = "The design's page";
      next.src = "/files/show/index.html";
    }
    picture.append(next);
  });

  const ofPage = sheet.options[0];

  /** The sheets that can be chosen; the choice stays while there is such a sheet. */
  async function sheets() {
    const chosen = sheet.value || new URLSearchParams(location.hash.slice(1)).get("sheet") || "";
    const { sheets: names } = await (await fetch("/sheets")).json();
    sheet.replaceChildren(ofPage, ...names.map(name => new Option(name, name)));
    sheet.value = names.includes(chosen) ? chosen : "";
    return sheet.value === chosen;
  }

  async function choose(name) {
    sheet.value = name;
    history.replaceState(null, "", name ? `#sheet=${encodeURIComponent(name)}` : "#");
    if (now && now.drawn) {
      await redraw(now.drawn_version);
      older();
    }
  }

  sheet.addEventListener("change", () => choose(sheet.value));

  let now = null;

  /** Says of which saving the picture is, wherever it is not the one that the file is now. */
  function older() {
    const shown = Number(picture.dataset.version || 0);
    const isOlder = now !== null && shown > 0 && shown < now.version;
    one("older").hidden = !isOlder;
    one("older").textContent = isOlder ? `This picture is of saving ${shown}, an older state of the file. The file is at saving ${now.version}${now.faults.length ? ", which cannot be drawn" : ", which is being drawn"}.` : "";
  }

  function item(finding) {
    const line = document.createElement("li");
    line.className = finding.severity;
    if (finding.line) {
      const place = document.createElement("span");
      place.className = "place";
      place.textContent = `line ${finding.line}, column ${finding.column}`;
      line.append(place);
    }
    const severity = document.createElement("b");
    severity.textContent = finding.severity;
    line.append(severity, ` ${finding.message}`);
    return line;
  }

  function fill(section, items) {
    one(section).querySelector("ul").replaceChildren(...items);
  }

  function none(words) {
    const line = document.createElement("li");
    line.className = "none";
    line.textContent = words;
    return line;
  }

  function showWords(state) {
    const broken = state.faults.length > 0;
    document.title = `${broken ? "✕ " : ""}${state.title || state.file} – WheelDraft`;
    one("file").textContent = state.file;
    const words = broken ? `Saving ${state.version}: ${state.faults.length} to put right${state.drawn ? `; the picture is of saving ${state.drawn_version}` : ""}`
      : state.meets ? `Saving ${state.version}: meets its rules` : `Saving ${state.version}: drawn, with findings`;
    one("state").textContent = words;
    one("state").className = `state ${broken || !state.meets ? "misses" : "meets"}`;
    fill("faults", state.faults.map(item));
    one("faults").hidden = !broken;
    one("kept").hidden = !state.drawn;
    picture.classList.toggle("kept", broken);
    fill("findings", state.findings.length ? state.findings.map(item) : [none(state.drawn ? "Nothing was found." : "Nothing has been drawn yet.")]);
  }

  async function files() {
    const { files: names } = await (await fetch("/files")).json();
    fill("files", names.length ? names.map(name => {
      const line = document.createElement("li");
      const link = document.createElement("a");
      link.href = `/files/${name.split("/").map(encodeURIComponent).join("/")}`;
      link.target = "_blank";
      link.textContent = name;
      line.append(link);
      return line;
    }) : [none("No files yet.")]);
  }

  async function follow(version) {
    asked = version;
    const state = await (await fetch("/state")).json();
    if (asked !== version) {
      return;
    }
    now = state;
    showWords(state);
    older();
    // A page that is opened while the file is broken shows the last picture there is.
    if (state.drawn && (state.faults.length === 0 || !picture.firstElementChild)) {
      if (location.hash.includes("sheet=") && !sheet.value) {
        await sheets();
      }
      await redraw(state.drawn_version);
      older();
      await sheets();
    }
    // The list comes last: to name the files they are made, and that would hold up the picture.
    await files();
  }

  const events = new EventSource("/events");
  events.addEventListener("message", event => follow(Number(event.data)));
  events.addEventListener("error", () => {
    one("state").textContent = "Watching has ended, or is starting again: the picture may be older than the file.";
    one("state").className = "state misses";
  });
})();
