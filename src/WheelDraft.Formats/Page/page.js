
/* What moves on the page. One value rules everything: the time in the turn. The wheel's angle follows from it, the contacts
 * from the angle, and the lamps from contacts, inputs and faults together. */
(() => {
  const design = JSON.parse(document.getElementById("design").textContent);
  const network = design.network;
  const turn = network.turn;
  const one = id => document.getElementById(id);
  const all = selector => [...document.querySelectorAll(selector)];
  const stillness = window.matchMedia("(prefers-reduced-motion: reduce)");

  const pairs = numbers => numbers.flatMap((from, i) => (i % 2 === 0 ? [[from, numbers[i + 1]]] : []));

  const slider = one("time");
  const play = one("play");
  const drive = one("drive");
  const inputs = all("[type=checkbox][data-input]");
  const switches = all("[data-fault]");
  const parts = {
    turning: one("turning"),
    cursor: [...one("cursor").children],
    clock: one("clock-s"),
    degrees: one("clock-deg"),
    note: one("note"),
    lamps: all(".lamp"),
    contacts: all(".wiper, .tag, .switch[data-contact], .row[data-contact]"),
    onLands: all(".wiper[data-on]").map(wiper => ({ wiper, times: pairs(wiper.dataset.on.split(" ").map(Number)) })),
    feeds: all(".switch[data-feed]"),
    inputs: all(".switch[data-input]"),
    loads: all(".load[data-load], .row[data-load]"),
    nets: all(".net"),
    interlocks: all("[data-interlock]"),
    truth: all("[data-from]"),
  };

  let time = 0;
  let playing = false;
  let lastFrame = 0;
  let shown = "";

  // Every make and break of the turn, in order; home too, where a turn begins.
  const changes = [...new Set([0, ...network.contacts.flatMap(c => c.on.flat().map(t => t % turn))])].sort((a, b) => a - b);

  /** What is switched by hand: inputs and faults. */
  const handed = () => wheelCircuit.handed(
    inputs.map(box => box.checked),
    switches.filter(box => box.checked).map(box => design.faults[Number(box.dataset.fault)]));

  let hand = handed();
  let solved = new Map();

  /** The circuit at a time of the turn, with inputs and faults as they are set; each pattern of contacts is solved once. */
  function at(timeS) {
    const key = wheelCircuit.closedAt(network, timeS).map(Number).join("");
    if (!solved.has(key)) {
      solved.set(key, { key, ...wheelCircuit.at(network, hand, timeS) });
    }
    return solved.get(key);
  }

  const volts = v => (v === null || Number.isNaN(v) ? "–" : `${(Math.round(v * 10) / 10).toFixed(v >= 99.95 || v === 0 ? 0 : 1)} V`);
  const isLive = v => v !== null && !(v <= network.supply * 1e-6);
  const stateOfNet = v => (v === null ? "floating" : isLive(v) ? "live" : "dead");

  function put(element, text) {
    if (element.textContent !== text) {
      element.textContent = text;
    }
  }

  /** Draws the instant. The wheel and the cursor move at every frame, all else only when something changes. */
  function draw() {
    const shareOfTurn = time / turn;
    const degrees = shareOfTurn * 360;
    parts.turning.setAttribute("transform", `rotate(${(-design.sense * degrees).toFixed(4)})`);
    const x = `${(shareOfTurn * 100).toFixed(4)}%`;
    parts.cursor[0].setAttribute("x1", x);
    parts.cursor[0].setAttribute("x2", x);
    parts.cursor[1].setAttribute("cx", x);
    put(parts.clock, time.toFixed(turn < 100 ? 2 : 1));
    put(parts.degrees, `${degrees.toFixed(1)}°`);
    if (document.activeElement !== slider || !playing) {
      slider.setAttribute("aria-valuetext", `${time.toFixed(1)} seconds, ${degrees.toFixed(0)} degrees`);
    }
    const state = at(time);
    if (shown !== state.key) {
      shown = state.key;
      show(state);
    }
    parts.onLands.forEach(({ wiper, times }) => wiper.classList.toggle("made", wheelCircuit.within(times, time, turn)));
    showNote(state);
    parts.interlocks.forEach((article, i) => showInterlock(article, design.interlocks[i], state));
    showRow();
  }

  function show(state) {
    parts.contacts.forEach(element => {
      const i = Number(element.dataset.contact);
      element.classList.toggle("made", i < 0 ? !hand.feedOpen : state.contacts[i]);
      if (element.dataset.node) {
        mark(element, stateOfNet(state.short ? null : state.nodes[Number(element.dataset.node)]), state.short);
      }
    });
    parts.feeds.forEach(element => element.classList.toggle("made", !hand.feedOpen));
    parts.inputs.forEach(element => element.classList.toggle("made", hand.inputs[Number(element.dataset.input)]));
    parts.nets.forEach(element => {
      const potential = state.short ? null : state.nodes[Number(element.dataset.node)];
      mark(element, stateOfNet(potential), state.short);
      const label = element.querySelector(".net-volts");
      if (label) {
        put(label, state.short ? "fuse open" : potential === null ? "joined to nothing" : volts(potential));
      }
    });
    parts.loads.forEach(element => setClass(element, state.loads[Number(element.dataset.load)]));
    parts.lamps.forEach(lamp => {
      const i = Number(lamp.dataset.load);
      setClass(lamp, state.loads[i]);
      const name = `${network.loads[i].name} ${state.loads[i]}`;
      if (lamp.getAttribute("aria-label") !== name) {
        lamp.setAttribute("aria-label", name);
      }
      put(lamp.querySelector(".state"), state.loads[i]);
      put(lamp.querySelector(".volts"), volts(state.volts[i]));
    });
  }

  function mark(element, live, short) {
    ["live", "dead", "floating"].forEach(word => element.classList.toggle(word, word === live));
    const words = element.querySelector(".tag-state");
    if (words) {
      const contact = network.wheel < 0 ? (element.classList.contains("made") ? "closed" : "open")
        : element.classList.contains("made") ? "on copper" : "off copper";
      put(words, `${short ? "fuse open" : live === "live" ? "⚡ live" : live === "dead" ? "at zero" : "not joined"} · ${contact}`);
    }
  }

  function setClass(element, state) {
    ["on", "off", "undecided"].forEach(word => element.classList.toggle(word, word === state));
  }

  function showNote(state) {
    const motor = network.motor < 0 ? "none" : state.loads[network.motor];
    put(parts.note, state.short ? (network.lines.length > 1
      ? "A line meets another, neutral or earth: a fuse opens, and what the other lines still feed is undecided."
      : "Line meets neutral or earth: the fuse opens and everything is off.")
      : hand.motion === 0 ? "The motor is stalled: the wheel stands, whatever is on."
      : motor === "off" ? "The motor is off here: the real wheel would stand still."
      : motor === "undecided" ? "The motor is between drop-out and pull-in: it may run or stand."
      : hand.motion < 0 ? "The motor runs backward." : "");
  }

  function showInterlock(article, interlock, state) {
    const now = wheelCircuit.claimNow(network, interlock, { ...hand, contacts: state.contacts, states: state.loads }, time);
    put(article.querySelector(".now"), now.words);
    article.classList.toggle("broken", now.broken);
    article.classList.toggle("applies", now.applies);
  }

  /** The truth table's row: the last interval that has begun; before the first of the turn, the one that passes home. */
  function showRow() {
    const from = parts.truth.map(element => Number(element.dataset.from));
    const begun = from.filter(t => t <= time);
    const row = from.indexOf(Math.max(...(begun.length ? begun : from)));
    parts.truth.forEach((element, i) => element.classList.toggle("now", i === row));
  }

  /** The loads' rows of the chart: the whole turn with inputs and faults as they are set. */
  function chartLoads() {
    const rows = all(".row[data-load] .bars");
    rows.forEach(row => row.replaceChildren());
    changes.forEach((from, i) => {
      const to = i + 1 < changes.length ? changes[i + 1] : turn;
      const state = at((from + to) / 2);
      rows.forEach((row, load) => {
        if (state.loads[load] !== "off") {
          addBar(row, network.contacts.length + load, [from, to], state.loads[load]);
        }
      });
    });
  }

  function addBar(row, index, [from, to], look) {
    const last = row.lastElementChild;
    if (last && last.getAttribute("class") === look && Number(last.dataset.to) === from) {
      from = Number(last.dataset.from);
      last.remove();
    }
    const bar = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    bar.setAttribute("class", look);
    bar.dataset.from = from;
    bar.dataset.to = to;
    bar.setAttribute("x", `${from / turn * 100}%`);
    bar.setAttribute("width", `${(to - from) / turn * 100}%`);
    bar.setAttribute("y", index * 30 + 7);
    bar.setAttribute("height", 16);
    row.append(bar);
  }

  /** Something was switched by hand. */
  function handedAnew() {
    hand = handed();
    solved = new Map();
    shown = "";
    chartLoads();
    draw();
  }

  function go(timeS) {
    time = Math.min(Math.max(timeS, 0), turn);
    slider.value = time;
    draw();
  }

  function setPlaying(on) {
    playing = on;
    play.querySelector("span").textContent = on ? "Pause" : "Play";
    play.classList.toggle("playing", on);
    // While it runs, a screen reader does not announce every lamp; when it pauses, it announces how things stand.
    parts.lamps.forEach(lamp => lamp.setAttribute("aria-live", on ? "off" : "polite"));
    if (on) {
      lastFrame = 0;
      requestAnimationFrame(frame);
    }
  }

  // With reduced motion the wheel is set on in steps, twice a second, instead of turning.
  const stepMs = () => (stillness.matches ? 500 : 0);

  function frame(now) {
    if (!playing) {
      return;
    }
    lastFrame = lastFrame || now;
    const passedMs = now - lastFrame;
    if (passedMs >= stepMs()) {
      lastFrame = now;
      // A page that slept in the background does not jump.
      run(Math.min(passedMs, 1000) / 1000 * Number(one("speed").value));
    }
    requestAnimationFrame(frame);
  }

  /** Runs on by so much time, from change to change, so that a motor that lets go stands behind its own edge. */
  function run(seconds) {
    let left = seconds;
    while (left > 1e-12 && hand.motion !== 0 && (!drive.checked || motorRuns())) {
      const step = hand.motion > 0
        ? Math.min(left, (changes.find(c => c > time) ?? turn) - time)
        : Math.min(left, turn / 3600, time > 0 ? time : turn);
      time = hand.motion > 0 ? time + step : (time > 0 ? time : turn) - step;
      time = time >= turn ? 0 : time;
      left -= step;
    }
    go(time);
  }

  const motorRuns = () => network.motor < 0 || at(time).loads[network.motor] === "on";

  slider.addEventListener("input", () => {
    setPlaying(false);
    time = Number(slider.value);
    draw();
  });
  slider.addEventListener("keydown", event => {
    const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (way && event.shiftKey) {
      event.preventDefault();
      setPlaying(false);
      go(time + way * 0.1);
    }
  });
  play.addEventListener("click", () => setPlaying(!playing));
  one("on").addEventListener("click", () => {
    setPlaying(false);
    go(changes.find(c => c > time + 1e-9) ?? turn);
  });
  one("back").addEventListener("click", () => {
    setPlaying(false);
    go(changes.findLast(c => c < time - 1e-9) ?? 0);
  });
  inputs.forEach(box => box.addEventListener("change", handedAnew));
  switches.forEach(box => box.addEventListener("change", () => {
    if (box.checked) {
      mendOpposite(box);
    }
    handedAnew();
  }));
  one("mend").addEventListener("click", () => {
    switches.forEach(box => { box.checked = false; });
    handedAnew();
  });

  /** A contact cannot be welded and never made at once: the later switch mends the earlier. */
  function mendOpposite(box) {
    const fault = design.faults[Number(box.dataset.fault)];
    switches.filter(other => other !== box).forEach(other => {
      const old = design.faults[Number(other.dataset.fault)];
      const motion = ["stalled", "reversed"];
      if ((old.part === fault.part && old.index !== undefined && old.index === fault.index)
        || (motion.includes(old.part) && motion.includes(fault.part))) {
        other.checked = false;
      }
    });
  }

  const chart = one("chart");
  const pick = event => {
    const box = chart.getBoundingClientRect();
    setPlaying(false);
    go((event.clientX - box.left) / box.width * turn);
  };
  chart.addEventListener("pointerdown", event => {
    chart.setPointerCapture(event.pointerId);
    pick(event);
  });
  chart.addEventListener("pointermove", event => event.buttons === 1 && pick(event));

  slider.value = 0;
  [drive, ...inputs, ...switches].forEach(box => { box.checked = false; });
  handedAnew();
})();
