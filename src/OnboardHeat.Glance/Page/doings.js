'use strict';

/* What a person did to the van and tells it: works on the circuit, draining, a test. A second tap says that it was meant. */
const doings = (() => {
  const sureForMs = 5000;
  const changes = ['hoses', 'insulation', 'coil', 'probe', 'coolant', 'nothing'];
  let offered = '';

  function button(words, action, target) {
    const made = document.createElement('button');
    made.type = 'button';
    made.textContent = words;
    let isAsked = false;
    made.onclick = async () => {
      if (!isAsked && action !== 'changed') {
        isAsked = true;
        made.textContent = `${words}: tap again`;
        setTimeout(() => { isAsked = false; made.textContent = words; }, sureForMs);
        return;
      }

      try {
        await house.ask('/api/v1/actions', { action, target, text: '' });
        house.text('doings-said', 'Told the daemon.');
      } catch (error) {
        house.text('doings-said', `Not done: ${error.message}`);
      }
    };
    return made;
  }

  function offers(p, asks) {
    if (asks) return changes.map((what) => button(`Changed: ${what}`, 'changed', what));
    return [
      p.works ? ['Works have ended', 'works-end'] : ['Begin works on the circuit', 'works-begin'],
      p.tank.drained ? ['Tank is filled', 'filled'] : ['Tank was drained', 'drained'],
      ['Test lamp and buzzer', 'test'],
    ].map(([words, action]) => button(words, action, ''));
  }

  return {
    show(p) {
      const asks = !p.works && p.worksWords.length > 0;
      // Buttons are made anew only when others are due, or a finger would lose the one it is on.
      const due = `${p.works} ${p.tank.drained} ${asks}`;
      if (due === offered) return;
      offered = due;
      document.getElementById('doings-buttons').replaceChildren(...offers(p, asks));
      if (asks) document.getElementById('doings').open = true;
    },
  };
})();
