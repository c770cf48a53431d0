
/* The circuit in sections. A net that the supply holds parts what lies on either side of it: what a switch does on one side is not felt on
 * the other. So each section is solved by itself, once for each pattern of its own switches, and a box that is ticked costs what its own
 * section costs. What comes out is what wheelCircuit.at says of the whole. */
const wheelSections = (() => {
  const { NEUTRAL, EARTH, find, join, solve, shorted, closedAt, heldAt } = wheelCircuit;
  const HELD = -1;

  // Faults that join nets or take the supply away part the network anew; as many ways of it are remembered, then all are forgotten.
  const MOST_SPLITS = 32;

  // Patterns of one section that are remembered, for the same reason.
  const MOST_SOLVED = 4096;
  const splits = new WeakMap();
  let made = 0;

  /** Nodes whose potential the supply gives, whatever the switches do. */
  function heldNodes(network, hand) {
    const held = new Set([EARTH, ...(hand.neutralOpen ? [] : [NEUTRAL]), ...network.lines.map(line => line.node).filter(node => !hand.openLines.includes(node))]);
    if (network.wheel >= 0 && !hand.feedOpen && held.has(network.feed)) {
      held.add(network.wheel);
    }
    return held;
  }

  /** A section as a network of its own: all held nodes and its own ones, in their order, so that it is solved by the same steps as the whole. */
  function asNetwork(network, held, { own, contacts, inputs, loads }) {
    const nodes = [...new Set([0, NEUTRAL, EARTH, ...held, ...own])].sort((a, b) => a - b);
    const at = new Map(nodes.map((node, i) => [node, i]));
    const moved = among => i => ({ ...among[i], a: at.get(among[i].a), b: at.get(among[i].b) });
    return {
      at,
      network: {
        nets: nodes,
        lines: network.lines.filter(line => held.has(line.node)).map(line => ({ ...line, node: at.get(line.node) })),
        wheel: at.get(network.wheel) ?? -1,
        feed: at.get(network.feed),
        contacts: contacts.map(moved(network.contacts)),
        inputs: inputs.map(moved(network.inputs)),
        loads: loads.map(moved(network.loads)),
      },
    };
  }

  /** The network parted at held nodes. */
  function parted(network, hand) {
    const held = heldNodes(network, hand);
    const joins = hand.joins.map(([a, b]) => ({ a, b }));
    const wheel = network.wheel >= 0 && !hand.feedOpen ? [{ a: network.wheel, b: network.feed }] : [];
    const parent = network.nets.map((_, node) => node);
    [...network.contacts, ...network.inputs, ...network.loads, ...joins, ...wheel]
      .filter(({ a, b }) => !held.has(a) && !held.has(b))
      .forEach(({ a, b }) => join(parent, a, b));
    const rootOf = (a, b) => (!held.has(a) ? find(parent, a) : !held.has(b) ? find(parent, b) : HELD);
    const begun = () => ({ own: [], contacts: [], inputs: [], loads: [], joins: [], solved: new Map(), turn: null, name: made++ });
    const sections = new Map([[HELD, begun()]]);
    network.nets.forEach((_, node) => {
      const root = rootOf(node, node);
      sections.set(root, sections.get(root) || begun());
      sections.get(root).own.push(node);
    });
    ["contacts", "inputs", "loads"].forEach(kind => network[kind].forEach(({ a, b }, i) => sections.get(rootOf(a, b))[kind].push(i)));
    joins.forEach(both => sections.get(rootOf(both.a, both.b)).joins.push(both));
    return [...sections.values()].map(section => {
      const { at, network: alone } = asNetwork(network, held, section);
      return { ...section, network: alone, places: section.own.map(node => at.get(node)), joins: section.joins.map(({ a, b }) => [at.get(a), at.get(b)]) };
    });
  }

  function sectionsOf(network, hand) {
    const known = splits.get(network) || new Map();
    splits.set(network, known);
    const key = JSON.stringify([hand.joins, hand.feedOpen, hand.neutralOpen, hand.openLines]);
    if (!known.has(key)) {
      if (known.size >= MOST_SPLITS) {
        known.clear();
      }
      known.set(key, parted(network, hand));
    }
    return known.get(key);
  }

  /** A section with its contacts as given. "switched" says how its inputs and faults are, and names the answer with the contacts. */
  function solution(section, hand, switched, isMade) {
    const key = section.contacts.reduce((bits, i) => bits + (isMade(i) ? 1 : 0), switched);
    let solved = section.solved.get(key);
    if (!solved) {
      if (section.solved.size >= MOST_SOLVED) {
        section.solved.clear();
      }
      solved = solve(section.network, {
        contacts: section.contacts.map(isMade),
        inputs: section.inputs.map(i => hand.inputs[i]),
        loads: section.loads.map(i => hand.loads[i]),
        joins: section.joins,
        feedOpen: hand.feedOpen,
        neutralOpen: hand.neutralOpen,
      });
      section.solved.set(key, solved);
    }
    return solved;
  }

  /** The circuit under what is switched by hand. */
  function under(network, hand) {
    const sections = sectionsOf(network, hand);
    const switched = sections.map(({ inputs, loads }) =>
      `${inputs.map(i => (hand.inputs[i] ? 1 : 0)).join("")}/${loads.map(i => (hand.loads[i] || "works")[0]).join("")}/`);
    const fixed = network.contacts.map((contact, i) => hand.stuck[i] ?? heldAt(contact, hand));
    const madeOf = closed => i => fixed[i] ?? closed[i];

    /** All of it with the sound wheel's contacts closed as given: what wheelCircuit.at says. */
    function whole(closed) {
      const contacts = closed.map((_, i) => madeOf(closed)(i));
      const parts = sections.map((section, s) => solution(section, hand, switched[s], i => contacts[i]));
      if (parts.some(part => part.short)) {
        return { contacts, ...shorted(network) };
      }
      const state = { contacts, short: false, loads: [], volts: [], nodes: [] };
      sections.forEach(({ own, loads, places }, s) => {
        loads.forEach((load, i) => {
          state.loads[load] = parts[s].loads[i];
          state.volts[load] = parts[s].volts[i];
        });
        own.forEach((node, i) => { state.nodes[node] = parts[s].nodes[places[i]]; });
      });
      return state;
    }

    /** One section over spans of the turn; worked out anew only when something in it was switched or the spans are others. */
    function turnOf(section, s, spans) {
      const key = `${spans.name}:${switched[s]}${section.contacts.map(i => fixed[i] ?? "").join()}`;
      if (!section.turn || section.turn.key !== key) {
        const states = spans.closed.map(closed => solution(section, hand, switched[s], madeOf(closed)));
        section.turn = { key, states, shorts: states.flatMap((state, i) => (state.short ? [i] : [])) };
      }
      return section.turn;
    }

    /** For each load its states over spans of the turn, and a key that stays while none of them changes.
     *  spans: which contacts of the sound wheel are closed in each, and a name that no others bear. */
    function over(spans) {
      const turns = sections.map((section, s) => turnOf(section, s, spans));
      const shorts = new Set(turns.flatMap(turn => turn.shorts));
      const opened = shorts.size ? shorted(network).loads[0] : "";
      const loads = [];
      sections.forEach((section, s) => section.loads.forEach((load, i) => {
        loads[load] = {
          key: `${section.name} ${turns[s].key} ${[...shorts].join()}`,
          states: turns[s].states.map((state, span) => (shorts.has(span) ? opened : state.loads[i])),
        };
      }));
      return loads;
    }

    return { whole, over, at: timeS => whole(closedAt(network, timeS)) };
  }

  return { under };
})();
