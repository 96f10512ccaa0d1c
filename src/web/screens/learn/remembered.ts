import type { Ask } from "../../worker/protocol.js";

/** How a log was told to be read. */
export type LogOptions = NonNullable<Ask<"log">["options"]>;

const KEY = "soakline-log-columns";
/** Layouts kept; a device meets few loggers. */
const MOST = 20;

type Kept = Readonly<Record<string, Pick<LogOptions, "columns" | "units" | "engine">>>;

function all(): Kept {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "{}") as Kept;
  } catch {
    // Storage is closed to us, or holds something else: every file is read anew.
    return {};
  }
}

/** What was chosen for a file with the same columns before. */
export function rememberedFor(columns: readonly string[]): Kept[string] {
  return all()[columns.join("|")] ?? {};
}

export function remember(columns: readonly string[], { columns: uses, units, engine }: LogOptions): void {
  const { [columns.join("|")]: _, ...others } = all();
  const kept = { ...Object.fromEntries(Object.entries(others).slice(1 - MOST)) };
  try {
    localStorage.setItem(
      KEY,
      JSON.stringify({ ...kept, [columns.join("|")]: { columns: uses, units, engine } }),
    );
  } catch {
    // It then lasts as long as the page.
  }
}
