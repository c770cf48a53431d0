"use strict";

/* The circuit at one instant.
 *
 * A network is what the page's data holds: numbered nodes (1 neutral, 2 earth), lines with their potentials, contacts and inputs that
 * join two nodes when closed, loads that are impedances between two nodes. Closed switches merge nodes (union and find); neutral and
 * earth are at zero; the loads between other nodes hang together in blocks, each solved by complex nodal analysis. A block that nothing
 * feeds has no potential. A line joined to zero or to another opens a fuse: with one line everything is off, with three nobody can say
 * whose fuse opens first and everything is undecided. */
const wheelCircuit = (() => {
  const NEUTRAL = 1;
  const EARTH = 2;

  // A pivot below this share of the largest admittance: coil and capacitor cancel, and there is no finite answer.
  const RESONANCE = 1e-13;

  const find = (parent, node) => {
    while (parent[node] !== node) {
      parent[node] = parent[parent[node]];
      node = parent[node];
    }
    return node;
  };

  const join = (parent, a, b) => {
    const rootA = find(parent, a);
    const rootB = find(parent, b);
    parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  };

  const upTo = count => Array.from({ length: count }, (_, i) => i);

  /** Nodes joined by everything that is closed. */
  function merge(network, state) {
    const parent = upTo(network.nets.length);
    if (network.wheel >= 0 && !state.feedOpen) {
      join(parent, network.wheel, network.feed);
    }
    (state.joins || []).forEach(([a, b]) => join(parent, a, b));
    network.inputs.forEach((input, i) => state.inputs[i] && join(parent, input.a, input.b));
    network.contacts.forEach((contact, i) => state.contacts[i] && join(parent, contact.a, contact.b));
    network.loads.forEach((load, i) => modeOf(state, i) === "joined" && join(parent, load.a, load.b));
    return upTo(network.nets.length).map(node => find(parent, node));
  }

  const modeOf = (state, load) => (state.loads && state.loads[load]) || "works";

  /** Solves one instant. state: contacts and inputs closed (true or false each), and faults: loads ("works", "joined",
   *  "absent" each), joins (pairs of nodes), feedOpen, neutralOpen, openLines (nodes). */
  function solve(network, state) {
    const root = merge(network, state);
    const held = sourcesOf(network, state, root);
    if (!held) {
      return shorted(network);
    }
    const potentials = blockPotentials(network, state, root, held);
    const volts = network.loads.map((load, i) => {
      const a = potentials[root[load.a]];
      const b = potentials[root[load.b]];
      return modeOf(state, i) !== "works" || root[load.a] === root[load.b] || !a || !b ? 0 : Math.hypot(a[0] - b[0], a[1] - b[1]);
    });
    return {
      short: false,
      loads: volts.map((v, i) => (v >= network.loads[i].on ? "on" : v <= network.loads[i].off ? "off" : "undecided")),
      volts,
      nodes: root.map(node => (potentials[node] ? Math.hypot(...potentials[node]) : null)),
    };
  }

  /** Everything when a line meets another, neutral or earth. */
  const shorted = network => ({
    short: true,
    loads: network.loads.map(() => (network.lines.length > 1 ? "undecided" : "off")),
    volts: network.loads.map(() => null),
    nodes: network.nets.map(() => null),
  });

  /** Potential of each merged node that the supply holds, [real, imaginary]; null for a short. */
  function sourcesOf(network, state, root) {
    const held = new Map([[root[EARTH], [0, 0]]]);
    if (!state.neutralOpen) {
      held.set(root[NEUTRAL], [0, 0]);
    }
    for (const line of network.lines.filter(l => !(state.openLines || []).includes(l.node))) {
      if (held.has(root[line.node])) {
        return null;
      }
      held.set(root[line.node], [line.re, line.im]);
    }
    return held;
  }

  /** Potential of each merged node, [real, imaginary]; undefined where nothing gives it one. */
  function blockPotentials(network, state, root, held) {
    const potentials = [];
    held.forEach((potential, node) => { potentials[node] = potential; });
    const working = network.loads
      .map((load, i) => ({ a: root[load.a], b: root[load.b], r: load.r, x: load.x, mode: modeOf(state, i) }))
      .filter(load => load.mode === "works" && load.a !== load.b);
    const chain = upTo(root.length);
    working.filter(load => !held.has(load.a) && !held.has(load.b)).forEach(load => join(chain, load.a, load.b));
    const blocks = new Map();
    working.forEach(load => {
      const own = !held.has(load.a) ? load.a : !held.has(load.b) ? load.b : -1;
      if (own >= 0) {
        const key = find(chain, own);
        blocks.set(key, [...(blocks.get(key) || []), load]);
      }
    });
    blocks.forEach(loads => solveBlock(loads, held, potentials));
    return potentials;
  }

  function solveBlock(loads, held, potentials) {
    const nodes = [];
    const sides = new Map();
    loads.forEach(load => [load.a, load.b].forEach(node => {
      if (held.has(node)) {
        sides.set(String(held.get(node)), held.get(node));
      } else if (!nodes.includes(node)) {
        nodes.push(node);
      }
    }));
    if (sides.size === 1) {
      // Fed from one side only: no current, and so that side's potential everywhere.
      const [only] = sides.values();
      nodes.forEach(node => { potentials[node] = only; });
    } else if (sides.size > 1) {
      const solved = eliminate(matrixOf(loads, held, nodes));
      nodes.forEach((node, i) => { potentials[node] = solved ? solved[i] : [NaN, NaN]; });
    }
  }

  const times = (a, b) => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
  const minus = (a, b) => [a[0] - b[0], a[1] - b[1]];
  const size = a => Math.hypot(a[0], a[1]);
  const over = (a, b) => {
    const square = b[0] * b[0] + b[1] * b[1];
    return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square];
  };

  /** Kirchhoff: the currents that leave each node add up to zero. One row a node, supply currents in the last column. */
  function matrixOf(loads, held, nodes) {
    const rows = nodes.map(() => Array.from({ length: nodes.length + 1 }, () => [0, 0]));
    const enter = (at, other, admittance) => {
      const row = rows[nodes.indexOf(at)];
      if (!row) {
        return;
      }
      const own = nodes.indexOf(at);
      row[own] = [row[own][0] + admittance[0], row[own][1] + admittance[1]];
      const across = nodes.indexOf(other);
      if (across >= 0) {
        row[across] = minus(row[across], admittance);
      } else {
        const [re, im] = held.get(other);
        row[nodes.length] = minus(row[nodes.length], times(admittance, [-re, -im]));
      }
    };
    loads.forEach(load => {
      const admittance = over([1, 0], [load.r, load.x]);
      enter(load.a, load.b, admittance);
      enter(load.b, load.a, admittance);
    });
    return rows;
  }

  /** Gauss with partial pivoting; null for resonance without resistance. */
  function eliminate(rows) {
    const count = rows.length;
    const largest = Math.max(...rows.flatMap(row => row.slice(0, count).map(size)));
    for (let k = 0; k < count; k++) {
      let pivot = k;
      for (let i = k + 1; i < count; i++) {
        pivot = size(rows[i][k]) > size(rows[pivot][k]) ? i : pivot;
      }
      if (!(size(rows[pivot][k]) > RESONANCE * largest)) {
        return null;
      }
      [rows[k], rows[pivot]] = [rows[pivot], rows[k]];
      for (let i = k + 1; i < count; i++) {
        const factor = over(rows[i][k], rows[k][k]);
        for (let j = k; j <= count; j++) {
          rows[i][j] = minus(rows[i][j], times(factor, rows[k][j]));
        }
      }
    }
    const solved = [];
    for (let i = count - 1; i >= 0; i--) {
      let sum = rows[i][count];
      for (let j = i + 1; j < count; j++) {
        sum = minus(sum, times(rows[i][j], solved[j]));
      }
      solved[i] = over(sum, rows[i][i]);
    }
    return solved;
  }

  /** Whether a time of the turn lies in any of some periods [from, to), which may pass home. */
  function within(periods, timeS, turnS) {
    const t = timeS >= turnS ? timeS - turnS : timeS;
    return periods.some(([from, to]) => (to <= turnS ? t >= from && t < to : t >= from || t < to - turnS));
  }

  /** Which contacts are closed at a time of the turn, the wheel being sound. A make belongs to its time, a break does not. */
  const closedAt = (network, timeS) => network.contacts.map(contact => contact.always || within(contact.on, timeS, network.turn));

  /** Inputs as they are switched, with faults upon them, as solve takes them. Besides: what the inputs sense, as switched,
   *  whatever a fault makes of their contacts; contacts that are stuck (true or false
   *  each, by index), and which way the motor drives (1, 0 stalled, -1 backward). */
  function handed(inputs, faults) {
    const state = { senses: [...inputs], inputs: [...inputs], contacts: [], loads: [], joins: [], stuck: [], feedOpen: false, neutralOpen: false, openLines: [], motion: 1 };
    faults.forEach(fault => {
      switch (fault.part) {
        case "inputs": state.inputs[fault.index] = fault.closed; break;
        case "contacts": state.stuck[fault.index] = fault.closed; break;
        case "loads": state.loads[fault.index] = fault.mode; break;
        case "joins": state.joins.push([fault.a, fault.b]); break;
        case "feed": state.feedOpen = true; break;
        case "neutral": state.neutralOpen = true; break;
        case "line": state.openLines.push(fault.index); break;
        case "stalled": state.motion = 0; break;
        case "reversed": state.motion = -1; break;
      }
    });
    return state;
  }

  /** What the contact of a lever does while something holds the lever; undefined while nothing does. */
  const heldAt = (contact, hand) => (contact.holds || []).find(([input]) => hand.senses[input])?.[1];

  /** The circuit at a time of the turn under what is switched by hand. */
  function at(network, hand, timeS) {
    const contacts = closedAt(network, timeS).map((closed, i) => hand.stuck[i] ?? heldAt(network.contacts[i], hand) ?? closed);
    return { contacts, ...solve(network, { ...hand, contacts }) };
  }

  /** How an interlock stands at an instant. hand: as "handed" gives it, with contacts closed and states of the loads. A condition
   *  on a contact asks what the contact does, one on a meaning what the input senses. Broken comes before undecided. */
  function claimNow(network, interlock, hand, timeS) {
    const closed = i => Boolean(i < network.inputs.length ? hand.inputs[i] : hand.contacts[i - network.inputs.length]);
    const senses = i => Boolean(hand.senses[i]);
    const applies = (!interlock.between || within([interlock.between], timeS, network.turn))
      && interlock.closed.every(closed) && !interlock.open.some(closed)
      && interlock.true.every(senses) && !interlock.false.some(senses)
      && (interlock.means || []).every(m => (heldAt(m, hand) ?? m.rest) === m.wanted);
    const states = interlock.loads.map(l => hand.states[l]);
    const is = word => s => s === word;
    const [broken, kept, outcomes] = interlock.claim === "together" ? [states.every(is("on")), states.some(is("off")), ["all on", "not all on"]]
      : interlock.claim === "never" ? [states.some(is("on")), states.every(is("off")), ["on", "off"]]
      : [states.some(is("off")), states.every(is("on")), ["off", "on"]];
    const words = !applies ? "Now: its condition is not met, so it asks nothing."
      : broken ? `Now: it applies, and is broken: ${outcomes[0]}.`
      : kept ? `Now: it applies, and is kept: ${outcomes[1]}.`
      : "Now: it applies, and cannot be decided.";
    return { applies, broken: applies && broken, kept: applies && !broken && kept, words };
  }

  return { NEUTRAL, EARTH, find, join, solve, shorted, closedAt, within, handed, heldAt, at, claimNow };
})();
