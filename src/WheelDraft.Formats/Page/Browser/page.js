
/* What moves on the page. One value rules everything: the time in the turn. The wheel's angle follows from it, the contacts
 * from the angle, and the lamps from contacts, inputs and faults together. */
const wheelPage = (() => {
  const design = JSON.parse(document.getElementById("design").textContent);
  const network = design.network;
  const turn = network.turn;
  const one = id => document.getElementById(id);
  const { all, put } = wheelPicture;
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
    wheelWords: one("wheel-desc"),
    verdict: one("verdict"),
    isMet: one("verdict").classList.contains("meets"),
    holds: one("holds"),
    onLands: all(".wiper[data-on]").map(wiper => ({ wiper, times: pairs(wiper.dataset.on.split(" ").map(Number)) })),
    interlocks: all("[data-interlock]").map(article => ({ article, now: article.querySelector(".now"), tick: article.querySelector(".tick"), badge: article.querySelector(".badge") })),
    truth: all("[data-from]").map(row => ({ row, from: Number(row.dataset.from) })),
  };

  const levers = all(".lever[data-cam]").map(element => ({ element, cam: design.cams[Number(element.dataset.cam)] }));

  let time = 0;
  let playing = false;
  let lastFrame = 0;
  let shown = "";
  let told = "";
  let rowNow;

  // What else follows a drawing: link, story. And what is told that a person has taken hold: the story stops.
  const drawn = [];
  const handTaken = [];

  // Every make and break of the turn, in order; home too, where a turn begins.
  const changesNow = () => [...new Set([0, ...network.contacts.flatMap(c => c.on.flat().map(t => t % turn))])].sort((a, b) => a - b);
  let changes = changesNow();

  // What one press of an arrow moves: a second, or half a percent of a turn that is long, a twentieth of one that is short.
  const arrow = Math.max(Math.min(1, turn / 20), turn * 0.005);
  const PAGE = 10;
  const FINE = 0.1;

  /** What is switched by hand: inputs and faults. */
  const handed = () => wheelCircuit.handed(
    inputs.map(box => box.checked),
    faultsSet().map(i => design.faults[i]));

  const switchOf = new Map(switches.map(box => [Number(box.dataset.fault), box]));

  const faultsSet = () => switches.filter(box => box.checked).map(box => Number(box.dataset.fault));

  let hand = handed();
  let circuit = wheelSections.under(network, hand);
  let solved = new Map();

  /** The circuit at a time of the turn, with inputs and faults as they are set; each pattern of contacts is put together once. */
  function at(timeS) {
    const closed = wheelCircuit.closedAt(network, timeS);
    const key = closed.map(Number).join("");
    if (!solved.has(key)) {
      solved.set(key, { key, ...circuit.whole(closed) });
    }
    return solved.get(key);
  }

  /** Where a lever is: stuck; on its cam; or held higher by an obstacle or its latch. Its angle about the pivot, or its way along the slide. */
  function leverAt(cam, shareOfTurn) {
    const at = shareOfTurn * (cam.lift.length - 1);
    const i = Math.min(Math.floor(at), cam.lift.length - 2);
    const onCam = cam.lift[i] + (cam.lift[i + 1] - cam.lift[i]) * (at - i);
    const stuck = cam.stuck.find(([fault]) => switchOf.get(fault).checked);
    const lift = stuck ? stuck[1] : Math.max(onCam, ...cam.holds.filter(([input]) => hand.senses[input]).map(([, held]) => held));
    return cam.pivot ? `rotate(${(-cam.sense * lift).toFixed(4)} ${cam.pivot.join(" ")})` : `translate(${cam.way.map(w => (w * lift).toFixed(4)).join(" ")})`;
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
    levers.forEach(({ element, cam }) => element.setAttribute("transform", leverAt(cam, shareOfTurn)));
    put(parts.clock, time.toFixed(turn < 100 ? 2 : 1));
    put(parts.degrees, `${degrees.toFixed(1)}°`);
    if (document.activeElement !== slider || !playing) {
      slider.setAttribute("aria-valuetext", said("{1} seconds, {2} degrees", time.toFixed(1), degrees.toFixed(0)));
    }
    const state = at(time);
    if (shown !== state.key) {
      shown = state.key;
      wheelPicture.show(network, hand, state);
      tell(state);
    }
    parts.onLands.forEach(({ wiper, times }) => wiper.classList.toggle("made", wheelCircuit.within(times, time, turn)));
    showNote(state);
    showClaims(state);
    showRow();
    if (!playing) {
      tell(state);
    }
    drawn.forEach(follow => follow());
  }

  /** The picture in words, for those who do not see it: rewritten when something changes and whenever it stands. */
  function tell(state) {
    const on = word => network.loads.filter((_, i) => state.loads[i] === word).map(load => load.name);
    const made = network.contacts.filter((_, i) => state.contacts[i]).map(contact => contact.name);
    const closed = network.inputs.filter((_, i) => hand.inputs[i]).map(input => input.name);
    const list = (words, names, none) => (names.length ? `${words}: ${names.join(", ")}.` : none);
    const words = [
      said("{1} seconds after home the wheel has turned by {2} degrees.", time.toFixed(1), (time / turn * 360).toFixed(0)),
      list(said("Contacts closed"), made, said("Every contact is open.")),
      network.inputs.length ? list(said("Inputs closed"), closed, said("Every input is open.")) : "",
      state.short ? said("A fuse is open.") : "",
      list(said("On"), on("on"), said("Nothing is on.")),
      list(said("Undecided"), on("undecided"), ""),
      faultsSet().length ? list(said("Faults set"), faultsSet().map(i => design.faults[i].words), "") : "",
    ].filter(Boolean).join(" ");
    if (told !== words) {
      told = words;
      put(parts.wheelWords, `${said("Copper as cut; the wheel turns under wipers that stand still.")} ${words}`);
      one("wiring").setAttribute("aria-label", `${said("Wiring diagram: nets upright, contacts, inputs and loads between them.")} ${words}`);
      one("chart").setAttribute("aria-label", `${said("Timing chart of one turn, its cursor at {1} seconds; the tables give the same in words.", time.toFixed(1))} ${words}`);
    }
  }

  function showNote(state) {
    const motor = network.motor < 0 ? "none" : state.loads[network.motor];
    put(parts.note, state.short ? (network.lines.length > 1
      ? said("A line meets another, neutral or earth: a fuse opens, and what the other lines still feed is undecided.")
      : said("Line meets neutral or earth: the fuse opens and everything is off."))
      : hand.motion === 0 ? said("The motor is stalled: the wheel stands, whatever is on.")
      : motor === "off" ? said("The motor is off here: the real wheel would stand still.")
      : motor === "undecided" ? said("The motor is between drop-out and pull-in: it may run or stand.")
      : hand.motion < 0 ? said("The motor runs backward.") : "");
  }

  /** Interlocks as they stand now, and what of the proofs still holds with the faults that are set. */
  function showClaims(state) {
    const faults = faultsSet().length;
    const nows = design.interlocks.map(interlock =>
      wheelCircuit.claimNow(network, interlock, { ...hand, contacts: state.contacts, states: state.loads }, time));
    parts.interlocks.forEach((claim, i) => showInterlock(claim, design.interlocks[i], nows[i], faults));
    const sound = faults === 0;
    parts.verdict.classList.toggle("sound", sound);
    parts.verdict.classList.toggle("faulty", !sound);
    if (parts.isMet) {
      parts.verdict.classList.toggle("meets", sound);
      parts.verdict.classList.toggle("unsure", !sound);
      put(parts.verdict.lastChild, sound ? said("Meets its rules") : said("Meets its rules without faults"));
      hide(parts.verdict.firstChild, !sound);
    }
    put(parts.holds, standing(nows, faults));
    parts.holds.classList.toggle("broken", nows.some(now => now.broken));
  }

  /** What holds now, in a sentence; nothing while all is as it was proved. */
  function standing(nows, faults) {
    const names = is => design.interlocks.filter((_, i) => is(nows[i])).map(interlock => `“${interlock.name}”`);
    const broken = names(now => now.broken);
    const open = names(now => now.applies && !now.broken && !now.kept);
    const kept = names(now => now.kept);
    if (!faults && !broken.length) {
      return "";
    }
    const when = faults === 0 ? said("Now") : faults === 1 ? said("Now, with 1 fault set") : said("Now, with {1} faults set", faults);
    const parts = [
      broken.length ? broken.length === 1 ? said("{1} is broken", broken[0]) : said("{1} are broken", broken.join(", ")) : "",
      open.length ? said("{1} cannot be decided", open.join(", ")) : "",
      kept.length ? kept.length === 1 ? said("{1} is kept", kept[0]) : said("{1} are kept", kept.join(", ")) : "",
    ].filter(Boolean);
    return `${when}: ${parts.length ? parts.join("; ") : design.interlocks.length ? said("no interlock asks anything here") : said("no interlock is claimed")}.`;
  }

  /** Written only when it changes something: else every frame would have the page laid out anew. */
  function hide(element, isHidden) {
    if (element.hidden !== isHidden) {
      element.hidden = isHidden;
    }
  }

  function showInterlock({ article, now: words, tick, badge }, interlock, now, faults) {
    const unreached = now.broken && interlock.holds && faults <= interlock.faults;
    put(words, unreached ? `${now.words} The wheel never comes to this state from home by itself.` : now.words);
    article.classList.toggle("broken", now.broken);
    article.classList.toggle("applies", now.applies);
    if (tick) {
      // The tick is for what was proved: it goes where the proof does not reach, and never stands beside what is broken.
      const covered = faults <= interlock.faults && !now.broken;
      hide(tick, !covered);
      const proved = tick.textContent.startsWith("✓");
      badge.classList.toggle("meets", covered && proved);
      badge.classList.toggle("unsure", !(covered && proved));
    }
  }

  /** The truth table's row: the last interval that has begun; before the first of the turn, the one that passes home. */
  function showRow() {
    const begun = parts.truth.filter(({ from }) => from <= time);
    const from = Math.max(...(begun.length ? begun : parts.truth).map(entry => entry.from));
    const row = parts.truth.find(entry => entry.from === from)?.row;
    if (row !== rowNow) {
      rowNow?.classList.remove("now");
      row?.classList.add("now");
      rowNow = row;
    }
  }

  /** Something was switched by hand, or by a story or a link. */
  function handedAnew() {
    hand = handed();
    circuit = wheelSections.under(network, hand);
    solved = new Map();
    shown = "";
    wheelChart.loads(network, circuit);
    draw();
  }

  function go(timeS) {
    time = Math.min(Math.max(timeS, 0), turn);
    slider.value = time;
    draw();
  }

  function setPlaying(on) {
    if (playing === on) {
      return;
    }
    playing = on;
    play.querySelector("span").textContent = on ? said("Pause") : said("Play");
    play.classList.toggle("playing", on);
    // While it runs, a screen reader does not announce every lamp; when it pauses, it announces how things stand.
    wheelPicture.lamps.forEach(lamp => lamp.setAttribute("aria-live", on ? "off" : "polite"));
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

  const takeHold = () => {
    setPlaying(false);
    handTaken.forEach(stop => stop());
  };

  slider.addEventListener("input", () => {
    takeHold();
    time = Number(slider.value);
    draw();
  });
  slider.addEventListener("keydown", event => {
    const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: PAGE, PageDown: -PAGE }[event.key];
    if (way && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      takeHold();
      go(time + (event.shiftKey && Math.abs(way) === 1 ? way * FINE : way * arrow));
    }
  });
  const plain = seconds => `${Number(seconds.toPrecision(4))} s`;
  put(one("keys"), said("On the time: arrow keys move by {1}, Page Up and Page Down by {2}, Shift with an arrow by {3}, Home and End to the ends of the turn.", plain(arrow), plain(PAGE * arrow), plain(FINE)));
  play.addEventListener("click", () => {
    handTaken.forEach(stop => stop());
    setPlaying(!playing);
  });
  one("on").addEventListener("click", () => {
    takeHold();
    go(changes.find(c => c > time + 1e-9) ?? turn);
  });
  one("back").addEventListener("click", () => {
    takeHold();
    go(changes.findLast(c => c < time - 1e-9) ?? 0);
  });
  const handStops = () => handTaken.forEach(stop => stop());
  inputs.forEach(box => box.addEventListener("change", () => {
    handStops();
    handedAnew();
  }));
  switches.forEach(box => box.addEventListener("change", () => {
    handStops();
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
    takeHold();
    go((event.clientX - box.left) / box.width * turn);
  };
  chart.addEventListener("pointerdown", event => {
    chart.setPointerCapture(event.pointerId);
    pick(event);
  });
  chart.addEventListener("pointermove", event => event.buttons === 1 && pick(event));

  /** Sets inputs and faults, given by their indices, without a hand of the reader's. */
  function setSwitches(closed, faults) {
    inputs.forEach((box, i) => { box.checked = closed.includes(i); });
    switches.forEach(box => { box.checked = faults.includes(Number(box.dataset.fault)); });
    handedAnew();
  }

  /** A screw has moved the on-periods of a contact. */
  function contactMoved(index) {
    changes = changesNow();
    wheelChart.cut(network, changes);
    wheelChart.contact(network, index);
    handedAnew();
  }

  slider.value = 0;
  wheelChart.cut(network, changes);
  [drive, ...inputs, ...switches].forEach(box => { box.checked = false; });
  handedAnew();
  return {
    design, network, turn, one, all, put, stillness, drawn, handTaken, go, setSwitches, setPlaying, contactMoved, faultsSet,
    time: () => time,
    isPlaying: () => playing,
    speed: () => Number(one("speed").value),
    closedInputs: () => inputs.flatMap((box, i) => (box.checked ? [i] : [])),
  };
})();
