'use strict';

/* The chart of the review: lines of the record with journeys behind them and what happened above them. Drag, wheel, pinch and keys change
   what it shows; it tells whoever made it, who brings new points. */
class RecordChart {
  constructor(box, onSpan, onPick) {
    this.box = box;
    this.onSpan = onSpan;
    this.onPick = onPick;
    this.journeys = [];
    this.events = [];
    this.runs = [];
    this.picked = null;
    this.touches = new Map();
    this.listen();
  }

  get height() {
    return Math.max(240, Math.min(560, innerHeight * 0.5));
  }

  paint(lines, span) {
    this.span = span;
    const times = [...new Set(lines.flatMap((line) => line.t))].sort((a, b) => a - b);
    const at = new Map(times.map((t, i) => [t, i]));
    const rows = lines.map((line) => {
      const row = new Array(times.length).fill(null);
      line.t.forEach((t, i) => { row[at.get(t)] = line.mean[i]; });
      return row;
    });
    const ink = record.colour('ink');
    const grid = { stroke: `${record.colour('line')}50`, width: 1 };
    const font = '18px system-ui, "DejaVu Sans", sans-serif';
    this.plot?.destroy();
    this.box.replaceChildren();
    this.plot = new uPlot({
      width: this.box.clientWidth,
      height: this.height,
      cursor: { drag: { x: true, y: false, setScale: false }, points: { size: 8 } },
      scales: { x: { min: span.from, max: span.to } },
      axes: [
        { stroke: ink, grid, font, size: 62, space: 84, values: (u, ticks, axis, space, step) => ticks.map((t) => RecordChart.tick(t, step)) },
        { stroke: ink, grid, font, size: 62, values: (_, ticks) => ticks.map((v) => `${v}°`) },
      ],
      series: [
        { value: (_, t) => (t === null ? '–' : record.when(t)), label: 'Time' },
        ...lines.map((line) => {
          const [, label, dash] = record.columns.find(([name]) => name === line.column);
          const value = (_, v) => (v === null || v === undefined ? '–' : `${v.toFixed(1)} °C`);
          return { label, stroke: record.colour(line.column), dash, width: 2.5, spanGaps: false, points: { show: false }, value };
        }),
      ],
      hooks: { drawClear: [(u) => this.bands(u)], draw: [(u) => this.marks(u)], setSelect: [(u) => this.selected(u)] },
    }, times.length ? [times, ...rows] : [[span.from, span.to], ...lines.map(() => [null, null])], this.box);
  }

  redraw() {
    this.plot?.redraw(false, true);
  }

  resize() {
    this.plot?.setSize({ width: this.box.clientWidth, height: this.height });
  }

  /* A day where ticks are a day or more apart, else the time; at midnight both. */
  static tick(t, step) {
    const at = new Date(t * 1000);
    const date = at.toLocaleDateString([], { day: 'numeric', month: 'short' });
    if (step >= 86400) return date;
    const time = at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
    return time === '00:00' ? `${time}\n${date}` : time;
  }

  /* Journeys as shaded stretches with their letter at the foot; runs whose clock was never right are hatched. */
  bands(u) {
    const { ctx, bbox } = u;
    const foot = 26 * devicePixelRatio;
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.clip();
    ctx.font = `600 ${18 * devicePixelRatio}px system-ui, "DejaVu Sans", sans-serif`;
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    for (const one of this.journeys) {
      if (!one.fromTime) continue;
      const left = u.valToPos(record.seconds(one.fromTime), 'x', true);
      const width = Math.max(2, u.valToPos(record.seconds(one.toTime), 'x', true) - left);
      ctx.fillStyle = record.colour(one.type);
      ctx.globalAlpha = one.type === 'stop' ? 0.3 : this.picked === record.key(one) ? 0.9 : 0.45;
      ctx.fillRect(left, bbox.top, width, bbox.height);
      ctx.globalAlpha = 1;
      ctx.fillRect(left, bbox.top + bbox.height - foot, width, foot);
      if (width > 24 * devicePixelRatio) {
        ctx.fillStyle = record.colour('ink');
        ctx.fillText(record.types[one.type][0], left + width / 2, bbox.top + bbox.height - foot / 2);
      }
    }
    for (const run of this.runs.filter((one) => one.dating === 'undated' && one.from)) this.hatch(u, run);
    ctx.restore();
  }

  hatch(u, run) {
    const { ctx, bbox } = u;
    const left = Math.max(bbox.left, u.valToPos(record.seconds(run.from), 'x', true));
    const right = Math.min(bbox.left + bbox.width, u.valToPos(record.seconds(run.to), 'x', true));
    ctx.strokeStyle = record.colour('alarm');
    ctx.lineWidth = devicePixelRatio;
    ctx.beginPath();
    for (let x = left; x < right; x += 14 * devicePixelRatio) {
      ctx.moveTo(x, bbox.top + 12 * devicePixelRatio);
      ctx.lineTo(Math.min(right, x + 12 * devicePixelRatio), bbox.top);
    }
    ctx.stroke();
  }

