// The page's side of the worker: questions out, answers in. A question that a newer one of its kind overtook gets an empty answer.
let worker = null;
const waiting = new Map();
let last = 0;

function start() {
  worker = new Worker('js/bench-worker.js', { type: 'module' });
  worker.onmessage = ({ data }) => {
    const asked = waiting.get(data.seq);
    waiting.delete(data.seq);
    if (data.error) {
      asked?.reject(new Error(data.error));
    } else {
      asked?.resolve(data.answer ?? '');
    }
  };
  worker.onerror = e => {
    for (const asked of waiting.values()) {
      asked.reject(new Error(e.message || 'The reckoning stopped.'));
    }

    waiting.clear();
    worker = null;
  };
}

export function wake() {
  if (!worker) {
    start();
    worker.postMessage({ seq: 0, kind: 'wake' });
  }
}

export function ask(kind, lines, argument) {
  if (!worker) {
    start();
  }

  const seq = ++last;
  return new Promise((resolve, reject) => {
    waiting.set(seq, { resolve, reject });
    worker.postMessage({ seq, kind, lines, argument });
  });
}
