import { getContext, setContext } from "svelte";
import type { DocumentIssue } from "../../documents/index.js";

type FaultsAt = (path: string) => readonly DocumentIssue[];

const KEY = Symbol("faults");

/** Fields below say what is wrong with what stands at their path. */
export function tellFaults(faultsAt: FaultsAt): void {
  setContext(KEY, faultsAt);
}

export function faultsOfForm(): FaultsAt {
  return getContext<FaultsAt | undefined>(KEY) ?? (() => []);
}
