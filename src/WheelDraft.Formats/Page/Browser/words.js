// What the page says while it is played, in the language of its readers: the page's data hold the words for every text that a script says.
"use strict";
const said = (() => {
  const words = JSON.parse(document.getElementById("design").textContent).words || {};
  return (english, ...set) => (words[english] || english).replace(/\{(\d+)\}/g, (place, n) => (n <= set.length ? set[n - 1] : place));
})();
