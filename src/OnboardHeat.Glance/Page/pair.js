'use strict';

/* The token is kept by this page and sent with every action; the cookie beside it is out of any script's reach. */
(() => {
  const code = new URLSearchParams(location.hash.slice(1)).get('code');
  if (code) {
    document.getElementById('code').value = code;
    history.replaceState(null, '', '/pair');
  }
  document.getElementById('pair').addEventListener('submit', async (event) => {
    event.preventDefault();
    const value = (id) => document.getElementById(id).value;
    try {
      const known = await house.ask('/api/v1/pair', { code: value('code'), name: value('name') });
      localStorage.setItem('token', known.token);
      house.text('said', `Paired as ${known.phone}. This phone may now acknowledge alarms.`);
      event.target.hidden = true;
    } catch (error) {
      house.text('said', error.message);
    }
  });
})();
