
/* Adjusting screws. A slider from the shortest on-time to the longest moves the wiper along its travel, and with it the edge of its
 * contact in time; on-times between the places that the design worked out are taken from the straight line between two of them. */
const wheelScrews = (() => {
  const { design, network, turn, one, all, put, contactMoved, handTaken } = wheelPage;
  const sliders = all("input[data-screw]");
  const asMade = design.screws.map(screw => [...network.contacts[screw.contact].on[0]]);

  /** On-time, least and most at worst, at so many turns from mid travel. */
  function at(screw, turns) {
    const place = (turns / screw.turns + 0.5) * (screw.steps.length - 1);
    const below = Math.min(Math.max(Math.floor(place), 0), screw.steps.length - 2);
    return screw.steps[below].map((from, i) => from + (place - below) * (screw.steps[below + 1][i] - from));
  }

  function words(screw, turns, [on, least, most]) {
    const way = turns > 0 ? screw.longer : screw.longer === "in" ? "out" : "in";
    const where = Math.abs(turns) < 5e-3 ? said("at mid travel") : way === "in" ? said("{1} turns in from mid travel, of {2} in all", Math.abs(turns).toFixed(2), screw.span) : said("{1} turns out from mid travel, of {2} in all", Math.abs(turns).toFixed(2), screw.span);
    const dose = screw.flow ? `, ${(on * screw.flow).toFixed(1)} mL` : "";
    return said("on for {1} s{2}, at worst {3} to {4} s; {5}", on.toFixed(2), dose, least.toFixed(2), most.toFixed(2), where);
  }

  function turned(i) {
    const screw = design.screws[i];
    const turns = Number(sliders[i].value);
    const figures = at(screw, turns);
    const [from, to] = asMade[i];
    const on = turns === 0 ? to - from : figures[0];
    const period = screw.edge === "on" ? [to - on, to] : [from, from + on];
    network.contacts[screw.contact].on[0] = period[0] < 0 ? period.map(t => t + turn) : period;
    const shift = turns / screw.turns * screw.travel;
    all(`.wiper[data-contact="${screw.contact}"]`).forEach(wiper =>
      wiper.setAttribute("transform", `translate(${(shift * screw.x).toFixed(4)} ${(-shift * screw.y).toFixed(4)})`));
    const said = words(screw, turns, figures);
    put(one(`screw-${i}-on`), said);
    sliders[i].setAttribute("aria-valuetext", said);
    showRow(screw, figures);
    contactMoved(screw.contact);
  }

  /** The line of the programme's table. */
  function showRow(screw, [on, least, most]) {
    const cells = all(`tr[data-period="${screw.contact} 0"] td`);
    const seconds = t => `${Number((Math.round(t * 1000) / 1000).toFixed(3))} s`;
    const [from, to] = network.contacts[screw.contact].on[0];
    [seconds(from), seconds(to % turn), seconds(on), said("{1} to {2} s", least.toFixed(2), most.toFixed(2))].forEach((text, i) => put(cells[i], text));
  }

  sliders.forEach((slider, i) => {
    const screw = design.screws[i];
    slider.value = 0;
    slider.addEventListener("input", () => {
      handTaken.forEach(stop => stop());
      turned(i);
    });
    slider.addEventListener("keydown", event => {
      const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 4, PageDown: -4 }[event.key];
      if (way && !event.altKey && !event.ctrlKey && !event.metaKey) {
        event.preventDefault();
        handTaken.forEach(stop => stop());
        set(i, Number(slider.value) + way / 8);
      }
    });
    const figures = at(screw, 0);
    put(one(`screw-${i}-on`), words(screw, 0, figures));
    slider.setAttribute("aria-valuetext", words(screw, 0, figures));
  });

  function set(i, turns) {
    const most = design.screws[i].turns / 2;
    const next = Math.abs(turns) < 1e-9 ? 0 : Math.min(Math.max(turns, -most), most);
    if (Number(sliders[i].value) !== next) {
      sliders[i].value = next;
      turned(i);
    }
  }

  return { set, values: () => sliders.map(slider => Number(slider.value)) };
})();
