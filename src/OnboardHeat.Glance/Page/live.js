'use strict';

/* The line to the daemon, and how old what it brings is. Ages are counted by this page's own monotonic clock and by the daemon's: the
   wall clock of a phone may be a day wrong and is never asked. */
const line = (() => {
  // The daemon sends something every 3 s. Silence of 8 s and a look twice a second: told within 10 s.
  const silentAfterMs = 8000;
  const againAfterMs = 5000;
  let source = null;
  let onPicture = () => {};
  let heardMs = performance.now();
  let openedMs = heardMs;
  let pictureMs = null;
  let overdueS = 15;
  let refusal = '';
  let told = '';

  function listen() {
    source?.close();
    openedMs = performance.now();
    source = new EventSource('/api/v1/live');
    source.addEventListener('picture', (event) => {
      heardMs = pictureMs = performance.now();
      refusal = '';
      onPicture(JSON.parse(event.data));
      look();
    });
    source.addEventListener('beat', (event) => {
      heardMs = performance.now();
      const beat = JSON.parse(event.data);
      if (beat.pictureAgeS !== null) pictureMs = heardMs - 1000 * beat.pictureAgeS;
      overdueS = beat.overdueS;
      look();
    });
    source.onerror = () => { if (source.readyState === EventSource.CLOSED) ask(); };
  }

  /* An event source does not say why it was refused. */
  async function ask() {
    try {
      const session = await house.ask('/api/v1/session');
      document.getElementById('pair').hidden = session.paired;
      refusal = pictureMs === null && performance.now() - openedMs > 1000 ? 'The daemon sends no picture: too many pages are open.' : '';
    } catch (error) {
      refusal = error.status === 401 ? 'This phone may not read yet: pair it.' : '';
      if (refusal) document.getElementById('pair').hidden = false;
    }
    look();
  }

  function trouble(nowMs) {
    const silentMs = nowMs - heardMs;
    const ageS = pictureMs === null ? null : (nowMs - pictureMs) / 1000;
    if (refusal) return refusal;
    if (silentMs > silentAfterMs) {
      return ageS === null ? 'No connection to the daemon' : `No connection. Figures are ${house.age(ageS)} old`;
    }
    return ageS !== null && ageS > overdueS ? `No new readings. Figures are ${house.age(ageS)} old` : '';
  }

  function look() {
    const nowMs = performance.now();
    const words = trouble(nowMs);
    const strip = document.getElementById('stale');
    strip.hidden = words === '';
    house.text('stale', words);
    document.body.toggleAttribute('data-old', words !== '');
    const kind = words.split('.')[0];
    if (kind !== told) {
      told = kind;
      if (words) house.text('announce', words);
    }
    if (pictureMs !== null) {
      const ageS = (nowMs - pictureMs) / 1000;
      house.text('stamp', ageS < 10 ? 'up to date' : `${house.age(ageS)} old`);
    }
    // A line that went dead without a word (a phone that left the van and came back) never ends by itself.
    if (nowMs - heardMs > silentAfterMs && nowMs - openedMs > againAfterMs) listen();
  }

  return {
    start(show) {
      onPicture = show;
      setInterval(look, 500);
      listen();
      ask();
    },
  };
})();
