
/* The address of a moment: #t=125&closed=lid&fault=lid-stuck-closed&view=compact. It is read when the page opens and when somebody
 * changes it, and kept up to date while things are moved. A screw that is not at mid travel adds screw=mist:0.25, turns towards longer. */
(() => {
  const { design, turn, one, all, put, drawn, go, setSwitches, setPlaying, handTaken, faultsSet, closedInputs, time, isPlaying } = wheelPage;

  // Some browsers refuse more than a hundred changes of an address in half a minute.
  const WAIT_MS = 400;
  const frame = one("embed").textContent.split(/(?<=#)[^"]*(?=&amp;view=compact)/);
  let view = "";
  let waits = 0;
  let written = "";

  const short = number => String(Number(number.toFixed(3)));

  /** The moment as it is now, without its view. */
  function moment() {
    const screws = wheelScrews.values().flatMap((turns, i) => (turns === 0 ? [] : [`${design.screws[i].slug}:${short(turns)}`]));
    return [
      `t=${short(time())}`,
      ...[["closed", closedInputs().map(i => design.inputs[i])], ["fault", faultsSet().map(i => design.faultSlugs[i])], ["screw", screws]]
        .flatMap(([key, slugs]) => (slugs.length ? [`${key}=${slugs.join(",")}`] : [])),
    ].join("&");
  }

  function keep() {
    waits = 0;
    const now = moment();
    one("link").href = `#${now}${view}`;
    one("whole").href = `#${now}`;
    put(one("embed"), frame.join(now.replaceAll("&", "&amp;")));
    const address = `#${now}${view}`;
    // Nothing is written while the page is as it opened, and nothing that stands there already.
    if (address === written || (written === "" && location.hash === "" && address === "#t=0")) {
      return;
    }
    written = address;
    try {
      history.replaceState(history.state, "", address);
    } catch {
      // A page that stands in another without an address of its own has none to keep.
    }
  }

  function soon() {
    if (!waits) {
      waits = setTimeout(keep, isPlaying() ? 2 * WAIT_MS : WAIT_MS);
    }
  }

  /** Indices of the slugs of a list; those that nothing bears are put aside. */
  function indices(given, among, unknown) {
    const slugs = (given || "").split(",").filter(Boolean);
    unknown.push(...slugs.filter(slug => !among.includes(slug)));
    return slugs.map(slug => among.indexOf(slug)).filter(i => i >= 0);
  }

  function setScrews(given, unknown) {
    const asked = new Map((given || "").split(",").filter(Boolean).map(one => one.split(":")));
    design.screws.forEach((screw, i) => wheelScrews.set(i, Number(asked.get(screw.slug)) || 0));
    unknown.push(...[...asked.keys()].filter(slug => !design.screws.some(screw => screw.slug === slug)));
  }

  function read() {
    const address = new URLSearchParams(location.hash.slice(1));
    if (![..."t closed fault screw view".split(" ")].some(key => address.has(key))) {
      return;
    }
    const unknown = [];
    view = address.get("view") === "compact" ? "&view=compact" : "";
    document.documentElement.classList.toggle("compact", view !== "");
    setPlaying(false);
    handTaken.forEach(stop => stop());
    setScrews(address.get("screw"), unknown);
    setSwitches(indices(address.get("closed"), design.inputs, unknown), indices(address.get("fault"), design.faultSlugs, unknown));
    const given = Number(address.get("t"));
    go(Number.isFinite(given) ? Math.min(Math.max(given, 0), turn) : 0);
    put(one("link-note"), unknown.length ? said("The address names what this design does not have: {1}.", unknown.join(", ")) : "");
    keep();
  }

  window.addEventListener("hashchange", read);
  drawn.push(soon);
  // Printed, or left for another page, the address is that of the moment.
  window.addEventListener("pagehide", keep);
  read();
  keep();
  all("summary").forEach(summary => summary.addEventListener("click", keep));
})();
