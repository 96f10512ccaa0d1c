// Addresses are of the form "#/SCREEN/AIRCRAFT": they work from any folder of any server, and without one.

export interface Route {
  readonly screen: string;
  readonly item: string | undefined;
}

function read(): Route {
  const [screen = "", item] = location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  return { screen, item: item === "" ? undefined : item };
}

let current = $state.raw<Route>(read());

addEventListener("hashchange", () => {
  current = read();
});

export function route(): Route {
  return current;
}

export function addressOf(screen: string, item?: string): string {
  return `#/${screen}${item === undefined ? "" : `/${encodeURIComponent(item)}`}`;
}
