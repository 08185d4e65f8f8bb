'use strict';

/* The alarms of a picture as cards that stay: a card keeps its place in the page while its words change, so that neither the focus of a
   keyboard nor an opened card is lost. Only what is new is said aloud to a screen reader, and only once. */
const alarmCards = (() => {
  const titles = {
    'coolant-loss': 'Coolant is leaving',
    'tank-over-temperature': 'Tank too hot',
    'coolant-over-temperature': 'Coolant too hot',
    'element-dry': 'Element on, tank drained',
    'circulation-stopped': 'No coolant through the tank',
    'coolant-weep': 'Coolant drips',
    'water-in-tray': 'Water in the tray',
    'rating-exceeded': 'Hotter than its rating',
    'frost': 'Frost',
    'probe-fault': 'Probe trouble',
    'cannot-judge': 'Cannot judge',
    'history-damaged': 'Part of the record is damaged',
    'history-stopped': 'Not recording',
    'power-low': 'Supply dips',
    'works-open': 'Works mode still on',
    'rating-near': 'Nearing its rating',
    'scald-risk': 'Scalding water',
    'close-valves': 'Close the valves',
    'hygiene-due': 'Long since it was hot',
    'weak-heating': 'Heats less than usual',
    'test-due': 'Test lamp and buzzer',
  };
  const signs = { critical: '■ ALARM', warning: '▲ WARNING', advice: '● ADVICE' };
  const confirmForMs = 5000;
  const cards = new Map();
  let announced = new Set();

  const isShown = (alarm) => !['normal', 'shelved', 'out-of-service'].includes(alarm.state);
  const isOwed = (alarm) => !alarm.acknowledged;
  const targetOf = (alarm) => alarm.subject ? `${alarm.alarm}/${alarm.subject}` : alarm.alarm;

  function make(tag, className, parent) {
    const element = document.createElement(tag);
    if (className) element.className = className;
    if (parent) parent.append(element);
    return element;
  }

  function write(element, words) {
    if (element.textContent !== words) element.textContent = words;
  }

  function titleOf(alarm) {
    const subject = alarm.subject ? ` (${alarm.subject.replaceAll('_', ' ')})` : '';
    return `${titles[alarm.alarm] || alarm.alarm}${subject}`;
  }

  function cardOf(key) {
    if (cards.has(key)) return cards.get(key);
    const box = make('article', 'alarm');
    const details = make('details', '', box);
    const summary = make('summary', '', details);
    const heading = make('h3', '', summary);
    const card = {
      box, details,
      sign: make('span', 'sign', heading),
      title: make('span', '', heading),
      seen: make('span', 'is-seen', heading),
      steps: make('ol', '', details),
      because: make('p', 'because', details),
      button: make('button', '', box),
      said: make('p', 'said', box),
      askedAtMs: -Infinity,
    };
    card.sign.after(' ');
    card.title.after(' ');
    card.button.type = 'button';
    card.said.setAttribute('role', 'status');
    card.button.onclick = () => press(card);
    cards.set(key, card);
    return card;
  }

  function update(card, alarm, isLead) {
    const wasLead = card.box.classList.contains('is-lead');
    card.alarm = alarm;
    card.box.dataset.priority = alarm.priority;
    card.box.toggleAttribute('data-owed', isOwed(alarm));
    card.box.classList.toggle('is-lead', isLead);
    if (isLead !== wasLead) card.details.open = isLead;
    write(card.sign, signs[alarm.priority]);
    write(card.title, titleOf(alarm));
    write(card.seen, stateWords(alarm));
    write(card.because, alarm.because);
    const steps = alarm.present || alarm.state === 'latched' ? alarm.whatToDo : [];
    if (card.steps.children.length !== steps.length || steps.some((step, i) => card.steps.children[i].textContent !== step)) {
      card.steps.replaceChildren(...steps.map((step) => Object.assign(document.createElement('li'), { textContent: step })));
    }
    const words = buttonWords(card);
    card.button.hidden = words === '';
    write(card.button, words);
    card.button.setAttribute('aria-label', words === '' ? '' : `${words}: ${titleOf(alarm)}`);
  }

  function stateWords(alarm) {
    if (alarm.state === 'latched') return isOwed(alarm) ? 'held' : 'held until repaired';
    if (!alarm.present) return 'is over';
    return isOwed(alarm) ? '' : '✓ seen';
  }

  function buttonWords(card) {
    const alarm = card.alarm;
    if (isOwed(alarm)) return 'Seen';
    if (alarm.alarm !== 'coolant-loss') return '';
    return performance.now() - card.askedAtMs < confirmForMs ? 'Really repaired? Touch again' : 'Repaired';
  }

  async function press(card) {
    const { alarm } = card;
    const isRepair = !isOwed(alarm);
    if (isRepair && performance.now() - card.askedAtMs >= confirmForMs) {
      card.askedAtMs = performance.now();
      write(card.button, buttonWords(card));
      setTimeout(() => write(card.button, buttonWords(card)), confirmForMs + 50);
      return;
    }
    card.askedAtMs = -Infinity;
    try {
      const action = isRepair ? { action: 'repaired', target: '', text: '' }
        : { action: 'acknowledge', target: targetOf(alarm), text: '' };
      await house.ask('/api/v1/actions', action);
      write(card.said, 'Told the daemon.');
    } catch (error) {
      write(card.said, `Not done. ${error.message} `);
      if (error.status === 401 || error.status === 403) {
        Object.assign(make('a', '', card.said), { href: '/pair', textContent: 'Pair this phone' });
      }
    }
  }

  function place(parent, list) {
    list.forEach((card, i) => {
      if (parent.children[i] !== card.box) parent.insertBefore(card.box, parent.children[i] || null);
    });
    while (parent.children.length > list.length) parent.lastChild.remove();
  }

  /* What is new since the last picture, the most urgent first and with its first step; advice can wait until it is read. */
  function announce(alarms) {
    const owed = alarms.filter((alarm) => isOwed(alarm) && alarm.priority !== 'advice');
    const keyOf = (alarm) => `${targetOf(alarm)} ${alarm.sinceS}`;
    const fresh = owed.filter((alarm) => !announced.has(keyOf(alarm)));
    announced = new Set(owed.map(keyOf));
    if (fresh.length === 0) return;
    const [first, ...others] = fresh;
    const words = (alarm) => `${signs[alarm.priority].slice(2).toLowerCase()}: ${titleOf(alarm)}.`;
    house.text('announce', [`${words(first)} ${first.whatToDo[0] ?? ''}`, ...others.map(words)].join(' '));
  }

  return {
    titles,

    /* Shows the alarms of a picture, most urgent first; the first that is more than advice leads. */
    show(all) {
      const shown = all.filter(isShown);
      const lead = shown.find((alarm) => alarm.priority !== 'advice');
      for (const alarm of shown) update(cardOf(targetOf(alarm)), alarm, alarm === lead);
      const boxes = (list) => list.map((alarm) => cards.get(targetOf(alarm)));
      place(document.getElementById('alarms'), boxes(shown.filter((alarm) => alarm.priority !== 'advice')));
      place(document.getElementById('advice'), boxes(shown.filter((alarm) => alarm.priority === 'advice')));
      const kept = new Set(shown.map(targetOf));
      for (const key of cards.keys()) if (!kept.has(key)) cards.delete(key);
      document.body.toggleAttribute('data-alarm', lead !== undefined);
      announce(shown);
      return lead ? titleOf(lead) : '';
    },
  };
})();
