'use strict';
// Follows a booth's live values: server-sent events over fetch, so that a token can go along in a
// header. Says "lost" when nothing came for a second: the last picture must not be trusted then.
const Boothlamp = (() => {
  const SILENCE_MS = 1000;
  const HUNG_MS = 4000;
  const SLOWEST_RETRY_MS = 5000;

  function follow(url, options, listener) {
    let lastMillis = performance.now();
    let retryMillis = 500;
    let stop = null;
    let lost = false;

    function heard() {
      lastMillis = performance.now();
      lost = false;
      retryMillis = 500;
    }

    function takeEvent(text) {
      let name = 'message';
      let data = '';
      for (const line of text.split('\n')) {
        if (line.startsWith('event: ')) name = line.slice(7);
        if (line.startsWith('data: ')) data += line.slice(6);
      }
      if (data) {
        heard();
        listener.event(name, JSON.parse(data));
      }
    }

    async function read(response) {
      const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
      let text = '';
      for (;;) {
        const { value, done } = await reader.read();
        if (done) return;
        text += value;
        const events = text.split('\n\n');
        text = events.pop();
        events.forEach(takeEvent);
      }
    }

    function tellLost(status) {
      if (!lost) {
        lost = true;
        listener.lost(status);
      }
    }

    async function once() {
      stop = new AbortController();
      let status = 0;
      try {
        const response = await fetch(url, {
          ...options(), cache: 'no-store', redirect: 'error', signal: stop.signal });
        status = response.status;
        lastMillis = performance.now();
        if (response.ok) await read(response);
      } catch (gone) {
        // Said below, whatever the reason was: the way to the booth is open again or not.
      }
      lost = false;
      tellLost(status);
      setTimeout(once, retryMillis);
      retryMillis = Math.min(SLOWEST_RETRY_MS, retryMillis * 1.5);
    }

    setInterval(() => {
      const silent = performance.now() - lastMillis;
      if (silent > SILENCE_MS) tellLost(0);
      if (silent > HUNG_MS && stop) stop.abort();
    }, 100);
    once();
    return { again: () => stop && stop.abort() };
  }

  return { follow };
})();
