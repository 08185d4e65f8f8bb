'use strict';

/* The review: how it went. The chart shows a span of the record; journeys, what happened and what can be taken away follow it. */
(() => {
  const shown = new Set(JSON.parse(localStorage.getItem('lines') || '["tank_top","tank_bottom","flow","return","surroundings"]'));
  const byId = (id) => document.getElementById(id);
  const passed = [];
  const ticked = new Map();
  let span = { from: 0, to: 0 };
  let newest = 0;
  let asked = 0;
  let later = 0;
  let journeys = [];
  const chart = new RecordChart(byId('chart'), (from, to, isMoving) => set(from, to, isMoving), pick);

  const local = (seconds) => {
    const at = new Date(seconds * 1000);
    return new Date(at - at.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
  };
  const iso = (seconds) => new Date(seconds * 1000).toISOString();
  const range = () => `from=${encodeURIComponent(iso(span.from))}&to=${encodeURIComponent(iso(span.to))}`;

  function boxes() {
    for (const [name, label] of record.columns) {
      const box = document.createElement('input');
      box.type = 'checkbox';
      box.checked = shown.has(name);
      box.onchange = () => {
        if (box.checked) shown.add(name); else shown.delete(name);
        localStorage.setItem('lines', JSON.stringify([...shown]));
        draw();
      };
      const words = document.createElement('label');
      words.append(box, label);
      byId('lines').append(words);
    }
  }

  /* While it moves under a finger only the axis follows; points come when it rests. */
  function set(from, to, isMoving) {
    if (!isMoving && span.to) passed.push(span);
    span = { from: Math.floor(from), to: Math.max(Math.floor(from) + 60, Math.ceil(to)) };
    byId('from').value = local(span.from);
    byId('to').value = local(span.to);
    byId('back').disabled = passed.length === 0;
    const days = (span.to - span.from) / record.day;
    house.text('span', `${record.when(span.from)} to ${record.when(span.to)}`);
    document.querySelectorAll('[data-days]').forEach((b) => b.setAttribute('aria-pressed', Math.abs(days / Number(b.dataset.days) - 1) < 0.01));
    history.replaceState(null, '', `?${range()}`);
    chart.span = span;
    chart.plot?.setScale('x', { min: span.from, max: span.to });
    clearTimeout(later);
    later = setTimeout(draw, isMoving ? 180 : 0);
  }

  async function draw() {
    const turn = ++asked;
    const wanted = record.columns.filter(([name]) => shown.has(name));
    const points = Math.max(100, Math.min(1500, byId('chart').clientWidth));
    try {
      const [lines, events, found] = await Promise.all([
        wanted.length ? house.ask(`/api/v1/chart?${range()}&points=${points}&columns=${wanted.map(([n]) => n).join(',')}`) : { lines: [] },
        house.ask(`/api/v1/events?${range()}`),
        house.ask(`/api/v1/journeys?${range()}`),
      ]);
      if (turn !== asked) return;
      journeys = found.journeys;
      Object.assign(chart, { journeys, events: events.events });
      chart.paint(lines.lines.filter((line) => line.t.length), span);
      list();
      happened(events.events);
      files();
      house.text('said', lines.lines.some((l) => l.t.length) ? '' : 'Nothing on record in this time.');
    } catch (error) {
      if (turn === asked) house.text('said', error.message);
    }
  }

  function list() {
    const item = (one) => {
      const button = record.element('button');
      button.type = 'button';
      button.setAttribute('aria-pressed', chart.picked === record.key(one));
      button.dataset.key = record.key(one);
      const words = record.element('span', `${record.types[one.type][1]}, ${record.start(one)}`);
      words.append(record.element('small', record.gist(one) + (one.open ? ', going on' : '') + (one.dating === 'undated' ? ', clock not sure' : '')));
      button.append(record.element('span', record.types[one.type][0], `sign ${one.type}`), words);
      button.onclick = () => { pick(one); show(one); };
      const row = record.element('li');
      row.append(button);
      if (one.type === 'heating' || one.type === 'standing') row.append(tick(one));
      return row;
    };
    byId('journeys').replaceChildren(...[...journeys].reverse().slice(0, 400).map(item));
    if (journeys.length === 0) byId('journeys').append(record.element('li', 'None in this time.', 'fine'));
  }

  function tick(one) {
    const box = document.createElement('input');
    box.type = 'checkbox';
    box.checked = ticked.has(record.key(one));
    box.setAttribute('aria-label', `compare ${record.title(one)}`);
    box.onchange = () => {
      if (box.checked) ticked.set(record.key(one), one); else ticked.delete(record.key(one));
      if (ticked.size > 2) { ticked.delete([...ticked.keys()][0]); list(); }
      const [a, b] = [...ticked.keys()];
      byId('compare').hidden = ticked.size !== 2;
      byId('compare').href = `/compare?a=${a}&b=${b}`;
    };
    const label = document.createElement('label');
    label.append(box, 'compare');
    return label;
  }

  function pick(one) {
    chart.picked = record.key(one);
    chart.redraw();
    document.querySelectorAll('.journeys button').forEach((b) => b.setAttribute('aria-pressed', b.dataset.key === chart.picked));
    byId('figures-hint').hidden = true;
    house.text('figures-title', record.title(one));
    byId('figures').replaceChildren(...record.figures(one).flatMap(([name, value]) => [record.element('dt', name), record.element('dd', value)]));
  }

  function show(one) {
    if (!one.fromTime) return;
    const [from, to] = [record.seconds(one.fromTime), record.seconds(one.toTime)];
    const edge = Math.max(300, (to - from) * 0.15);
    set(from - edge, to + edge);
  }

  function happened(events) {
    byId('events').replaceChildren(...events.slice(-300).reverse().map((one) => {
      const row = record.element('li');
      const when = one.time ? record.when(record.seconds(one.time)) : `run ${one.run}, ${record.span(one.elapsedS)} after its start, no date`;
      row.append(record.element('small', `${when} `), record.element('b', `${one.kind === 'alarm' ? '▼' : '□'} ${one.name} ${one.state}`));
      if (one.text) row.append(` ${one.text}`);
      return row;
    }));
    if (events.length === 0) byId('events').append(record.element('li', 'None in this time.', 'fine'));
  }

  function files() {
    document.querySelectorAll('[data-file]').forEach((link) => {
      const name = link.dataset.file;
      link.href = `/api/v1/${name}${name.includes('?') ? '&' : '?'}${range()}`;
    });
    byId('files').replaceChildren(...['readings', 'journeys', 'events'].map((what) => {
      const row = record.element('li', `${what[0].toUpperCase()}${what.slice(1)}: `);
      for (const form of ['csv', 'json']) {
        const link = record.element('a', form.toUpperCase());
        link.href = `/api/v1/download/${what}.${form}?${range()}`;
        row.append(link, ' ');
      }
      return row;
    }));
  }

  async function write(form, body) {
    try {
      await house.ask('/api/v1/actions', body);
      house.text('written', 'Taken with the next scan; it stands above within a minute.');
      form.reset();
      setTimeout(draw, 15000);
    } catch (error) {
      house.text('written', error.message);
    }
  }

  function wire() {
    document.querySelectorAll('[data-days]').forEach((button) => {
      button.onclick = () => set(span.to - Number(button.dataset.days) * record.day, span.to);
    });
    byId('earlier').onclick = () => chart.pan(-0.5);
    byId('later').onclick = () => chart.pan(0.5);
    byId('closer').onclick = () => chart.zoom(0.5);
    byId('wider').onclick = () => chart.zoom(2);
    byId('newest').onclick = () => set(newest - (span.to - span.from), newest);
    byId('back').onclick = () => {
      const last = passed.pop();
      span = { from: 0, to: 0 };
      set(last.from, last.to);
    };
    byId('dates').addEventListener('submit', (event) => {
      event.preventDefault();
      const read = (id) => Date.parse(byId(id).value) / 1000;
      if (read('from') < read('to')) set(read('from'), read('to'));
      else house.text('said', 'The beginning must come before the end.');
    });
    byId('note').addEventListener('submit', (event) => {
      event.preventDefault();
      write(event.target, { action: 'note', text: byId('words').value.replace(/\s+/g, ' ').trim() });
    });
    byId('change').addEventListener('submit', (event) => {
      event.preventDefault();
      write(event.target, { action: 'changed', target: byId('what').value, text: byId('how').value.trim() });
    });
    addEventListener('resize', () => chart.resize());
    record.onLook(draw);
  }

  async function begin() {
    boxes();
    wire();
    try {
      const [{ runs }, session] = await Promise.all([house.ask('/api/v1/runs'), house.ask('/api/v1/session')]);
      byId('write').hidden = !session.paired;
      byId('unpaired').hidden = session.paired;
      const undated = runs.filter((run) => run.dating === 'undated');
      byId('undated').hidden = undated.length === 0;
      house.text('undated', `${undated.length === 1 ? 'Run' : 'Runs'} ${undated.map((run) => run.run).join(', ')}: the clock was never known to be right, so the dates are only what it claimed. They are hatched on the chart.`);
      chart.runs = runs;
      const dated = runs.filter((run) => run.to && run.dating !== 'undated');
      const last = (dated.length ? dated : runs.filter((run) => run.to)).map((run) => record.seconds(run.to));
      newest = last.length ? Math.max(...last) : Date.now() / 1000;
      const asked = ['from', 'to'].map((name) => Date.parse(new URLSearchParams(location.search).get(name)) / 1000);
      if (asked[0] < asked[1]) set(...asked);
      else set(newest - record.day, newest);
    } catch (error) {
      house.text('said', error.message);
    }
  }
  begin();
})();
