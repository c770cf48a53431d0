
"use strict";

/* Follows the savings of the parameter file. The design's own page stands in a frame; a new one is loaded behind the old,
 * set to the same time, inputs and faults, and then takes its place. */
(() => {
  const one = id => document.getElementById(id);
  const picture = one("picture");
  let asked = 0;

  const control = (page, name) => page.contentDocument && page.contentDocument.getElementById(name);
  const boxes = page => [...page.contentDocument.querySelectorAll("input[type=checkbox]")];
  const wordsOf = box => box.labels[0].textContent;

  /** How a page is set, to set the next one alike. */
  function settingsOf(page) {
    const slider = control(page, "time");
    return slider && {
      time: slider.value,
      speed: control(page, "speed").value,
      plays: control(page, "play").textContent.trim() === "Pause",
      checked: boxes(page).filter(box => box.checked).map(wordsOf),
      scroll: page.contentWindow.scrollY,
    };
  }

  function apply(page, settings) {
    boxes(page).filter(box => settings.checked.includes(wordsOf(box))).forEach(box => box.click());
    control(page, "speed").value = settings.speed;
    const slider = control(page, "time");
    slider.value = settings.time;
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    if (settings.plays) {
      control(page, "play").click();
    }
    page.contentWindow.scrollTo(0, settings.scroll);
  }

  /** Draws the design anew; done when it is shown. A drawing that a later one overtakes is never done. */
  const redraw = version => new Promise(shown => {
    const old = picture.querySelector("iframe:not(.coming)");
    picture.querySelectorAll("iframe.coming").forEach(page => page.remove());
    const page = document.createElement("iframe");
    page.className = "coming";
    page.title = "The design's page";
    page.addEventListener("load", () => {
      const settings = old && settingsOf(old);
      if (settings) {
        apply(page, settings);
      }
      page.classList.remove("coming");
      page.dataset.version = version;
      if (old) {
        old.remove();
      }
      picture.dataset.version = version;
      shown();
    });
    page.src = "/files/show/index.html";
    picture.append(page);
  });

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
    const words = broken ? `Saving ${state.version}: ${state.faults.length} to put right`
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
    showWords(state);
    // A page that is opened while the file is broken shows the last picture there is.
    if (state.drawn && (state.faults.length === 0 || !picture.querySelector("iframe"))) {
      await redraw(state.version);
    }
    // The list comes last: to name the files they are made, and that would hold up the picture.
    await files();
  }

  const events = new EventSource("/events");
  events.addEventListener("message", event => follow(Number(event.data)));
  events.addEventListener("error", () => {
    one("state").textContent = "Watching has ended, or is starting again.";
    one("state").className = "state misses";
  });
})();
