// Before the first paint: the theme; after the load: the program is kept for use without a network.
try {
  document.documentElement.dataset.theme = localStorage.getItem('theme') || 'system';
} catch {
  document.documentElement.dataset.theme = 'system';
}

if ('serviceWorker' in navigator) {
  addEventListener('load', () => navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' }));
}
