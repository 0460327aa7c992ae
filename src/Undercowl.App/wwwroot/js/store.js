// Jobs in IndexedDB. A promise that resolves means: on the disk. See docs/decisions/app.md.
const name = 'undercowl';
const version = 1;
let opened = null;

function open() {
  return opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open(name, version);
    asked.onupgradeneeded = () => {
      const db = asked.result;
      db.createObjectStore('jobs', { keyPath: 'id' });
      db.createObjectStore('entries', { keyPath: ['job', 'id'] });
      db.createObjectStore('answers', { keyPath: 'job' });
      db.createObjectStore('settings', { keyPath: 'key' });
    };
    asked.onsuccess = () => {
      // Another tab with a newer program may change the form: let it.
      asked.result.onversionchange = () => { asked.result.close(); opened = null; };
      resolve(asked.result);
    };
    asked.onerror = () => { opened = null; reject(asked.error); };
    asked.onblocked = () => reject(new Error('Another tab holds the jobs in an older form. Close it and reload.'));
  });
}

async function write(stores, act) {
  const db = await open();
  await new Promise((resolve, reject) => {
    const deed = db.transaction(stores, 'readwrite', { durability: 'strict' });
    deed.oncomplete = resolve;
    deed.onabort = () => reject(new Error(
      `The browser did not keep it (${deed.error?.name ?? 'aborted'}): nothing was recorded. Free some space on this device and record it again.`));
    act(...stores.map(s => deed.objectStore(s)));
  });
}

async function read(store, act) {
  const db = await open();
  return new Promise((resolve, reject) => {
    const asked = act(db.transaction(store).objectStore(store));
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}

const of = job => IDBKeyRange.bound([job], [job, []]);

// Lines are entries in canonical bytes; each names its own id. An entry that is there already stays as it is: the same id has the same bytes.
export async function append(job, lines) {
  const rows = lines.split('\n').filter(l => l).map(line => ({ job: JSON.parse(job).id, id: JSON.parse(line).id, line }));
  await write(['jobs', 'entries'], (jobs, entries) => {
    jobs.put(JSON.parse(job));
    for (const row of rows) {
      entries.put(row);
    }
  });
}

export async function jobs() {
  return JSON.stringify(await read('jobs', s => s.getAll()));
}

export async function head(id) {
  return JSON.stringify(await read('jobs', s => s.get(id)) ?? null);
}

export async function lines(id) {
  const rows = await read('entries', s => s.getAll(of(id)));
  return rows.map(r => r.line + '\n').join('');
}

export async function keep(job) {
  await write(['jobs'], jobs => jobs.put(JSON.parse(job)));
}

export async function erase(id) {
  await write(['jobs', 'entries', 'answers'], (jobs, entries, answers) => {
    jobs.delete(id);
    entries.delete(of(id));
    answers.delete(id);
  });
}

// The last answer, so that a reload shows it before anything is worked out again.
export async function keepAnswer(id, key, text) {
  await write(['answers'], answers => answers.put({ job: id, key, text }));
}

export async function answer(id) {
  const kept = await read('answers', s => s.get(id));
  return kept ? kept.key + '\n' + kept.text : '';
}

export async function setting(key) {
  return (await read('settings', s => s.get(key)))?.value ?? '';
}

export async function set(key, value) {
  await write(['settings'], settings => settings.put({ key, value }));
}

export async function persist() {
  return await navigator.storage?.persist?.() ?? false;
}
