// Trusted Types: the page may load exactly two scripts by name, its calculator's worker and its service worker.

export interface ScriptURLs {
  readonly worker: URL;
  readonly serviceWorker: URL;
}

interface Policy {
  createScriptURL(url: string): unknown;
}

interface PolicyFactory {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): Policy;
}

export const scripts: ScriptURLs = {
  worker: new URL(__WORKER_URL__, document.baseURI),
  serviceWorker: new URL("sw.js", document.baseURI),
};

const policy = makePolicy();

function makePolicy(): Policy | undefined {
  const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes;
  return factory?.createPolicy("rimside", {
    createScriptURL(url) {
      if (url === scripts.worker.href || url === scripts.serviceWorker.href) return url;
      throw new TypeError(`not a script of this app: ${url}`);
    },
  });
}

// trusted marks one of the two addresses as allowed. The DOM's own types do not know of the marking and ask for text.
export function trusted(url: URL): string {
  return (policy?.createScriptURL(url.href) ?? url.href) as string;
}
