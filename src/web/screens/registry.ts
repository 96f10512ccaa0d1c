import type { Component } from "svelte";
import type { IconName } from "../design/Icon.svelte";
import type { Words } from "../words/index.svelte.js";

/** A screen is a folder with a `screen.ts` that says this of it; nothing else has to be told. */
export interface Screen {
  /** In the address, after "#/"; also its name among the words (`screens`). */
  readonly path: keyof Words["screens"];
  readonly order: number;
  readonly icon: IconName;
  /** In the bar; the others stand under "more". */
  readonly isMain: boolean;
  readonly load: () => Promise<{ readonly default: Component }>;
}

const found = import.meta.glob<Screen>("./*/screen.ts", { eager: true, import: "screen" });

export const SCREENS: readonly Screen[] = Object.values(found).sort((a, b) => a.order - b.order);