  /* Alarms as filled triangles at the top, actions and marks as open squares: shapes, not colours, tell them apart. */
  marks(u) {
    const { ctx, bbox } = u;
    const px = devicePixelRatio;
    ctx.save();
    ctx.lineWidth = 1.5 * px;
    const faint = this.events.length > 12 ? 0.35 : 0.8;
    for (const one of this.events) {
      if (!one.time || (one.kind === 'alarm' && one.state !== 'raised')) continue;
      const x = u.valToPos(record.seconds(one.time), 'x', true);
      if (x < bbox.left || x > bbox.left + bbox.width) continue;
      ctx.strokeStyle = ctx.fillStyle = record.colour(one.kind === 'alarm' ? 'alarm' : 'done');
      ctx.globalAlpha = faint;
      ctx.beginPath();
      ctx.setLineDash([4 * px, 6 * px]);
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      ctx.setLineDash([]);
      ctx.globalAlpha = 1;
      ctx.beginPath();
      if (one.kind === 'alarm') {
        ctx.moveTo(x - 8 * px, bbox.top);
        ctx.lineTo(x + 8 * px, bbox.top);
        ctx.lineTo(x, bbox.top + 14 * px);
        ctx.fill();
      } else {
        ctx.strokeRect(x - 6 * px, bbox.top + px, 12 * px, 12 * px);
      }
    }
    ctx.restore();
  }

  selected(u) {
    if (u.select.width > 8) {
      const [left, right] = [u.posToVal(u.select.left, 'x'), u.posToVal(u.select.left + u.select.width, 'x')];
      u.setSelect({ left: 0, width: 0, top: 0, height: 0 }, false);
      this.onSpan(left, right);
    } else if (u.select.width === 0 && u.cursor.left >= 0) {
      this.pick(u.posToVal(u.cursor.left, 'x'));
    }
  }

  pick(t) {
    const under = this.journeys.filter((one) => one.fromTime && record.seconds(one.fromTime) <= t && record.seconds(one.toTime) >= t);
    if (under.length) this.onPick(under.reduce((a, b) => (b.to - b.from < a.to - a.from ? b : a)));
  }

  zoom(factor, share = 0.5) {
    const { from, to } = this.span;
    const width = Math.max(60, Math.min(400 * record.day, (to - from) * factor));
    const fixed = from + (to - from) * share;
    this.onSpan(fixed - width * share, fixed + width * (1 - share), true);
  }

  pan(share) {
    const by = (this.span.to - this.span.from) * share;
    this.onSpan(this.span.from + by, this.span.to + by, true);
  }

  share(clientX) {
    const over = this.plot.over.getBoundingClientRect();
    return Math.min(1, Math.max(0, (clientX - over.left) / over.width));
  }

  listen() {
    this.box.addEventListener('wheel', (event) => {
      if (!this.plot) return;
      event.preventDefault();
      if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) this.pan(Math.sign(event.deltaX || event.deltaY) * 0.15);
      else this.zoom(event.deltaY > 0 ? 1.3 : 1 / 1.3, this.share(event.clientX));
    }, { passive: false });
    this.box.addEventListener('keydown', (event) => {
      const act = { ArrowLeft: () => this.pan(-0.25), ArrowRight: () => this.pan(0.25), '+': () => this.zoom(0.5), '=': () => this.zoom(0.5), '-': () => this.zoom(2) }[event.key];
      if (act && this.plot) { event.preventDefault(); act(); }
    });
    const touch = (handler) => (event) => { if (event.pointerType === 'touch' && this.plot) handler(event); };
    this.box.addEventListener('pointerdown', touch((event) => this.touches.set(event.pointerId, event.clientX)));
    this.box.addEventListener('pointermove', touch((event) => this.moved(event)));
    for (const end of ['pointerup', 'pointercancel', 'pointerleave']) {
      this.box.addEventListener(end, touch((event) => this.touches.delete(event.pointerId)));
    }
  }

  /* One finger moves the time, two change how much of it is shown. */
  moved(event) {
    const before = this.touches.get(event.pointerId);
    if (before === undefined) return;
    const wide = this.plot.over.getBoundingClientRect().width;
    const others = [...this.touches].filter(([id]) => id !== event.pointerId).map(([, x]) => x);
    if (others.length === 0) {
      if (Math.abs(event.clientX - before) < 6) return;
      this.pan((before - event.clientX) / wide);
    } else {
      const [was, is] = [Math.abs(before - others[0]), Math.abs(event.clientX - others[0])];
      if (was < 20 || is < 20) return;
      this.zoom(was / is, this.share((event.clientX + others[0]) / 2));
    }
    this.touches.set(event.pointerId, event.clientX);
  }
}
