// The answer follows while the form is moved; without this script its button does the same.
const form = document.getElementById('plan-form');
let waiting;
let running;

async function follow() {
  if (!form.checkValidity()) return;
  if (running) running.abort();
  running = new AbortController();
  const address = '/replacement?' + new URLSearchParams(new FormData(form));
  try {
    const page = await fetch(address, { signal: running.signal });
    const text = await page.text();
    const answer = new DOMParser().parseFromString(text, 'text/html').getElementById('answer');
    if (!answer) return location.assign(address);
    document.getElementById('answer').replaceChildren(...answer.childNodes);
    history.replaceState(null, '', address);
  } catch (fault) {
    if (fault.name !== 'AbortError') form.submit();
  }
}

form.addEventListener('input', () => {
  clearTimeout(waiting);
  waiting = setTimeout(follow, 150);
});
