'use strict';

/* The glance: one picture at a time, put into the few words and figures that a driver can take in. */
(() => {
  // Full length of a layer's bar; hotter than this a tank is not meant to be.
  const fullCelsius = 90;
  // Where most showers begin to be warm; a mark to read the bars by.
  const warmCelsius = 40;
  const bars = 6;
  // A reading that was not believed for longer than this is shown as old.
  const freshS = 15;

  const heat = (celsius) => celsius >= 55 ? 3 : celsius >= warmCelsius ? 2 : celsius >= 25 ? 1 : 0;
  const minutes = (value) => value < 9.95 ? value.toFixed(1) : value.toFixed(0);

  function plan(p) {
    const f = p.forecast;
    if (p.tank.drained) return 'Tank is drained';
    switch (f.ready) {
      case 'now': return 'Ready now';
      case 'at': return `Ready in about ${house.span(f.readyInS)}${p.circuit.engineRunning ? ' of driving' : ''}`;
      case 'not-at-this-rate': return 'Will not be ready at this rate';
      case 'not-heating': return f.driveMinutesNeeded ? `Drive about ${house.span(60 * f.driveMinutesNeeded)} for a shower` : 'Not heating';
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

  function range(f) {
    if (f.showerMinutes === null) return 'not known';
    return `${minutes(f.showerMinutesLow)} to ${minutes(f.showerMinutesHigh)} min`;
  }

  function heating(watts, circuit) {
    if (watts !== null && watts > 50) return `▲ Heating the tank, ${(watts / 1000).toFixed(1)} kW`;
    if (watts !== null && watts < -50) return `▼ Taking heat out, ${(-watts / 1000).toFixed(1)} kW`;
    if (circuit.engineRunning === false) return '■ Not heating, engine off';
    if (circuit.circulating === false) return '■ No coolant passes the coil';
    return watts === null ? 'Heating not known' : '■ Not heating';
  }

  function lineReading(id, words, reading) {
    const isOld = !reading || reading.celsius === null || reading.ageS > freshS;
    document.getElementById(id).classList.toggle('is-old', isOld);
    house.text(id, !reading ? '' : reading.celsius === null ? `${words} no reading`
      : `${words} ${reading.celsius.toFixed(0)} °C${isOld ? ` (${house.age(reading.ageS)} ago)` : ''}`);
  }

  /* Layers come bottom first, as many as the estimator likes; a few bars, top first, are what an eye takes in. */
  function barsOf(layers) {
    const count = Math.min(bars, layers.length);
    return Array.from({ length: count }, (_, bar) => {
      const from = Math.floor((count - 1 - bar) * layers.length / count);
      const to = Math.floor((count - bar) * layers.length / count);
      const part = layers.slice(from, to);
      return part.reduce((sum, celsius) => sum + celsius, 0) / part.length;
    });
  }

  function tank(t, stored) {
    const place = document.getElementById('layers');
    const top = t.known ? barsOf(t.layersCelsius) : [];
    while (place.children.length > top.length) place.lastChild.remove();
    while (place.children.length < top.length) {
      const layer = document.createElement('li');
      layer.append(document.createElement('span'), document.createElement('b'));
      place.append(layer);
    }
    const share = (celsius) => `${(72 * Math.max(0.03, Math.min(1, celsius / fullCelsius))).toFixed(1)}%`;
    place.parentElement.style.setProperty('--warm-at', share(warmCelsius));
    top.forEach((celsius, i) => {
      const layer = place.children[i];
      layer.dataset.heat = heat(celsius);
      layer.style.setProperty('--share', share(celsius));
      const figure = i === 0 ? t.topCelsius.value : i === top.length - 1 ? t.bottomCelsius.value : null;
      layer.lastChild.textContent = figure === null ? '' : `${figure.toFixed(0)} °C`;
    });
    house.text('tank-words', t.known
      ? `top ${t.topCelsius.value.toFixed(0)} °C, bottom ${t.bottomCelsius.value.toFixed(0)} °C` : '');
    house.text('stored', stored === null ? t.drained ? 'drained' : 'not known' : `${stored.toFixed(2)} kWh`);
  }

  function show(p) {
    const f = p.forecast;
    const alarm = alarmCards.show(p.alarms);
    document.getElementById('works').hidden = !p.works && p.worksWords.length === 0;
    document.getElementById('works-title').hidden = !p.works;
    house.text('works-words', p.worksWords.join(' '));
    doings.show(p);
    house.text('minutes', f.showerMinutes === null ? '–' : minutes(f.showerMinutes));
    house.text('range', range(f));
    house.text('plan', plan(p));
    house.text('until', until(p));
    tank(p.tank, f.storedEnergyKWh);
    house.text('heating', heating(f.heatingWatts, p.circuit));
    lineReading('flow', 'in', p.channels.flow);
    lineReading('return', 'back', p.channels.return);
    document.title = alarm ? `■ ${alarm}` : f.showerMinutes === null ? 'Hot water' : `${minutes(f.showerMinutes)} min of hot water`;
    performance.mark('first-picture');
  }

  line.start(show);
})();
