// Dropping a file and following an import; without this script buttons and links do the same.
const drop = document.getElementById('drop');
if (drop) {
  const over = (is) => (event) => {
    event.preventDefault();
    drop.classList.toggle('over', is);
  };
  drop.addEventListener('dragover', over(true));
  drop.addEventListener('dragleave', over(false));
  drop.addEventListener('drop', (event) => {
    over(false)(event);
    if (event.dataTransfer.files.length === 0) return;
    document.getElementById('file').files = event.dataTransfer.files;
    if (drop.reportValidity()) drop.requestSubmit();
  });
}

const run = document.querySelector('[data-run]');
const UNDER_WAY = ['waiting', 'reading', 'assessing'];

async function follow() {
  const answer = await fetch('/api/v1/imports/' + encodeURIComponent(run.dataset.run));
  const told = answer.ok ? await answer.json() : {};
  if (!UNDER_WAY.includes(told.state)) return location.reload();
  const bar = run.querySelector('progress');
  if (told.progress.share === undefined) bar.removeAttribute('value');
  else bar.value = told.progress.share * 100;
  run.querySelector('.way-told').textContent =
    { waiting: 'Waiting for the files before it.', reading: 'Reading: ' + told.progress.rowsDone + ' rows so far.', writing: 'Writing the rows that were read.', assessing: 'Working out the condition of their units.' }[told.progress.rowsWritten === undefined ? told.state : 'writing'];
  setTimeout(follow, 1000);
}

if (run) setTimeout(follow, 500);
