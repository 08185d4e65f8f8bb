'use strict';

/* The review: lines of the record over time, with what happened marked on them. Each line has a dash of its own beside its colour, so
   that colour is never alone. */
(() => {
  const columns = [
    ['tank_top', 'tank top', '#b3360b', []], ['tank_middle', 'tank middle', '#c7691a', [2, 4]], ['tank_bottom', 'tank bottom', '#8a6d00', [10, 4]],
    ['flow', 'coolant in', '#7a1fa2', []], ['return', 'coolant back', '#a35bc2', [8, 4]], ['engine_coolant', 'engine coolant', '#c2185b', [2, 2]],
    ['surroundings', 'surroundings', '#2f6f4f', [4, 4]], ['tray', 'tray', '#1f6fb2', [8, 3, 2, 3]], ['outlet', 'outlet', '#00796b', [12, 4]],
    ['cold_supply', 'cold supply', '#455a64', [3, 6]],
  ];
  const shown = new Set(JSON.parse(localStorage.getItem('lines') || '["tank_top","tank_bottom","flow","return","surroundings"]'));
  const day = 86400;
  let span = { from: 0, to: 0 };
  let plot = null;
  let happened = [];
  let asked = 0;

  const local = (seconds) => {
    const at = new Date(seconds * 1000);
    return new Date(at - at.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
  };

  function boxes() {
    const place = document.getElementById('lines');
    for (const [name, label, colour] of columns) {
      const box = document.createElement('input');
      box.type = 'checkbox';
      box.checked = shown.has(name);
      box.onchange = () => {
        if (box.checked) shown.add(name); else shown.delete(name);
        localStorage.setItem('lines', JSON.stringify([...shown]));
        draw();
      };
      const swatch = document.createElement('span');
      swatch.className = 'swatch';
      swatch.style.background = colour;
      const words = document.createElement('label');
      words.append(box, swatch, label);
      place.append(words);
    }
  }

  function set(from, to) {
    span = { from: Math.floor(from), to: Math.ceil(to) };
    document.getElementById('from').value = local(span.from);
    document.getElementById('to').value = local(span.to);
    draw();
  }

  async function draw() {
    const turn = ++asked;
    const wanted = columns.filter(([name]) => shown.has(name));
    const box = document.getElementById('chart');
    const points = Math.max(100, Math.min(2000, box.clientWidth));
    const time = (seconds) => encodeURIComponent(new Date(seconds * 1000).toISOString());
    const range = `from=${time(span.from)}&to=${time(span.to)}`;
    try {
      const [chart, events] = await Promise.all([
        wanted.length ? house.ask(`/api/v1/chart?${range}&points=${points}&columns=${wanted.map(([n]) => n).join(',')}`) : { lines: [] },
        house.ask(`/api/v1/events?${range}`),
      ]);
      if (turn !== asked) return;
      happened = events.events;
      table();
      paint(chart.lines, wanted);
      house.text('said', chart.lines.some((l) => l.t.length) ? '' : 'Nothing on record in this time.');
    } catch (error) {
      house.text('said', error.message);
    }
  }

  function paint(lines, wanted) {
    const times = [...new Set(lines.flatMap((line) => line.t))].sort((a, b) => a - b);
    const at = new Map(times.map((t, i) => [t, i]));
    const rows = lines.map((line) => {
      const row = new Array(times.length).fill(null);
      line.t.forEach((t, i) => { row[at.get(t)] = line.mean[i]; });
      return row;
    });
    const style = getComputedStyle(document.documentElement);
    const ink = style.getPropertyValue('--ink');
    const grid = { stroke: style.getPropertyValue('--line') + '40' };
    const box = document.getElementById('chart');
    if (plot) plot.destroy();
    plot = new uPlot({
      width: box.clientWidth - 20,
      height: Math.max(320, Math.min(560, innerHeight * 0.5)),
      cursor: { drag: { x: true, y: false } },
      scales: { x: { min: span.from, max: span.to } },
      axes: [{ stroke: ink, grid }, { stroke: ink, grid, label: '°C', values: (_, ticks) => ticks.map((v) => `${v}`) }],
      series: [{}, ...lines.map((line) => {
        const [, label, colour, dash] = wanted.find(([name]) => name === line.column);
        return { label, stroke: colour, dash, width: 2, spanGaps: false, value: (_, v) => v === null ? '–' : `${v.toFixed(1)} °C` };
      })],
      hooks: {
        draw: [marks],
        setSelect: [(u) => {
          if (u.select.width > 5) set(u.posToVal(u.select.left, 'x'), u.posToVal(u.select.left + u.select.width, 'x'));
        }],
      },
    }, [times, ...rows], box);
  }

  /* Alarms as filled triangles at the top, actions and marks as open squares: shapes, not colours, tell them apart. */
  function marks(u) {
    const { ctx, bbox } = u;
    ctx.save();
    ctx.strokeStyle = ctx.fillStyle = getComputedStyle(document.documentElement).getPropertyValue('--critical');
    for (const one of happened) {
      if (!one.time || (one.kind === 'alarm' && one.state !== 'raised')) continue;
      const x = u.valToPos(Date.parse(one.time) / 1000, 'x', true);
      if (x < bbox.left || x > bbox.left + bbox.width) continue;
      ctx.beginPath();
      ctx.setLineDash([4, 6]);
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      ctx.setLineDash([]);
      ctx.beginPath();
      if (one.kind === 'alarm') {
        ctx.moveTo(x - 8, bbox.top);
        ctx.lineTo(x + 8, bbox.top);
        ctx.lineTo(x, bbox.top + 14);
        ctx.fill();
      } else {
        ctx.strokeRect(x - 6, bbox.top, 12, 12);
      }
    }
    ctx.restore();
  }

  function table() {
    document.getElementById('events').replaceChildren(...happened.slice(-300).reverse().map((one) => {
      const row = document.createElement('tr');
      const when = one.time ? new Date(one.time).toLocaleString() : `run ${one.run}, ${house.span(one.elapsedS)} after its start, undated`;
      for (const words of [when, `${one.name} ${one.state}`, one.text]) {
        const cell = document.createElement('td');
        cell.textContent = words;
        row.append(cell);
      }
      return row;
    }));
  }

  const step = (share) => {
    const width = span.to - span.from;
    set(span.from + share * width, span.to + share * width);
  };

  document.getElementById('span').addEventListener('submit', (event) => {
    event.preventDefault();
    const read = (id) => Date.parse(document.getElementById(id).value) / 1000;
    if (read('from') < read('to')) set(read('from'), read('to'));
    else house.text('said', 'The beginning must come before the end.');
  });
  document.querySelectorAll('[data-days]').forEach((button) => {
    button.onclick = () => set(span.to - Number(button.dataset.days) * day, span.to);
  });
  document.getElementById('earlier').onclick = () => step(-0.5);
  document.getElementById('later').onclick = () => step(0.5);

  async function begin() {
    boxes();
    try {
      const { runs } = await house.ask('/api/v1/runs');
      const dated = runs.filter((run) => run.to);
      const last = dated.length ? Math.max(...dated.map((run) => Date.parse(run.to) / 1000)) : Date.now() / 1000;
      set(last - day, last);
    } catch (error) {
      house.text('said', error.message);
    }
  }
  begin();
})();
