// The answer follows while the form is moved; without this script its button does the same.
const form = document.getElementById('plan-form');
let waiting;
let running;

// what is wrong with a field stands at that field
function tell(other) {
  for (const field of form.elements) {
    const its = field.name && other.elements.namedItem(field.name);
    if (!its || !form.contains(field)) continue;
    for (const name of ['aria-invalid', 'aria-describedby']) {
      if (its.hasAttribute(name)) field.setAttribute(name, its.getAttribute(name));
      else field.removeAttribute(name);
    }
    field.parentElement.querySelector('.wrong')?.remove();
    const said = its.parentElement.querySelector('.wrong');
    if (said) field.after(said);
  }
}

async function follow() {
  if (!form.checkValidity()) return;
  if (running) running.abort();
  running = new AbortController();
  const address = '/replacement?' + new URLSearchParams(new FormData(form));
  try {
    const page = await fetch(address, { signal: running.signal });
    const text = await page.text();
    const other = new DOMParser().parseFromString(text, 'text/html');
    const answer = other.getElementById('answer');
    if (!answer) return location.assign(address);
    tell(other.getElementById('plan-form'));
    document.getElementById('answer').replaceChildren(...answer.childNodes);
    history.replaceState(history.state, '', address);
  } catch (fault) {
    if (fault.name !== 'AbortError') form.submit();
  }
}

form.addEventListener('input', () => {
  clearTimeout(waiting);
  waiting = setTimeout(follow, 150);
});
