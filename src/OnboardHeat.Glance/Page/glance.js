'use strict';

/* The glance: one picture at a time, and honest about its age. Ages use this page's own monotonic clock: a phone's wall clock may be a
   day wrong, so no sentence here compares it with the daemon's. */
(() => {
  const silentAfterMs = 8000;
  let lastHeardMs = performance.now();
  let lastPictureMs = null;
  let picture = null;
  let alarmKey = '';

  const heat = (celsius) => celsius >= 55 ? 3 : celsius >= 40 ? 2 : celsius >= 25 ? 1 : 0;

  const alarmWords = {
    'coolant-loss': 'Coolant is leaving',
    'tank-over-temperature': 'Tank too hot',
    'coolant-over-temperature': 'Coolant too hot',
    'element-dry': 'Element on, tank drained',
    'circulation-stopped': 'No coolant through the tank',
    'coolant-weep': 'Coolant drips',
    'water-in-tray': 'Water in the tray',
    'rating-exceeded': 'Hotter than its rating',
    'rating-near': 'Nearing its rating',
    'frost': 'Frost',
    'probe-fault': 'Probe trouble',
    'cannot-judge': 'Cannot judge',
    'history-damaged': 'Part of the record is damaged',
    'history-stopped': 'Not recording',
    'power-low': 'Supply dips',
    'works-open': 'Works mode still on',
    'scald-risk': 'Scalding water: mix it',
    'close-valves': 'Close the valves',
    'hygiene-due': 'Long since it was hot',
    'weak-heating': 'Heats less than usual',
    'test-due': 'Test lamp and buzzer',
  };
  const sign = { critical: '■ STOP', warning: '▲ WARNING', advice: '● ADVICE' };

  function alarms(list) {
    const shown = list.filter((a) => a.state !== 'normal' && a.state !== 'shelved' && a.state !== 'out-of-service');
    const key = JSON.stringify(shown.map((a) => [a.alarm, a.subject, a.state, a.because]));
    if (key === alarmKey) return;
    alarmKey = key;
    const place = document.getElementById('alarms');
    place.replaceChildren(...shown.slice(0, 4).map(card));
    if (shown.length > 4) {
      const more = document.createElement('p');
      more.className = 'fine';
      more.textContent = `and ${shown.length - 4} more: see Review`;
      place.append(more);
    }
  }

  function card(alarm) {
    const box = document.createElement('article');
    box.className = 'alarm';
    box.dataset.priority = alarm.priority;
    box.dataset.state = alarm.state;
    const title = document.createElement('h2');
    const subject = alarm.subject ? ` (${alarm.subject.replaceAll('_', ' ')})` : '';
    title.textContent = `${sign[alarm.priority]}: ${alarmWords[alarm.alarm] || alarm.alarm}${subject}`;
    const because = document.createElement('p');
    because.className = 'because';
    because.textContent = alarm.because;
    box.append(title, because);
    if (alarm.present && alarm.whatToDo.length && alarm.priority !== 'advice') {
      const steps = document.createElement('ol');
      steps.append(...alarm.whatToDo.map((step) => {
        const item = document.createElement('li');
        item.textContent = step;
        return item;
      }));
      box.append(steps);
    }
    if (alarm.state === 'unacknowledged' || alarm.state === 'returned-unacknowledged' || alarm.state === 'latched') {
      const seen = document.createElement('button');
      seen.type = 'button';
      seen.textContent = alarm.state === 'latched' ? 'Still held: repaired?' : 'Seen';
      const said = document.createElement('p');
      said.className = 'said';
      said.setAttribute('role', 'status');
      seen.onclick = () => act(alarm, said);
      box.append(seen, said);
    }
    return box;
  }

  async function act(alarm, said) {
    const target = alarm.subject ? `${alarm.alarm}/${alarm.subject}` : alarm.alarm;
    const kind = alarm.state === 'latched' && alarm.alarm === 'coolant-loss' ? 'repaired' : 'acknowledge';
    try {
      await house.ask('/api/v1/actions', { action: kind, target, text: '' });
      said.textContent = 'Told the daemon.';
    } catch (error) {
      said.textContent = `Not done: ${error.message}`;
    }
  }

  function plan(p) {
    const f = p.forecast;
    if (p.works) return 'Works on the circuit: its alarms are off';
    if (p.tank.drained) return 'Tank is drained';
    switch (f.ready) {
      case 'now': return 'Ready now';
      case 'at': return `Ready in about ${house.span(f.readyInS)}${p.circuit.engineRunning ? ' of driving' : ''}`;
      case 'not-at-this-rate': return 'Will not be ready at this rate';
      case 'not-heating': return f.driveMinutesNeeded ? `Drive about ${Math.round(f.driveMinutesNeeded)} more min` : 'Not heating';
      default: return '';
    }
  }

  function until(p) {
    const f = p.forecast;
    if (p.tank.drained) return '';
    switch (f.until) {
      case 'now-below': return 'Not warm enough to use';
      case 'at': return f.usableUntil && p.time && p.timeTrusted
        ? `Warm enough until ${house.clock(f.usableUntil, p.time)}`
        : `Warm enough for ${house.span(f.usableForS)}`;
      case 'beyond-7-days': return 'Warm enough for over a week';
      default: return '';
    }
  }

  function show(p) {
    picture = p;
    alarms(p.alarms);
    const f = p.forecast;
    house.text('minutes', f.showerMinutes === null ? '–' : f.showerMinutes < 9.95 ? f.showerMinutes.toFixed(1) : f.showerMinutes.toFixed(0));
    house.text('range', f.showerMinutesLow === null ? 'not known'
      : `between ${f.showerMinutesLow.toFixed(1)} and ${f.showerMinutesHigh.toFixed(1)} min`);
    house.text('plan', plan(p));
    house.text('until', until(p));
    layers(p.tank);
    house.text('tank-words', p.tank.known
      ? `top ${p.tank.topCelsius.value.toFixed(0)} °C, bottom ${p.tank.bottomCelsius.value.toFixed(0)} °C` : '');
    house.text('stored', f.storedEnergyKWh === null ? p.tank.drained ? 'drained' : 'no tank probe' : `${f.storedEnergyKWh.toFixed(2)} kWh stored`);
    const c = p.channels;
    house.text('circuit-words', c.flow || c.return
      ? [c.flow && `${house.celsius(c.flow)} in`, c.return && `${house.celsius(c.return)} back`].filter(Boolean).join(', ') : 'no line probes');
    house.text('heating', heating(f.heatingWatts, p.circuit));
  }

  function heating(watts, circuit) {
    if (watts === null) return '';
    if (watts > 50) return `heating the tank, ${(watts / 1000).toFixed(1)} kW`;
    if (watts < -20) return `taking heat out of the tank, ${Math.abs(watts).toFixed(0)} W`;
    return circuit.engineRunning === false ? 'engine off' : 'not heating';
  }

  function layers(tank) {
    const place = document.getElementById('layers');
    const top = [...tank.layersCelsius].reverse();
    while (place.children.length > top.length) place.lastChild.remove();
    while (place.children.length < top.length) {
      const layer = document.createElement('li');
      layer.append(document.createElement('span'), document.createElement('b'));
      place.append(layer);
    }
    top.forEach((celsius, i) => {
      const layer = place.children[i];
      const share = `${Math.max(3, Math.min(70, celsius * 0.75)).toFixed(0)}%`;
      layer.dataset.heat = heat(celsius);
      layer.style.setProperty('--share', share);
      layer.firstChild.style.width = share;
      layer.lastChild.textContent = i === 0 || i === top.length - 1 ? `${celsius.toFixed(0)} °C` : '';
    });
  }

  function age() {
    const now = performance.now();
    const silentMs = now - lastHeardMs;
    const stale = document.getElementById('stale');
    if (silentMs > silentAfterMs) {
      stale.hidden = false;
      house.text('stale', `No connection for ${house.span(silentMs / 1000)}: old figures`);
      document.body.dataset.old = '1';
    } else {
      stale.hidden = true;
      delete document.body.dataset.old;
    }
    if (lastPictureMs !== null) {
      const seconds = (now - lastPictureMs) / 1000;
      house.text('stamp', seconds < 10 ? 'now' : `${house.span(seconds)} old`);
    }
  }

  function listen() {
    const live = new EventSource('/api/v1/live');
    live.addEventListener('picture', (event) => {
      lastHeardMs = lastPictureMs = performance.now();
      show(JSON.parse(event.data));
      age();
    });
    live.addEventListener('beat', () => { lastHeardMs = performance.now(); age(); });
    live.onerror = () => {
      if (live.readyState === EventSource.CLOSED) setTimeout(listen, 3000);
    };
  }

  setInterval(age, 1000);
  listen();
})();
