// The loader takes a worker with a message handler for one of its own threads, and waits for ever, unless this is set before it is loaded.
globalThis.dotnetSidecar = true;
let bench = null;
const queue = [];
let running = false;

async function start() {
  const { dotnet } = await import('../_framework/dotnet.js');
  const { getAssemblyExports, getConfig } = await dotnet.create();
  const exports = (await getAssemblyExports(getConfig().mainAssemblyName)).Undercowl.App.Bench.BenchExports;
  exports.Warm();
  return exports;
}

// Whole answers overtake each other: only the newest is worked out. Other questions are each answered, after it.
function take() {
  const newest = queue.findLastIndex(q => q.kind === 'answer');
  if (newest < 0) {
    return queue.shift();
  }

  for (let i = newest - 1; i >= 0; i--) {
    if (queue[i].kind === 'answer') {
      self.postMessage({ seq: queue[i].seq, answer: '' });
      queue.splice(i, 1);
    }
  }

  return queue.splice(queue.findIndex(q => q.kind === 'answer'), 1)[0];
}

async function run() {
  if (running) {
    return;
  }

  running = true;
  try {
    bench ??= start();
    const exports = await bench;
    while (queue.length > 0) {
      const { seq, kind, lines, argument } = take();
      if (kind === 'wake') {
        continue;
      }

      try {
        const began = performance.now();
        const answer = exports.Ask(kind, lines, argument ?? '');
        performance.measure(`${kind} ${seq}`, { start: began });
        self.postMessage({ seq, answer });
      } catch (error) {
        self.postMessage({ seq, error: error.message });
      }

      // Lets messages that came meanwhile into the queue.
      await new Promise(done => setTimeout(done));
    }
  } catch (error) {
    bench = null;
    for (const { seq } of queue.splice(0)) {
      self.postMessage({ seq, error: `The reckoning could not be started: ${error.message}` });
    }
  } finally {
    running = false;
  }
}

self.onmessage = ({ data }) => {
  queue.push(data);
  run();
};
