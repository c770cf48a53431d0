
/* Bars of the timing chart. The rows of loads show the whole turn with inputs and faults as they are set; a row is drawn anew only when it is another. */
const wheelChart = (() => {
  const ROW_PX = 30;
  const SIDE_PX = 7;
  const rows = selector => [...document.querySelectorAll(selector)].map(element => ({ element, key: "" }));
  const loadRows = rows(".row[data-load] .bars");
  let spans = { name: 0, edges: [], closed: [] };

  /** The turn cut at every change, with the contacts that the sound wheel closes in each part. */
  function cut(network, changes) {
    const edges = changes.map((from, i) => [from, i + 1 < changes.length ? changes[i + 1] : network.turn]);
    spans = { name: spans.name + 1, edges, closed: edges.map(([from, to]) => wheelCircuit.closedAt(network, (from + to) / 2)) };
  }

  /** Bars of one row, each [from, to, look], as they are to be seen. */
  function draw(row, index, bars, turn) {
    const key = JSON.stringify(bars);
    if (row.key === key) {
      return;
    }
    row.key = key;
    row.element.replaceChildren(...bars.map(([from, to, look]) => {
      const bar = document.createElementNS("http://www.w3.org/2000/svg", "rect");
      bar.setAttribute("class", look);
      bar.setAttribute("x", `${from / turn * 100}%`);
      bar.setAttribute("width", `${(to - from) / turn * 100}%`);
      bar.setAttribute("y", index * ROW_PX + SIDE_PX);
      bar.setAttribute("height", ROW_PX - 2 * SIDE_PX);
      return bar;
    }));
  }

  /** Neighbours of the same state are one bar; what is off has none. */
  function barsOf(states) {
    const bars = [];
    states.forEach((state, i) => {
      const last = bars[bars.length - 1];
      if (last && last[2] === state && last[1] === spans.edges[i][0]) {
        last[1] = spans.edges[i][1];
      } else if (state !== "off") {
        bars.push([...spans.edges[i], state]);
      }
    });
    return bars;
  }

  /** The rows of the loads under what is switched by hand. */
  function loads(network, circuit) {
    circuit.over(spans).forEach(({ key, states }, load) => {
      const row = loadRows[load];
      if (row.from !== key) {
        row.from = key;
        draw(row, network.contacts.length + load, barsOf(states), network.turn);
      }
    });
  }

  /** The row of a ring whose on-periods have been moved. */
  function contact(network, index) {
    const [row] = rows(`.row[data-contact="${index}"] .bars`);
    const { turn } = network;
    draw(row, index, network.contacts[index].on.flatMap(([from, to]) => [[from, Math.min(to, turn), ""], ...(to > turn ? [[0, to - turn, ""]] : [])]), turn);
  }

  return { cut, loads, contact };
})();
