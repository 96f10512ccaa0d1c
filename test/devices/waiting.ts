/** Waits until it holds; throws after `withinMs`. */
export async function until(holds: () => boolean, withinMs = 20_000, what = String(holds)): Promise<void> {
  const end = performance.now() + withinMs;
  while (!holds()) {
    if (performance.now() > end) throw new Error(`did not come true within ${withinMs} ms: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
