'use strict';

/* What the pages share: the look, numbers as people read them, one way to ask the daemon. */
const house = {
  look() {
    const chosen = localStorage.getItem('look');
    const dark = matchMedia('(prefers-color-scheme: dark)').matches;
    document.documentElement.dataset.look = (chosen ? chosen === 'night' : dark) ? 'night' : 'day';
    const button = document.getElementById('look');
    if (button) {
      button.textContent = `Look: ${chosen || 'automatic'}`;
      button.onclick = () => {
        const next = { day: 'night', night: '' }[chosen] ?? 'day';
        if (next) localStorage.setItem('look', next);
        else localStorage.removeItem('look');
        house.look();
      };
    }
  },

  number(value, digits) {
    return value === null || value === undefined ? '–' : value.toFixed(digits);
  },

  celsius(reading) {
    return reading && reading.ageS !== null && reading.celsius !== null ? `${reading.celsius.toFixed(0)} °C` : '–';
  },

  /* A span as a person would say it. */
  span(seconds) {
    const minutes = Math.max(1, Math.round(seconds / 60));
    if (minutes < 90) return `${minutes} min`;
    const hours = minutes / 60;
    return hours < 36 ? `${hours.toFixed(hours < 10 ? 1 : 0)} h` : `${(hours / 24).toFixed(1)} days`;
  },

  /* An age counts in seconds at first: whether figures are ten or fifty seconds old matters. */
  age(seconds) {
    return seconds < 90 ? `${Math.round(seconds)} s` : house.span(seconds);
  },

  /* The daemon's clock, not the phone's: both ends come from the same picture. */
  clock(time, now) {
    const at = new Date(time);
    const from = new Date(now);
    const text = at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
    const day = (d) => Math.floor((d - d.getTimezoneOffset() * 60000) / 86400000);
    const days = day(at) - day(from);
    if (days === 0) return text;
    return days === 1 ? `${text} tomorrow` : `${text} on ${at.toLocaleDateString([], { weekday: 'long' })}`;
  },

  text(id, words) {
    const element = document.getElementById(id);
    if (element && element.textContent !== words) element.textContent = words;
  },

  async ask(path, body) {
    const options = body === undefined ? {} : {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'X-Onboardheat-Token': localStorage.getItem('token') || '' },
      body: JSON.stringify(body),
    };
    const answer = await fetch(path, { cache: 'no-store', ...options });
    const type = answer.headers.get('Content-Type') || '';
    const content = type.includes('json') ? await answer.json() : await answer.text();
    if (!answer.ok) throw Object.assign(new Error(content.message || `refused (${answer.status})`), { status: answer.status });
    return content;
  },
};

house.look();
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', house.look);
