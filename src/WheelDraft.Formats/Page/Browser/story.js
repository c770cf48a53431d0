
/* Scenarios told as stories. A story has its own clock; the time in the turn, the inputs and the wheel follow its events. At each
 * event it waits for its sentence to be read. Whatever the reader takes in hand ends it. */
const wheelStory = (() => {
  const { design, turn, one, put, go, setSwitches, setPlaying, handTaken, stillness, speed } = wheelPage;
  const picker = one("story");
  if (!picker) {
    return null;
  }

  // What a reader needs for a sentence: a moment to find it, and some four words a second.
  const readingMs = words => 900 + words.split(" ").length * 250;

  let event = -1;
  let clock = 0;
  let tells = false;
  let waitMs = 0;
  let last = 0;
  let setting = false;
  const story = () => design.stories[Number(picker.value)];

  /** The wheel and the inputs as they are at the story's clock. */
  function place(switches) {
    const now = story().events[event];
    setting = true;
    if (switches) {
      setSwitches(now.closed, []);
    }
    go(now.turning ? (now.at + clock - now.t) % turn : now.at);
    setting = false;
  }

  function enter(next) {
    event = next;
    const now = story().events[event];
    clock = now.t;
    waitMs = readingMs(now.say);
    place(true);
    put(one("event"), said("Event {1} of {2}, {3} s", event + 1, story().events.length, now.t.toFixed(1)));
    put(one("told"), now.say);
    one("event-back").disabled = event === 0;
    one("event-on").disabled = event === story().events.length - 1;
  }

  function setTelling(on) {
    tells = on;
    put(one("tell"), on ? said("Pause the story") : said("Tell the story"));
    if (on) {
      setPlaying(false);
      last = 0;
      requestAnimationFrame(frame);
    }
  }

  function frame(now) {
    if (!tells) {
      return;
    }
    const passedMs = last ? Math.min(now - last, 1000) : 0;
    last = now;
    step(passedMs);
    requestAnimationFrame(frame);
  }

  function step(passedMs) {
    if (waitMs > 0) {
      waitMs -= passedMs;
      return;
    }
    const next = story().events[event + 1];
    const until = next ? next.t : story().end;
    // With reduced motion the wheel is not seen to turn: it stands at the next event.
    clock = stillness.matches ? until : Math.min(until, clock + passedMs / 1000 * speed());
    if (clock < until) {
      place(false);
    } else if (next) {
      enter(event + 1);
    } else {
      place(false);
      put(one("told"), `${story().events[event].say} ${said("Here the story ends, {1} s after its beginning.", story().end.toFixed(1))}`);
      setTelling(false);
      event = -1;
    }
  }

  function leave() {
    if (setting || (!tells && event < 0)) {
      return;
    }
    setTelling(false);
    event = -1;
    put(one("event"), "");
    put(one("told"), said("The story is left: the wheel is in your hands."));
    one("event-back").disabled = true;
    one("event-on").disabled = false;
  }

  handTaken.push(leave);
  one("tell").addEventListener("click", () => {
    if (!tells && event < 0) {
      enter(0);
    }
    setTelling(!tells);
  });
  one("event-on").addEventListener("click", () => {
    setTelling(false);
    enter(Math.min(event + 1, story().events.length - 1));
  });
  one("event-back").addEventListener("click", () => {
    setTelling(false);
    enter(Math.max(event - 1, 0));
  });
  picker.addEventListener("change", () => {
    leave();
    put(one("told"), "");
  });
  one("event-back").disabled = true;
  return { step };
})();
