/** Whether the app's own files are kept on this device, and whether a newer version waits. */
export const offline = $state<{ isKept: boolean; isNewerWaiting: boolean; isPossible: boolean }>({
  isKept: false,
  isNewerWaiting: false,
  isPossible: "serviceWorker" in navigator,
});

let waiting: ServiceWorker | null = null;

/** Keeps the app for use without a network. Browsers allow it over HTTPS and on this computer only. */
export async function keepOffline(): Promise<void> {
  if (!offline.isPossible || import.meta.env.DEV) return;
  try {
    const registration = await navigator.serviceWorker.register("./sw.js", { type: "module" });
    const look = () => {
      offline.isKept = registration.active !== null;
      // The first version takes over by itself; only a second one has to ask.
      waiting = navigator.serviceWorker.controller === null ? null : registration.waiting;
      offline.isNewerWaiting = waiting !== null;
    };
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", look);
    });
    look();
    await navigator.serviceWorker.ready;
    look();
  } catch {
    offline.isPossible = false;
  }
}

/** Takes the newer version, at the user's word. */
export function takeNewer(): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting?.postMessage("take-over");
}
