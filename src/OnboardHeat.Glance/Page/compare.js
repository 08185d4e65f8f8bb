'use strict';

/* The comparison: is the insulation better, and two journeys laid over each other from their own start. */
(() => {
  const byId = (id) => document.getElementById(id);
  const query = new URLSearchParams(location.search);
  let journeys = [];
  let laid = null;
  let plot = null;

  const cells = (...words) => {
    const row = record.element('tr');
    row.append(...words.map((one) => record.element('td', one)));
    return row;
  };

  async function insulation(at) {
    const reply = await house.ask(`/api/v1/insulation${at ? `?at=${encodeURIComponent(at)}` : ''}`);
    byId('mark').replaceChildren(...reply.marks.map((one) => {
      const option = record.element('option', `${one.state}, ${record.when(record.seconds(one.time), { day: 'numeric', month: 'short', year: 'numeric' })}${one.text ? `: ${one.text.slice(0, 60)}` : ''}`);
      option.value = one.time;
      option.selected = one.time === reply.at;
      return option;
    }));
    byId('mark').disabled = reply.marks.length === 0;
    house.text('answer', reply.words);
    interval(reply);
    const night = (side) => (one) => cells(
      `${side}: ${record.start(one)}`, `${one.lossWPerK.toFixed(2)} ± ${one.lossDeviationWPerK.toFixed(2)}`, ((one.to - one.from) / 3600).toFixed(1), one.startExcessK.toFixed(0));
    byId('nights').replaceChildren(...reply.before.map(night('before')), ...reply.after.map(night('after')));
    house.text('nights-title', `Nights it rests on: ${reply.before.length} before, ${reply.after.length} after`);
    leftOut(reply.leftOut);
  }

  /* What might have been a night is named one by one; rests of an hour or two are many, and are counted by their reason. */
  function leftOut(all) {
    const [nights, rests] = [all.filter((one) => one.night.to - one.night.from >= 4 * 3600), all.filter((one) => one.night.to - one.night.from < 4 * 3600)];
    const reasons = new Map();
    for (const one of rests) reasons.set(one.why, (reasons.get(one.why) || 0) + 1);
    byId('left').replaceChildren(
      ...nights.map((one) => record.element('li', `${one.side}: ${record.start(one.night)}, ${record.span(one.night.to - one.night.from)}: ${one.why}`)),
      ...[...reasons].map(([why, count]) => record.element('li', `${count} ${count === 1 ? 'rest' : 'rests'} under 4 hours: ${why}`)));
    house.text('left-title', `Left out: ${nights.length} ${nights.length === 1 ? 'night' : 'nights'}, ${rests.length} shorter rests`);
  }

  /* The interval beside zero, drawn to scale. */
  function interval(reply) {
    const box = byId('interval');
    box.hidden = reply.lowWPerK === null || reply.lowWPerK === undefined;
    if (box.hidden) return;
    const far = 1.15 * Math.max(Math.abs(reply.lowWPerK), Math.abs(reply.highWPerK), 0.01);
    const middle = box.parentElement.clientWidth < 520 ? 170 : 360;
    const x = (value) => middle + (value / far) * (middle - 20);
    const make = (tag, attributes, words) => {
      const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
      for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
      if (words) made.textContent = words;
      return made;
    };
    const line = (x1, x2, y1, y2, name) => make('line', { x1, x2, y1, y2, class: name });
    const picture = make('svg', { viewBox: `0 0 ${2 * middle} 112`, role: 'img', 'aria-label': `Difference ${record.signed(reply.differenceWPerK, 2)} W/K, interval ${record.signed(reply.lowWPerK, 2)} to ${record.signed(reply.highWPerK, 2)}` });
    picture.append(
      line(10, 2 * middle - 10, 56, 56, 'axis'), line(middle, middle, 28, 84, 'zero'), line(x(reply.lowWPerK), x(reply.highWPerK), 56, 56, 'bar'),
      make('circle', { cx: x(reply.differenceWPerK), cy: 56, r: 9 }),
      make('text', { x: Math.min(2 * middle - 50, Math.max(50, x(reply.differenceWPerK))), y: 26, 'text-anchor': 'middle' }, `${record.signed(reply.differenceWPerK, 2)} W/K`),
      make('text', { x: 12, y: 104 }, 'loses less'), make('text', { x: 2 * middle - 12, y: 104, 'text-anchor': 'end' }, 'loses more'),
      make('text', { x: middle, y: 104, 'text-anchor': 'middle' }, 'no change'));
    box.replaceChildren(picture);
  }

  function choices() {
    const least = byId('kind').value === 'standing' ? 4 * 3600 : 600;
    const isWanted = (one) => ['a', 'b'].some((id) => query.get(id) === record.key(one));
    const fit = journeys.filter((one) => one.type === byId('kind').value && (one.to - one.from > least || isWanted(one)))
      .sort((one, other) => Date.parse(other.fromTime) - Date.parse(one.fromTime));
    for (const [id, place] of [['a', 1], ['b', 0]]) {
      byId(id).replaceChildren(...fit.map((one, i) => {
        const option = record.element('option', `${record.start(one)}, ${record.gist(one)}${one.dating === 'undated' ? ', clock not sure' : ''}`);
        option.value = record.key(one);
        option.selected = query.get(id) ? query.get(id) === record.key(one) : i === Math.min(place, fit.length - 1);
        return option;
      }));
    }
  }

  async function lay() {
    const [a, b] = ['a', 'b'].map((id) => journeys.find((one) => record.key(one) === byId(id).value));
    if (!a || !b) {
      house.text('said', 'There are not two of this kind on record yet.');
      return;
    }
    try {
      laid = await house.ask(`/api/v1/compare?a=${record.key(a)}&b=${record.key(b)}`);
      history.replaceState(null, '', `?a=${record.key(a)}&b=${record.key(b)}`);
      figures(a, b);
      paint();
    } catch (error) {
      house.text('said', error.message);
    }
  }

  function figures(a, b) {
    const [left, right] = [a, b].map((one) => new Map(record.figures(one)));
    const names = [...new Set([...left.keys(), ...right.keys()])];
    byId('figures').replaceChildren(cells('Start', record.start(a), record.start(b)), ...names.map((name) => cells(name, left.get(name) ?? '–', right.get(name) ?? '–')));
  }

  function paint() {
    if (!laid) return;
    const isPut = byId('put').checked;
    const values = (course) => (isPut ? course.putCelsius : course.waterCelsius);
    const [x, ...rows] = uPlot.join([[laid.a.t.map((t) => t / 3600), values(laid.a)], [laid.b.t.map((t) => t / 3600), values(laid.b)]]);
    const ink = record.colour('ink');
    const grid = { stroke: `${record.colour('line')}50`, width: 1 };
    const font = '18px system-ui, "DejaVu Sans", sans-serif';
    const value = (_, v) => (v === null || v === undefined ? '–' : `${v.toFixed(1)} °C`);
    const box = byId('chart');
    plot?.destroy();
    plot = new uPlot({
      width: box.clientWidth,
      height: Math.max(260, Math.min(480, innerHeight * 0.5)),
      scales: { x: { time: false } },
      axes: [
        { stroke: ink, grid, font, size: 62, values: (_, ticks) => ticks.map((v) => `${+v.toFixed(2)} h`) },
        { stroke: ink, grid, font, size: 62, values: (_, ticks) => ticks.map((v) => `${v}°`) },
      ],
      series: [
        { label: 'From the start', value: (_, v) => (v === null ? '–' : `${v.toFixed(2)} h`) },
        { label: 'A', stroke: record.colour('tank_top'), width: 3, spanGaps: true, points: { show: false }, value },
        { label: 'B', stroke: record.colour('tray'), width: 3, dash: [10, 5], spanGaps: true, points: { show: false }, value },
      ],
    }, [x, ...rows], box);
    said(isPut, values);
  }

  /* Where both still have points, how far apart they stand at the end. */
  function said(isPut, values) {
    const end = Math.min(laid.a.t.at(-1), laid.b.t.at(-1));
    const at = (course) => values(course)[course.t.findLastIndex((t) => t <= end)];
    const apart = at(laid.b) - at(laid.a);
    const where = Math.abs(apart) < 0.05 ? 'as warm as A' : `${Math.abs(apart).toFixed(1)} K ${apart > 0 ? 'warmer' : 'cooler'} than A`;
    house.text('said', `After ${record.span(end)} B is ${where}${isPut ? ', had both begun alike' : ', as measured'}.`);
    const around = laid.surroundingsCelsius === null ? 'its own surroundings, which A does not tell' : `surroundings of ${laid.surroundingsCelsius.toFixed(1)} °C`;
    house.text('footing', `Put on A's start of ${laid.startCelsius.toFixed(1)} °C and ${around}, with a loss of ${laid.a.lossWPerK.toFixed(2)} W/K for A and ${laid.b.lossWPerK.toFixed(2)} W/K for B. The curves are the mean of the tank's probes.`);
  }

  async function begin() {
    const fail = (error) => house.text('answer', error.message);
    byId('mark').onchange = () => insulation(byId('mark').value).catch(fail);
    byId('kind').onchange = () => { query.delete('a'); query.delete('b'); choices(); lay(); };
    byId('a').onchange = byId('b').onchange = lay;
    byId('put').onchange = paint;
    record.onLook(paint);
    addEventListener('resize', paint);
    insulation().catch(fail);
    try {
      const { runs } = await house.ask('/api/v1/runs');
      const ends = runs.filter((run) => run.to).map((run) => record.seconds(run.to));
      const last = ends.length ? Math.max(...ends) : Date.now() / 1000;
      const iso = (seconds) => encodeURIComponent(new Date(seconds * 1000).toISOString());
      journeys = (await house.ask(`/api/v1/journeys?from=${iso(last - 90 * record.day)}&to=${iso(last + 1)}`)).journeys;
      const chosen = journeys.find((one) => record.key(one) === query.get('a'));
      if (chosen) byId('kind').value = chosen.type;
      choices();
      await lay();
    } catch (error) {
      house.text('said', error.message);
    }
  }
  begin();
})();
