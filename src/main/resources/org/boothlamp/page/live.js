'use strict';
// The booth's own screen: lamp, averages, windows and the strip chart of the last run.
(() => {
  const SECONDS = 30;
  const FEWEST_POINTS = 6;
  const now = document.getElementById('now');
  const words = Boothlamp.words(now);
  const byId = id => document.getElementById(id);
  const colour = name =>
    getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();
  let booth = null;
  let pending = null;
  let shown = { run: -1, t: [], amps: [[], []], volts: [[], []] };

  function strip(quantity, unit) {
    const element = byId(`chart-${quantity}`);
    const ends = u => {
      const window = Boothlamp.window(booth, quantity);
      return window && [u.valToPos(window.high, 'y', true), u.valToPos(window.low, 'y', true)];
    };
    const band = u => {
      const at = ends(u);
      if (!at) return;
      u.ctx.fillStyle = colour('window');
      u.ctx.fillRect(u.bbox.left, at[0], u.bbox.width, at[1] - at[0]);
    };
    const limits = u => {
      u.ctx.save();
      u.ctx.strokeStyle = colour('limit');
      u.ctx.lineWidth = 2 * devicePixelRatio;
      u.ctx.setLineDash([6 * devicePixelRatio, 4 * devicePixelRatio]);
      u.ctx.beginPath();
      for (const y of ends(u) || []) {
        u.ctx.moveTo(u.bbox.left, y);
        u.ctx.lineTo(u.bbox.left + u.bbox.width, y);
      }
      u.ctx.stroke();
      u.ctx.restore();
    };
    const range = (u, low, high) => {
      const window = Boothlamp.window(booth, quantity);
      const least = window ? window.low - 0.5 * (window.high - window.low) : 0;
      const most = window ? window.high + 0.5 * (window.high - window.low) : 1;
      return [Math.max(0, Math.min(least, low ?? least)), Math.max(most, high ?? most)];
    };
    const axis = { stroke: colour('ink'), grid: { stroke: colour('panel') },
      ticks: { stroke: colour('edge') }, font: '14px sans-serif' };
    const size = () => ({ width: Math.max(200, element.clientWidth), height: 190 });
    const plot = new uPlot({
      ...size(),
      legend: { show: false },
      cursor: { show: false },
      scales: { x: { time: false, range: () => {
        const last = shown.t.length ? shown.t[shown.t.length - 1] : 0;
        return [Math.max(0, last - SECONDS), Math.max(SECONDS, last)];
      } }, y: { range } },
      axes: [{ ...axis, values: (u, splits) => splits.map(each => `${each} s`) },
        { ...axis, size: 64, values: (u, splits) => splits.map(each => `${each} ${unit}`) }],
      series: [{},
        { stroke: colour('raw'), width: 1, points: { show: false } },
        { stroke: colour('average'), width: 3,
          points: { show: false } }],
      hooks: { drawClear: [band], drawAxes: [limits] },
    }, [[], [], []], element);
    new ResizeObserver(() => plot.setSize(size())).observe(element);
    return plot;
  }

  const charts = { amps: strip('amps', 'A'), volts: strip('volts', 'V') };

  function draw() {
    charts.amps.setData([shown.t, ...shown.amps]);
    charts.volts.setData([shown.t, ...shown.volts]);
  }

  // A touch is over before it has six points: it must not wipe the run that is still looked at.
  function seriesOf(run) {
    if (run === shown.run) return shown;
    if (!pending || pending.run !== run) pending = { run, t: [], amps: [[], []], volts: [[], []] };
    return pending;
  }

  function addPoints(points) {
    points.run.forEach((run, k) => {
      const series = seriesOf(run);
      const last = series.t[series.t.length - 1];
      if (last !== undefined && points.t_s[k] <= last) return;
      series.t.push(points.t_s[k]);
      series.amps[0].push(points.amps_a[k]);
      series.amps[1].push(points.average_amps_a[k]);
      series.volts[0].push(points.volts_v[k]);
      series.volts[1].push(points.average_volts_v[k]);
      if (series === pending && series.t.length >= FEWEST_POINTS) {
        shown = pending;
        pending = null;
      }
    });
    const extra = shown.t.length - 20 * (SECONDS + 5);
    if (extra > 0) {
      for (const list of [shown.t, ...shown.amps, ...shown.volts]) list.splice(0, extra);
    }
    if (points.run.length) draw();
  }

  function gauge(quantity, value, decimals) {
    Boothlamp.show(byId(quantity), Boothlamp.fixed(value, decimals));
    const element = byId(`gauge-${quantity}`);
    const window = Boothlamp.window(booth, quantity);
    element.classList.toggle('limited', Boolean(window));
    if (!window) return;
    const width = window.high - window.low;
    const at = (value - window.low + 0.5 * width) / (2 * width);
    const pointer = element.querySelector('.pointer');
    pointer.classList.toggle('off', value === null);
    pointer.style.left = `${100 * Math.min(1, Math.max(0, at))}%`;
  }

  function showBooth(next) {
    booth = next;
    Boothlamp.show(byId('who'), Boothlamp.who(words, booth));
    for (const quantity of ['amps', 'volts']) {
      const window = Boothlamp.window(booth, quantity);
      Boothlamp.show(byId(`${quantity}-window`),
        window ? `${window.low}–${window.high} ${window.unit}` : '');
    }
    draw();
  }

  function showLive(live) {
    now.dataset.signal = live.stale ? 'none' : live.signal;
    Boothlamp.show(byId('word'), Boothlamp.word(words, live));
    Boothlamp.show(byId('why'), Boothlamp.sides(words, booth, live));
    Boothlamp.show(byId('arc'), live.arc_s > 0
      ? `${Boothlamp.fixed(live.arc_s, 1)} ${words['same.page.seconds']}` : '');
    gauge('amps', live.amps_a, 1);
    gauge('volts', live.volts_v, 1);
    addPoints(live.points);
  }

  function lost() {
    now.dataset.signal = 'none';
    Boothlamp.show(byId('word'), words['page.no-connection']);
    for (const id of ['why', 'arc']) Boothlamp.show(byId(id), '');
    gauge('amps', null, 1);
    gauge('volts', null, 1);
  }

  Boothlamp.follow('/live/stream', () => ({ credentials: 'same-origin' }), {
    event: (name, data) => name === 'booth' ? showBooth(data) : showLive(data),
    lost: status => status === 401 ? location.reload() : lost(),
  });
})();
