'use strict';
// A run again, alone or beside another one: plays, steps, zooms, and lets the arc be heard.
(() => {
  const place = document.getElementById('replay');
  const words = JSON.parse(place.dataset.words);
  const hasRaw = place.dataset.raw === 'true';
  const address = `/replay/${place.dataset.run}`;
  const beside = place.dataset.beside ? `?beside=${place.dataset.beside}` : '';
  const byId = id => document.getElementById(id);
  const say = (key, ...parts) => parts.reduce((text, part, k) => text.replace(`{${k}}`, part), words[key]);
  const show = (element, text) => {
    if (element.textContent !== text) element.textContent = text;
  };
  const number = (value, decimals) => value === null || value === undefined ? '–' : value.toFixed(decimals);
  const colour = name =>
    getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();
  const LEAST_SECONDS = 0.005;

  let data = null;
  let charts = [];
  let raws = [];
  let length = 0;
  let view = { from: 0, to: 1 };
  let seconds = 0;
  let playing = false;
  let lastMillis = 0;
  let asking = null;
  let timer = 0;
  let soundFrom = 0;
  const sound = byId('sound');

  const frameOf = at => Math.max(0, Math.min(data.frames - 1, Math.floor(at / data.frame_s + 1e-6)));
  const runs = () => data.beside ? [['one', data.one], ['beside', data.beside]] : [['one', data.one]];
  const windowOf = quantity => data.one.windows.find(each => each.quantity === quantity);

  function nowLine(u) {
    const x = u.valToPos(seconds, 'x', true);
    if (x < u.bbox.left || x > u.bbox.left + u.bbox.width) return;
    u.ctx.save();
    u.ctx.strokeStyle = colour('now');
    u.ctx.setLineDash([]);
    u.ctx.lineWidth = 2 * devicePixelRatio;
    u.ctx.beginPath();
    u.ctx.moveTo(x, u.bbox.top);
    u.ctx.lineTo(x, u.bbox.top + u.bbox.height);
    u.ctx.stroke();
    u.ctx.restore();
  }

  function band(quantity) {
    return u => {
      const window = windowOf(quantity);
      if (!window) return;
      const top = u.valToPos(window.high, 'y', true);
      const bottom = u.valToPos(window.low, 'y', true);
      u.ctx.save();
      u.ctx.beginPath();
      u.ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
      u.ctx.clip();
      u.ctx.fillStyle = colour('window');
      u.ctx.fillRect(u.bbox.left, top, u.bbox.width, bottom - top);
      u.ctx.strokeStyle = colour('limit');
      u.ctx.lineWidth = 1.5 * devicePixelRatio;
      u.ctx.setLineDash([6 * devicePixelRatio, 4 * devicePixelRatio]);
      u.ctx.beginPath();
      for (const y of [top, bottom]) {
        u.ctx.moveTo(u.bbox.left, y);
        u.ctx.lineTo(u.bbox.left + u.bbox.width, y);
      }
      u.ctx.stroke();
      u.ctx.restore();
    };
  }

  // Selecting with the mouse or a finger zooms, a double click shows the whole run, a click goes there.
  function plot(element, unit, range, series, values, hooks, decimals) {
    const axis = { stroke: colour('ink'), grid: { stroke: colour('panel') },
      ticks: { stroke: colour('edge') }, font: '14px sans-serif' };
    const size = () => ({ width: Math.max(200, element.clientWidth), height: 190 });
    const chart = new uPlot({
      ...size(),
      legend: { show: false },
      cursor: { y: false, points: { show: false }, drag: { x: true, y: false, setScale: false },
        bind: { dblclick: () => () => setView(0, length) } },
      scales: { x: { time: false, range: () => [view.from, view.to] }, y: { range } },
      axes: [{ ...axis, values: (u, splits) => splits.map(each => `${+each.toFixed(decimals)} s`) },
        { ...axis, size: 64, values: (u, splits) => splits.map(each => `${each} ${unit}`) }],
      series: [{}, ...series],
      hooks: { ...hooks, setSelect: [u => {
        if (u.select.width < 4) return;
        setView(u.posToVal(u.select.left, 'x'), u.posToVal(u.select.left + u.select.width, 'x'));
        u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
      }] },
    }, values, element);
    let pressed = 0;
    chart.over.addEventListener('mousedown', event => { pressed = event.offsetX; });
    chart.over.addEventListener('click', event => {
      if (Math.abs(event.offsetX - pressed) < 4) goTo(chart.posToVal(event.offsetX, 'x'));
    });
    new ResizeObserver(() => chart.setSize(size())).observe(element);
    return chart;
  }

  function overview(quantity, unit) {
    const t = Array.from({ length: data.frames }, (each, k) => (k + 0.5) * data.frame_s);
    const values = [t];
    const series = [];
    for (const [which, run] of runs()) {
      const column = run.alternating ? `highest_${quantity}` : quantity;
      const padded = list => t.map((each, k) => k < list.length ? list[k] : null);
      // Of the other run the average is enough: two restless lines hide each other.
      if (which === 'one' || run.alternating) {
        values.push(padded(run[column]));
        series.push({ width: 1, points: { show: false },
          stroke: colour(which === 'one' ? 'raw' : 'beside') });
      }
      values.push(padded(run[`average_${quantity}`]));
      series.push({ width: 3, points: { show: false },
        stroke: colour(which === 'one' ? 'average' : 'beside'), dash: which === 'one' ? [] : [10, 5] });
    }
    const range = (u, low, high) => {
      const window = windowOf(quantity);
      const least = window ? window.low - 0.5 * (window.high - window.low) : low ?? 0;
      const most = window ? window.high + 0.5 * (window.high - window.low) : high ?? 1;
      return [Math.max(0, Math.min(least, low ?? least)), Math.max(most, high ?? most, least + 1)];
    };
    return plot(byId(`chart-${quantity}`), unit, range, series, values,
      { drawClear: [band(quantity)], draw: [nowLine] }, 2);
  }

  function rawChart(quantity, unit) {
    const series = ['lowest', 'highest'].map(() =>
      ({ stroke: colour('average'), width: 1, points: { show: false } }));
    const range = (u, low, high) => [Math.min(0, low ?? 0), Math.max(1, high ?? 1)];
    const chart = plot(byId(`raw-${quantity}`), unit, range, series, [[], [], []],
      { draw: [nowLine] }, 4);
    chart.addBand({ series: [2, 1], fill: colour('average') });
    return chart;
  }

  function showRaw(zoom) {
    const t = zoom.lowest_volts.map((each, k) => zoom.from_s + (k + 0.5) * zoom.column_s);
    ['volts', 'amps'].forEach((quantity, k) =>
      raws[k].setData([t, zoom[`lowest_${quantity}`], zoom[`highest_${quantity}`]]));
    const shorts = zoom.short_circuits === null
      ? words['replay.page.zoom.not-measured'] : say('replay.page.zoom.shorts', zoom.short_circuits);
    const single = zoom.single_pairs
      ? ` ${say('replay.page.zoom.single', zoom.pairs_per_second)}` : '';
    byId('zoom-says').dataset.columns = zoom.lowest_volts.length;
    show(byId('zoom-says'),
      `${say('replay.page.zoom.is', zoom.from_s.toFixed(3), zoom.to_s.toFixed(3))} ${shorts}${single}`);
  }

  async function askRaw() {
    if (asking) asking.abort();
    asking = new AbortController();
    const columns = Math.max(200, byId('raw-volts').clientWidth);
    const query = `from=${view.from.toFixed(6)}&to=${view.to.toFixed(6)}&columns=${columns}`;
    try {
      const response = await fetch(`${address}/zoom?${query}`, { signal: asking.signal });
      if (!response.ok) throw new Error(`${response.status}`);
      showRaw(await response.json());
    } catch (failure) {
      if (failure.name !== 'AbortError') show(byId('zoom-says'), words['page.no-connection']);
    }
  }

  function setView(from, to) {
    const width = Math.max(LEAST_SECONDS, Math.min(length, to - from));
    const start = Math.max(0, Math.min(from, length - width));
    view = { from: start, to: start + width };
    for (const chart of [...charts, ...raws]) chart.setData(chart.data);
    if (hasRaw) {
      clearTimeout(timer);
      timer = setTimeout(askRaw, 120);
    }
  }

  // Around now, so that what is looked at stays in the picture.
  function zoomBy(factor) {
    const width = (view.to - view.from) * factor;
    const inside = seconds >= view.from && seconds <= view.to;
    const middle = inside ? seconds : (view.from + view.to) / 2;
    setView(middle - width / 2, middle + width / 2);
  }

  function spellAt(run, at) {
    let found = 0;
    run.spells.forEach((spell, k) => { if (spell.from_s <= at + data.frame_s / 2) found = k; });
    return found;
  }

  function draw() {
    const frame = frameOf(seconds);
    for (const [which, run] of runs()) {
      const element = byId(which);
      const over = frame >= run.signal.length;
      const signal = over ? 'idle' : run.signal[frame];
      element.dataset.signal = signal;
      show(element.querySelector('.word'), words[`signal.${signal}`]);
      const value = quantity => over ? null
        : run[run.alternating ? `highest_${quantity}` : quantity][frame];
      show(element.querySelector('.values'),
        `${number(value('amps'), 1)} A · ${number(value('volts'), 1)} V`);
      show(element.querySelector('.sentence'), run.spells[spellAt(run, seconds)].says);
    }
    byId('position').value = frame;
    byId('position').setAttribute('aria-valuetext', `${(frame * data.frame_s).toFixed(2)} s`);
    show(byId('seconds'), `${(frame * data.frame_s).toFixed(2)} s`);
    for (const chart of [...charts, ...raws]) chart.redraw(false, false);
  }

  function goTo(at) {
    seconds = Math.max(0, Math.min(length - data.frame_s, at));
    if (seconds < view.from || seconds > view.to) {
      const width = view.to - view.from;
      setView(seconds - width / 4, seconds + 3 * width / 4);
    }
    draw();
  }

  function step(frames) {
    hold();
    goTo((frameOf(seconds) + frames) * data.frame_s);
  }

  function happening(direction) {
    hold();
    const starts = runs().flatMap(([, run]) => run.spells.map(spell => spell.from_s))
      .filter(at => at < length).sort((a, b) => a - b);
    const here = frameOf(seconds) * data.frame_s;
    const there = direction > 0
      ? starts.find(at => at > here + data.frame_s / 2)
      : starts.filter(at => at < here - data.frame_s / 2).pop();
    goTo(there ?? (direction > 0 ? length : 0));
  }

  const soundPlays = () => sound && !sound.paused && !sound.ended;

  function tick(millis) {
    if (!playing) return;
    seconds = soundPlays() ? soundFrom + sound.currentTime
      : seconds + (millis - lastMillis) / 1000 * Number(byId('speed').value);
    lastMillis = millis;
    if (seconds >= length - data.frame_s) hold();
    goTo(seconds);
    requestAnimationFrame(tick);
  }

  function play() {
    if (playing) return;
    if (seconds >= length - 2 * data.frame_s) seconds = 0;
    playing = true;
    show(byId('play'), words['replay.page.hold']);
    requestAnimationFrame(millis => {
      lastMillis = millis;
      tick(millis);
    });
  }

  function hold() {
    playing = false;
    show(byId('play'), words['replay.page.play']);
    if (soundPlays()) sound.pause();
  }

  async function listen() {
    const from = view.from;
    show(byId('zoom-says'), words['replay.page.sound.wait']);
    try {
      const response = await fetch(
        `${address}/sound?from=${from.toFixed(6)}&to=${view.to.toFixed(6)}`);
      if (!response.ok) throw new Error(`${response.status}`);
      if (sound.src) URL.revokeObjectURL(sound.src);
      sound.src = URL.createObjectURL(await response.blob());
      soundFrom = from;
      byId('sound-place').hidden = false;
      show(byId('zoom-says'), '');
      await sound.play();
    } catch (failure) {
      // A browser that does not let a page begin a sound shows the controls all the same.
      if (failure.name !== 'NotAllowedError') show(byId('zoom-says'), words['page.no-connection']);
    }
  }

  const keys = {
    ' ': () => playing ? hold() : play(),
    ArrowLeft: () => step(-1),
    ArrowRight: () => step(1),
    n: () => happening(1),
    p: () => happening(-1),
    '+': () => zoomBy(0.5),
    '-': () => zoomBy(2),
    0: () => setView(0, length),
  };

  function listenToThePerson() {
    const click = (id, action) => byId(id) && byId(id).addEventListener('click', action);
    click('play', () => playing ? hold() : play());
    click('back', () => step(-1));
    click('on', () => step(1));
    click('before', () => happening(-1));
    click('next', () => happening(1));
    click('zoom-in', () => zoomBy(0.5));
    click('zoom-out', () => zoomBy(2));
    click('whole', () => setView(0, length));
    click('listen', listen);
    byId('position').addEventListener('input', event => {
      hold();
      goTo(Number(event.target.value) * data.frame_s);
    });
    for (const link of document.querySelectorAll('.moment-link')) {
      link.addEventListener('click', () => {
        hold();
        goTo(Number(link.dataset.at));
        place.focus();
      });
    }
    place.addEventListener('keydown', event => {
      if (event.target !== place || event.ctrlKey || event.altKey || event.metaKey) return;
      if (keys[event.key]) {
        event.preventDefault();
        keys[event.key]();
      }
    });
    if (sound) {
      const speed = () => {
        sound.playbackRate = Math.max(0.1, Number(byId('speed').value));
        sound.preservesPitch = false;
      };
      byId('speed').addEventListener('change', speed);
      sound.addEventListener('play', () => { speed(); play(); });
      sound.addEventListener('pause', () => { if (playing) hold(); });
    }
  }

  async function start() {
    const response = await fetch(`${address}/data${beside}`);
    if (!response.ok) throw new Error(`${response.status}`);
    data = await response.json();
    length = data.frames * data.frame_s;
    view = { from: 0, to: length };
    charts = [overview('amps', 'A'), overview('volts', 'V')];
    if (hasRaw) raws = [rawChart('volts', 'V'), rawChart('amps', 'A')];
    listenToThePerson();
    setView(0, length);
    draw();
    place.dataset.ready = 'true';
  }

  start().catch(() => show(document.querySelector('#one .word'), words['page.no-connection']));
})();
