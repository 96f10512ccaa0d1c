import { BlockList, isIP, isIPv6 } from "node:net";
import type { Store } from "../../store/index.js";

const loopback = new BlockList();
loopback.addSubnet("127.0.0.0", 8, "ipv4");
loopback.addAddress("::1", "ipv6");

/** Whether an address is of this computer itself. @example isLoopbackAddress("::ffff:127.0.0.1") // true */
export function isLoopbackAddress(address: string): boolean {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, "");
  if (isIP(plain) === 0) return false;
  return loopback.check(plain, isIPv6(plain) ? "ipv6" : "ipv4");
}

/** The name in a Host header without its port; undefined when it is no such header. */
export function hostName(header: string | undefined): string | undefined {
  const match = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9._-]+))(?::\d{1,5})?$/i.exec(header ?? "");
  return (match?.[1] ?? match?.[2])?.toLowerCase();
}

export function isLoopbackName(name: string): boolean {
  return name === "localhost" || isLoopbackAddress(name);
}

/**
 * Whether a request may be meant for this base. A page that had its own name point here (DNS rebinding) sends that
 * name; a plain address cannot be such a name.
 */
export function isNameOfBase(name: string, hosts: readonly string[]): boolean {
  return isLoopbackName(name) || isIP(name) !== 0 || hosts.some((host) => host.toLowerCase() === name);
}

export type Binding = { readonly allowed: true } | { readonly allowed: false; readonly reason: string };

/** Whether the server may listen on an address: beyond this computer only when an owner guards it. */
export async function checkBinding(store: Pick<Store, "users">, host: string): Promise<Binding> {
  if (isLoopbackName(host.toLowerCase())) return { allowed: true };
  if ((await store.users()).some(({ role }) => role === "owner")) return { allowed: true };
  return {
    allowed: false,
    reason: `Without an owner the base answers only on this computer, not on ${host}: open it here, set up the owner, then start it on ${host} again.`,
  };
}
