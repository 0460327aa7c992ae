// While developing, nothing is kept: the page always comes from the server.
self.addEventListener('fetch', () => { });
