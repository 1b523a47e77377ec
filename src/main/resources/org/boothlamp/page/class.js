'use strict';
// One tile a booth; each booth is asked directly. The token stays in this tab and goes to the booths
// of the list only, in a header.
(() => {
  const list = document.getElementById('class');
  const words = Boothlamp.words(list);
  const picture = document.getElementById('lamp-picture');
  const form = document.getElementById('token-form');
  const KEY = 'boothlamp-class-token';

  function part(tile, tag, name) {
    const element = document.createElement(tag);
    element.className = name;
    tile.append(element);
    return element;
  }

  function tileOf(origin) {
    const tile = document.createElement('li');
    tile.dataset.signal = 'none';
    const title = part(tile, 'h2', 'tile-booth');
    title.textContent = origin ? origin.replace(/^https?:\/\//, '') : '…';
    tile.append(picture.content.cloneNode(true));
    const word = part(tile, 'p', 'word');
    word.textContent = words['page.no-connection'];
    list.append(tile);
    return { tile, title, word, why: part(tile, 'p', 'why'), figures: part(tile, 'p', 'figures'),
      who: part(tile, 'p', 'who'), booth: null };
  }

  function showLive(view, live) {
    view.tile.dataset.signal = live.stale ? 'none' : live.signal;
    Boothlamp.show(view.word, Boothlamp.word(words, live));
    Boothlamp.show(view.why, Boothlamp.sides(words, view.booth, live));
    Boothlamp.show(view.figures, live.amps_a === null ? ''
      : `${Boothlamp.fixed(live.amps_a, 0)} A · ${Boothlamp.fixed(live.volts_v, 1)} V · `
        + `${Boothlamp.fixed(live.arc_s, 0)} ${words['same.page.seconds']}`);
  }

  function showBooth(view, booth) {
    view.booth = booth;
    Boothlamp.show(view.title, booth.booth);
    Boothlamp.show(view.who, Boothlamp.who(words, booth));
  }

  function lost(view, status) {
    view.tile.dataset.signal = 'none';
    Boothlamp.show(view.word, words[status === 401 ? 'page.error.token' : 'page.no-connection']);
    for (const each of [view.why, view.figures]) Boothlamp.show(each, '');
  }

  function options(origin) {
    const token = sessionStorage.getItem(KEY);
    if (!origin) return { credentials: 'same-origin' };
    return { mode: 'cors', credentials: 'omit',
      headers: token ? { Authorization: `Bearer ${token}` } : {} };
  }

  const origins = ['', ...list.dataset.booths.split(' ').filter(Boolean)];
  const streams = origins.map(origin => {
    const view = tileOf(origin);
    return Boothlamp.follow(`${origin}/live/stream?lamp`, () => options(origin), {
      event: (name, data) => name === 'booth' ? showBooth(view, data) : showLive(view, data),
      lost: status => lost(view, status),
    });
  });

  if (form) {
    form.addEventListener('submit', event => {
      event.preventDefault();
      const field = document.getElementById('class-token');
      sessionStorage.setItem(KEY, field.value.trim());
      field.value = '';
      streams.slice(1).forEach(stream => stream.again());
    });
  }
})();
