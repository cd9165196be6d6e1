// What has not arrived yet: a visit is kept on this phone until it has, whatever page is looked at.
const outbox = (() => {
  'use strict';
  const OUT = 'coldround.out';
  const AGAIN_MS = 20000;

  const read = (key, empty) => {
    try {
      return JSON.parse(localStorage.getItem(key)) ?? empty;
    } catch (broken) {
      return empty;
    }
  };
  const write = (key, value) => {
    try {
      localStorage.setItem(key, JSON.stringify(value));
      return true;
    } catch (full) {
      return false;
    }
  };
  const element = (name, text, attributes) => {
    const made = document.createElement(name);
    made.textContent = text;
    Object.entries(attributes || {}).forEach(([key, value]) => made.setAttribute(key, value));
    return made;
  };
  // ---- what has not arrived yet
  const waiting = () => read(OUT, []);
  const keep = (item) => write(OUT, [...waiting().filter((each) => each.id !== item.id), item]);
  const drop = (id) => write(OUT, waiting().filter((each) => each.id !== id));

  const send = async (item) => {
    let answer;
    try {
      answer = await fetch(item.action, {
        method: 'POST',
        headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
        body: item.body,
      });
    } catch (offline) {
      return { state: 'offline' };
    }
    if (answer.ok) {
      return { state: 'stored', address: answer.url };
    }
    if (answer.status === 401) {
      return { state: 'login' };
    }
    if (answer.status >= 500 || answer.status === 429) {
      return { state: 'busy' };
    }
    return { state: 'mend', page: await answer.text() };
  };

  let sending = false;
  const sendAll = async () => {
    if (sending || document.querySelector('form.entry[data-busy]')) {
      return;
    }
    sending = true;
    try {
      for (const item of waiting().filter((each) => each.state !== 'mend' && each.state !== 'stored')) {
        const outcome = await send(item);
        if (outcome.state === 'stored') {
          keep({ ...item, state: 'stored', address: outcome.address, body: '' });
        } else {
          keep({ ...item, state: outcome.state });
          if (outcome.state === 'offline') {
            break;
          }
        }
      }
    } finally {
      sending = false;
      show();
    }
  };

  const SAID = {
    waiting: 'is kept on this phone and goes out by itself as soon as there is a connection.',
    offline: 'is kept on this phone and goes out by itself as soon as there is a connection.',
    busy: 'is kept on this phone: the service is busy and it will be sent again.',
    login: 'is kept on this phone: your login has run out.',
    mend: 'could not be taken as it is.',
    stored: 'has arrived.',
  };
  const show = () => {
    let box = document.querySelector('.waiting');
    const items = waiting();
    if (!items.length) {
      box?.remove();
      return;
    }
    if (!box) {
      box = element('div', '', { class: 'waiting', role: 'region', 'aria-label': 'Visits of this phone' });
      document.querySelector('.head, main').after(box);
    }
    const list = element('ul', '', { role: 'status' });
    items.forEach((item) => {
      const line = element('li', '');
      line.append(element('span', 'Visit at ' + item.what + ' ' + SAID[item.state]));
      if (item.state === 'stored') {
        const link = element('a', 'What the readings say', { href: item.address });
        link.addEventListener('click', () => drop(item.id));
        line.append(link);
      } else if (item.state === 'mend') {
        line.append(element('a', 'Mend it', { href: item.form + '#mend=' + encodeURIComponent(item.id) }));
      } else if (item.state === 'login') {
        line.append(element('a', 'Enter again', { href: '/enter?to=' + encodeURIComponent(location.pathname + location.search) }));
      }
      list.append(line);
    });
    box.replaceChildren(list);
  };

  // ---- every page
  // the form of a visit, if there is one, has its turn first
  addEventListener('DOMContentLoaded', () => {
    show();
    sendAll();
  });
  addEventListener('online', sendAll);
  setInterval(() => waiting().length && sendAll(), AGAIN_MS);

  if ('serviceWorker' in navigator) {
    navigator.serviceWorker.register('/sw.js').then(async () => {
      await navigator.serviceWorker.ready;
      // whoever looks at a unit may want its form where there is no connection
      document.querySelectorAll('a[data-keep]').forEach((link) => {
        navigator.serviceWorker.controller?.postMessage({ keep: link.href });
      });
    }).catch(() => {});
  }
  return { read, write, element, waiting, keep, drop, send, show };
})();
