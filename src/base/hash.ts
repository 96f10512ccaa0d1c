/** Short print of a text, the same wherever it is computed; tells inputs apart, does not protect them (FNV-1a, two lanes). */
export function hashOfText(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x84222325;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ (code + i), 0x01000193);
  }
  return [a, b].map((sum) => (sum >>> 0).toString(16).padStart(8, "0")).join("");
}
