// The form of a visit: judged while it is typed, kept while it is typed, sent once.
(() => {
  'use strict';
  const { read, write, element, waiting, keep, drop, send, show } = outbox;
  const DRAFT = 'coldround.draft.';
  const LAST = 'coldround.technician';
  const SENT = 'coldround.typed.sent ';

  const number = () => {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return 'field-' + [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  };

  const fields = (form, button) => new URLSearchParams(new FormData(form, button)).toString();

  const fill = (form, body) => {
    const said = new URLSearchParams(body);
    for (const field of form.elements) {
      if (!field.name || field.name === 'act') {
        continue;
      }
      const values = said.getAll(field.name);
      if (field.type === 'radio' || field.type === 'checkbox') {
        field.checked = values.includes(field.value);
      } else if (values.length) {
        field.value = values[0];
      }
      if (field.value && field.closest('details') && field.type !== 'checkbox') {
        field.closest('details').open = true;
      }
    }
  };

  const say = (form, text, link) => {
    const box = element('div', '', { class: 'stop-sign', role: 'alert', tabindex: '-1' });
    const line = element('p', text);
    if (link) {
      line.append(' ', link);
    }
    box.append(line);
    document.getElementById('told').replaceChildren(box);
    box.focus();
  };

  // ---- what was sent from a form, for whoever goes back to it
  const sent = (address) => {
    try {
      sessionStorage.setItem(SENT + location.pathname + location.search, address);
    } catch (refused) {
      // then nothing is told, and the form is blank all the same
    }
  };
  const sentBefore = () => {
    try {
      return sessionStorage.getItem(SENT + location.pathname + location.search);
    } catch (refused) {
      return null;
    }
  };
  const cameBack = () => performance.getEntriesByType('navigation')[0]?.type === 'back_forward';

  const begin = (form) => {
    const draft = DRAFT + location.pathname + location.search;
    const fresh = form.dataset.new === 'yes';
    const own = () => form.elements.number.value;

    const restore = () => {
      const mend = decodeURIComponent((location.hash.match(/^#mend=(.*)$/) || [])[1] || '');
      const item = waiting().find((each) => each.id === mend && each.body);
      if (item) {
        fill(form, item.body);
        drop(item.id);
        history.replaceState(history.state, '', location.pathname + location.search);
        form.requestSubmit(form.querySelector('button[value=send]'));
        return;
      }
      const kept = read(draft, null);
      if (kept && (fresh || kept.seen === form.elements.seen.value)) {
        fill(form, kept.body);
        const afresh = element('button', 'Start afresh', { type: 'button', class: 'quiet' });
        afresh.addEventListener('click', () => {
          localStorage.removeItem(draft);
          location.reload();
        });
        const note = element('p', 'What you had typed before is back. ');
        note.append(afresh);
        document.getElementById('told').replaceChildren(note);
      } else if (fresh) {
        if (cameBack()) {
          afterSending();
        }
        // a page kept on this phone must not give two visits the same number
        form.elements.number.value = number();
        form.elements.technician.value ||= read(LAST, '');
      }
    };

    // a browser may have put back what was typed, which under a new number would be a second visit
    const afterSending = () => {
      const address = sentBefore();
      if (address === null) {
        return;
      }
      form.reset();
      const line = element('p', '');
      line.append(element('b', address ? 'The visit that you sent from here has arrived. ' : 'The visit that you sent from here is kept on this phone. '),
        'Nothing is to be sent again; this form is for another one. ');
      if (address) {
        line.append(element('a', 'What the readings say', { href: address }));
      }
      const box = element('div', '', { class: 'stop-sign calm', role: 'status' });
      box.append(line);
      document.getElementById('told').replaceChildren(box);
    };

    const swap = (text) => {
      const page = new DOMParser().parseFromString(text, 'text/html');
      const other = page.getElementById('content');
      if (!other) {
        return false;
      }
      document.getElementById('content').replaceWith(other);
      document.title = page.title;
      const next = document.querySelector('form.entry');
      if (next) {
        begin.wire(next, draft);
      }
      const first = document.querySelector('[aria-invalid]') || document.querySelector('.grades[aria-describedby] input') || document.querySelector('.stop-sign');
      first?.focus();
      return true;
    };

    const submit = async (event) => {
      event.preventDefault();
      if (form.dataset.busy) {
        return;
      }
      // not once more when it has been sent
      keepTyped();
      const trial = event.submitter?.value === 'try';
      const body = fields(form, event.submitter);
      const form_ = location.pathname + location.search;
      const item = { id: own(), action: form.getAttribute('action'), form: form_, body, what: form.dataset.what, state: 'waiting' };
      form.dataset.busy = 'yes';
      form.querySelectorAll('.send button').forEach((button) => { button.disabled = true; });
      const held = trial || keep(item);
      let outcome = { state: 'offline' };
      try {
        outcome = trial ? await tryOut(body) : await send(item);
      } finally {
        delete form.dataset.busy;
        form.querySelectorAll('.send button').forEach((button) => { button.disabled = false; });
      }
      write(LAST, form.elements.technician.value);
      if (trial) {
        if (outcome.state === 'mend' || outcome.state === 'said') {
          swap(outcome.page);
        } else {
          say(form, outcome.state === 'login' ? 'Your login has run out; what you typed stays here.' : 'No connection: the readings are judged when the visit arrives. You can send it now; it is kept on this phone.');
        }
        return;
      }
      if (outcome.state === 'stored') {
        drop(item.id);
        localStorage.removeItem(draft);
        sent(outcome.address);
        location.assign(outcome.address);
      } else if (outcome.state === 'mend') {
        drop(item.id);
        swap(outcome.page);
      } else if (!held) {
        say(form, 'No connection, and this phone has no room to keep the visit. Leave this page open and send again later.');
      } else {
        keep({ ...item, state: outcome.state });
        localStorage.removeItem(draft);
        sent('');
        form.remove();
        show();
        const again = element('a', 'Enter another visit here', { href: form_ });
        document.querySelector('h1').textContent = 'Kept on this phone';
        document.querySelector('h1 + p')?.remove();
        say(form, 'Nothing more is to be done for this visit.', again);
        document.querySelector('.stop-sign').classList.add('calm');
      }
    };

    const tryOut = async (body) => {
      try {
        const answer = await fetch(form.getAttribute('action'), {
          method: 'POST',
          headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
          body,
        });
        const page = await answer.text();
        return { state: answer.ok ? 'said' : answer.status === 422 || answer.status === 409 ? 'mend' : answer.status === 401 ? 'login' : 'busy', page };
      } catch (offline) {
        return { state: 'offline' };
      }
    };

    // verdicts while typing: the same question as the button asks, shown beside the fields
    let asked = 0;
    const judge = async () => {
      const mine = ++asked;
      const outcome = await tryOut(fields(form) + '&act=try');
      if (mine !== asked || outcome.state !== 'said' || !form.isConnected) {
        return;
      }
      const page = new DOMParser().parseFromString(outcome.page, 'text/html');
      form.querySelectorAll('.says').forEach((slot) => {
        const said = page.getElementById(slot.id);
        if (said && said.innerHTML !== slot.innerHTML) {
          slot.replaceChildren(...said.children);
        }
      });
    };

    let later = null;
    const keepTyped = () => {
      clearTimeout(later);
      if (later !== null && form.isConnected) {
        write(draft, { body: fields(form), seen: form.elements.seen.value });
      }
      later = null;
    };
    form.addEventListener('input', () => {
      clearTimeout(later);
      later = setTimeout(keepTyped, 200);
    });
    addEventListener('pagehide', keepTyped);
    form.addEventListener('change', (event) => {
      if (event.target.closest('.reading')) {
        judge();
      }
    });
    form.addEventListener('submit', submit);
    addEventListener('pageshow', (event) => {
      if (event.persisted && fresh && form.isConnected && sentBefore() !== null) {
        afterSending();
        form.elements.number.value = number();
      }
    });
    if (!form.dataset.swapped) {
      restore();
    }
  };
  begin.wire = (form) => {
    form.dataset.swapped = 'yes';
    begin(form);
  };

  const form = document.querySelector('form.entry');
  if (form) {
    begin(form);
  }
})();
