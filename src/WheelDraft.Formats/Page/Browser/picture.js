
/* What shows the state of the circuit: wheel, wiring diagram, rows of the chart, lamps. Each part remembers what it shows, and only what is another
 * is touched, so that the browser lays out no more than that. */
const wheelPicture = (() => {
  const all = selector => [...document.querySelectorAll(selector)];
  const number = (element, name) => (element.dataset[name] === undefined ? undefined : Number(element.dataset[name]));
  const STATES = { on: said("on"), off: said("off"), undecided: said("undecided") };

  const contacts = all(".wiper, .tag, .switch[data-contact], .row[data-contact]").map(element => ({ element, contact: number(element, "contact") }));
  const feeds = all(".switch[data-feed]").map(element => ({ element }));
  const inputs = all(".switch[data-input]").map(element => ({ element, input: number(element, "input") }));
  const nets = all(".net, .wiper[data-node], .tag[data-node]").map(element => ({
    element,
    node: number(element, "node"),
    contact: number(element, "contact"),
    label: element.querySelector(".net-volts"),
    words: element.querySelector(".tag-state"),
  }));
  const loads = all(".load[data-load], .row[data-load]").map(element => ({ element, load: number(element, "load") }));
  const lamps = all(".lamp").map(element => ({ element, load: number(element, "load"), state: element.querySelector(".state"), volts: element.querySelector(".volts") }));

  function put(element, text) {
    if (element.textContent !== text) {
      element.textContent = text;
    }
  }

  /** Does something with a part if what it is to show is not what it shows. */
  function renew(part, look, how) {
    if (part.look !== look) {
      part.look = look;
      how();
    }
  }

  const toggle = (part, isMade) => renew(part, isMade, () => part.element.classList.toggle("made", isMade));
  const mark = (element, words, word) => words.forEach(other => element.classList.toggle(other, other === word));

  const volts = v => (v === null || Number.isNaN(v) ? "–" : `${(Math.round(v * 10) / 10).toFixed(v >= 99.95 || v === 0 ? 0 : 1)} V`);

  function showNets(network, state, isMade) {
    const isLive = v => v !== null && !(v <= network.supply * 1e-6);
    const looks = network.nets.map((_, node) => {
      const v = state.short ? null : state.nodes[node];
      return { live: v === null ? "floating" : isLive(v) ? "live" : "dead", volts: state.short ? said("fuse open") : v === null ? said("joined to nothing") : volts(v) };
    });
    const contactWords = made => (network.wheel < 0 ? (made ? said("closed") : said("open")) : made ? said("on copper") : said("off copper"));
    const netWords = live => (state.short ? said("fuse open") : live === "live" ? `⚡ ${said("live")}` : live === "dead" ? said("at zero") : said("not joined"));
    nets.forEach(part => {
      const { live, volts: label } = looks[part.node];
      const text = part.label ? label : part.words ? `${netWords(live)} · ${contactWords(isMade(part.contact))}` : "";
      renew(part, `${live} ${text}`, () => {
        mark(part.element, ["live", "dead", "floating"], live);
        if (text) {
          put(part.label || part.words, text);
        }
      });
    });
  }

  function showLamps(network, state) {
    loads.forEach(part => renew(part, state.loads[part.load], () => mark(part.element, ["on", "off", "undecided"], state.loads[part.load])));
    lamps.forEach(lamp => {
      const now = state.loads[lamp.load];
      renew(lamp, now, () => {
        mark(lamp.element, ["on", "off", "undecided"], now);
        lamp.element.setAttribute("aria-label", `${network.loads[lamp.load].name} ${STATES[now]}`);
        put(lamp.state, STATES[now]);
      });
      put(lamp.volts, volts(state.volts[lamp.load]));
    });
  }

  /** Shows a state of the circuit under what is switched by hand. The feed is no contact: it bears a number below all of them. */
  function show(network, hand, state) {
    const isMade = contact => (contact < 0 ? !hand.feedOpen : Boolean(state.contacts[contact]));
    contacts.forEach(part => toggle(part, isMade(part.contact)));
    feeds.forEach(part => toggle(part, !hand.feedOpen));
    inputs.forEach(part => toggle(part, Boolean(hand.inputs[part.input])));
    showNets(network, state, isMade);
    showLamps(network, state);
  }

  return { all, put, show, lamps: lamps.map(lamp => lamp.element) };
})();
