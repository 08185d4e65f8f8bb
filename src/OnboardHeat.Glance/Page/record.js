'use strict';

/* What the review and the comparison share: the lines and their looks, times, journeys and their figures in words. */
const record = {
  day: 86400,

  /* Each line has a dash of its own beside its colour, so that colour is never alone. */
  columns: [
    ['tank_top', 'tank top', []], ['tank_middle', 'tank middle', [2, 4]], ['tank_bottom', 'tank bottom', [10, 4]],
    ['flow', 'coolant in', []], ['return', 'coolant back', [8, 4]], ['engine_coolant', 'engine coolant', [2, 2]],
    ['surroundings', 'surroundings', [4, 4]], ['tray', 'tray', [8, 3, 2, 3]], ['outlet', 'outlet', [12, 4]], ['cold_supply', 'cold supply', [3, 6]],
  ],

  types: { heating: ['H', 'Heating run'], standing: ['S', 'Standing'], draw: ['D', 'Draw'], stop: ['P', 'Stop'] },

  sources: { coolant: 'by coolant', element: 'by element', both: 'by both together' },

  ends: { engine: 'the engine was started', element: 'the element came on', draw: 'water was drawn', 'record-end': 'the record ends here' },

  colour: (name) => getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim(),

  seconds: (time) => (time ? Date.parse(time) / 1000 : null),

  when(seconds, options) {
    return new Date(seconds * 1000).toLocaleString([], options || { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  },

  span(seconds) {
    return seconds < 5400 ? `${Math.max(1, Math.round(seconds / 60))} min`
      : seconds < 172800 ? `${(seconds / 3600).toFixed(1)} h` : `${(seconds / 86400).toFixed(1)} days`;
  },

  signed: (value, digits) => `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(digits)}`,

  key: (journey) => `${journey.run}/${journey.from}/${journey.to}`,

  start(journey) {
    return journey.fromTime ? record.when(record.seconds(journey.fromTime))
      : `run ${journey.run}, ${record.span(journey.from)} after its start, no date`;
  },

  title: (journey) => `${record.types[journey.type][1]}, ${record.start(journey)}`,

  /* One line that tells a journey from its neighbours. */
  gist(journey) {
    const length = record.span(journey.to - journey.from);
    const water = `${journey.startCelsius.toFixed(0)} → ${journey.endCelsius.toFixed(0)} °C`;
    return journey.type === 'stop' ? length : `${length}, ${water}, ${record.signed(journey.gainedKWh, 2)} kWh`;
  },

  /* Every figure that there is, as pairs of name and value. */
  figures(journey) {
    const rows = [
      ['Length', record.span(journey.to - journey.from)],
      ['Water at start', `${journey.startCelsius.toFixed(1)} °C`],
      ['Water at end', `${journey.endCelsius.toFixed(1)} °C`],
      ['Warmest', `${journey.peakCelsius.toFixed(1)} °C`],
      [journey.gainedKWh < 0 ? 'Heat given' : 'Heat gained', `${Math.abs(journey.gainedKWh).toFixed(2)} kWh`],
      ['Mean power', `${journey.meanWatts.toFixed(0)} W`],
    ];
    for (const one of journey.sources || []) {
      rows.push([record.sources[one.source], `${one.gainedKWh.toFixed(2)} kWh in ${one.minutes.toFixed(0)} min, ${one.meanWatts.toFixed(0)} W`]);
    }
    const add = (name, value, words) => { if (value !== null && value !== undefined) rows.push([name, words(value)]); };
    add('To 40 °C', journey.toFortyS, record.span);
    add('To 60 °C', journey.toSixtyS, record.span);
    add('Coil', journey.coilWPerK, (v) => `${v.toFixed(0)} W/K`);
    add('Loss', journey.lossWPerK, (v) => `${v.toFixed(2)} ± ${journey.lossDeviationWPerK.toFixed(2)} W/K`);
    add('Surroundings', journey.surroundingsCelsius, (v) => `${v.toFixed(1)} °C`);
    add('Valves open', journey.valvesOpenShare, (v) => `${(v * 100).toFixed(0)} % of the time`);
    for (const part of journey.overRating || []) {
      rows.push([`${part.part} above its rating`, `${part.minutes.toFixed(1)} min, by ${part.mostK.toFixed(1)} K at most`]);
    }
    if (record.ends[journey.endedBy]) rows.push(['Ended when', record.ends[journey.endedBy]]);
    if (journey.open) rows.push(['State', 'going on']);
    if (journey.dating === 'undated') rows.push(['Dates', 'its clock was never known to be right']);
    if (journey.dating === 'dated-afterwards') rows.push(['Dates', 'worked out once the clock was set']);
    return rows;
  },

  element(tag, words, className) {
    const made = document.createElement(tag);
    if (words !== undefined) made.textContent = words;
    if (className) made.className = className;
    return made;
  },

  /* Redraws when day turns to night. */
  onLook(draw) {
    new MutationObserver(draw).observe(document.documentElement, { attributes: true, attributeFilter: ['data-look'] });
  },
};
