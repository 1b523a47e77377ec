'use strict';
// What is common to all places that show a lamp: words, numbers, which way an average is out.
Boothlamp.words = element => JSON.parse(element.dataset.words);

Boothlamp.fixed = (value, decimals) => value === null ? '–' : value.toFixed(decimals);

Boothlamp.show = (element, text) => {
  if (element.textContent !== text) element.textContent = text;
};

Boothlamp.window = (booth, quantity) =>
  booth ? booth.windows.find(each => each.quantity === quantity) : undefined;

// "volts high", or nothing if both averages are inside.
Boothlamp.sides = (words, booth, live) => {
  const sides = [];
  for (const [quantity, value] of [['amps', live.amps_a], ['volts', live.volts_v]]) {
    const window = Boothlamp.window(booth, quantity);
    if (window && value !== null && value < window.low) sides.push(words[`page.side.${quantity}.low`]);
    if (window && value !== null && value > window.high) sides.push(words[`page.side.${quantity}.high`]);
  }
  return sides.join(', ');
};

Boothlamp.word = (words, live) => live.stale ? words['page.stale'] : words[`signal.${live.signal}`];

Boothlamp.who = (words, booth) =>
  booth ? `${booth.trainee || words.nobody} · ${booth.procedure
    ? `${booth.procedure} (${booth.revision}) ${booth.pass}` : words['page.no-procedure']}` : '';
