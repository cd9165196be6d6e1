// What every page does beyond HTML. A form that is pressed twice is sent once, and whoever comes
// back to it finds what was typed; forms of visits do both in a way of their own.
(() => {
  'use strict';
  const TYPED = 'coldround.typed.';
  const AGAIN_MS = 10000;
  // secrets and files stay where they were typed; what is hidden is the service's
  const NEVER = ['hidden', 'password', 'file', 'submit', 'button'];
  // what was typed belongs to its place in the way back, not to its address: what a form is answered
  // has the same one
  const place = history.state?.place ?? String(performance.timeOrigin);
  history.replaceState({ ...history.state, place }, '');
  // what one account has typed is nothing to the next one on this machine
  const mine = TYPED + document.body.dataset.who + ' ' + place + ' ';
  const forms = () => [...document.querySelectorAll('form:not(.entry)')];
  const keyOf = (form) => mine + form.getAttribute('action');
  const fields = (form) => [...form.elements].filter((field) => field.name && !NEVER.includes(field.type));

  // a browser may refuse to keep anything, or have no room: then its own memory has to do
  const kept = (work) => {
    try {
      return work(sessionStorage);
    } catch (refused) {
      return null;
    }
  };

  const changed = (field) => {
    if (field.type === 'checkbox' || field.type === 'radio') {
      return field.checked !== field.defaultChecked;
    }
    if (field.options) {
      const chosen = [...field.options].findIndex((option) => option.defaultSelected);
      return field.selectedIndex !== Math.max(0, chosen);
    }
    return field.value !== field.defaultValue;
  };
  const keep = (form) => {
    const typed = new URLSearchParams();
    fields(form).forEach((field) => {
      if (!['checkbox', 'radio'].includes(field.type) || field.checked) {
        typed.append(field.name, field.value);
      }
    });
    kept((store) => (fields(form).some(changed) ? store.setItem(keyOf(form), typed) : store.removeItem(keyOf(form))));
  };
  const restore = (form) => {
    const text = kept((store) => store.getItem(keyOf(form)));
    if (!text) {
      return;
    }
    const typed = new URLSearchParams(text);
    fields(form).forEach((field) => {
      const values = typed.getAll(field.name);
      if (field.type === 'checkbox' || field.type === 'radio') {
        field.checked = values.includes(field.value);
      } else if (values.length && (!field.options || [...field.options].some((option) => option.value === values[0]))) {
        field.value = values[0];
      }
      if (changed(field)) {
        field.closest('details')?.setAttribute('open', '');
      }
    });
    // what follows a form while it is typed into follows it now as well
    form.dispatchEvent(new Event('input'));
  };
  const forget = () => kept((store) => Object.keys(store).filter((key) => key.startsWith(TYPED)).forEach((key) => store.removeItem(key)));

  // folded on a phone only; a wide screen has room for all of it
  const wide = matchMedia('(min-width: 46rem)');
  const unfold = () => document.querySelector('.menu')?.toggleAttribute('open', wide.matches);
  unfold();
  wide.addEventListener('change', unfold);

  let leaving = false;
  document.addEventListener('submit', (event) => {
    const form = event.target;
    const posts = event.submitter?.getAttribute('formmethod') ?? form.getAttribute('method');
    if (event.defaultPrevented || form.matches('.entry') || posts !== 'post') {
      return;
    }
    if (form.dataset.sent) {
      event.preventDefault();
      return;
    }
    form.dataset.sent = 'yes';
    // an answer that never comes must not lock the form
    setTimeout(() => delete form.dataset.sent, AGAIN_MS);
    leaving = form.getAttribute('action') === '/leave';
  });
  addEventListener('pagehide', () => (leaving ? forget() : forms().forEach(keep)));
  addEventListener('pageshow', () => forms().forEach((form) => delete form.dataset.sent));
  addEventListener('DOMContentLoaded', () => {
    if (performance.getEntriesByType('navigation')[0]?.type === 'back_forward') {
      forms().forEach(restore);
    }
  });
})();
