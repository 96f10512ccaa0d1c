/**
 * Words, names and key runs that people build passwords from, and long passwords seen again and again. Origin: from
 * memory of what published lists of leaked passwords have in common; short on purpose, and no replacement for such a
 * list. Shorter ones than the shortest allowed password stand here because they are stretched with digits or repeated.
 */
export const COMMON_STEMS: ReadonlySet<string> = new Set(
  `password passwort passord losenord salasana contrasena motdepasse letmein welcome admin administrator root user
  login master secret default changeme access guest test testing qwerty qwertz azerty qwertyuiop qwertyui asdfgh
  asdfghjkl zxcvbn zxcvbnm qazwsx qazwsxedc iloveyou loveyou sunshine princess dragon monkey football baseball
  basketball hockey superman batman pokemon starwars shadow michael jennifer jordan charlie daniel thomas robert
  andrew joshua jessica ashley nicole hannah george william matthew killer hunter ranger trustno freedom whatever
  nothing computer internet samsung google apple android windows summer winter spring autumn january february march
  april june july august september october november december monday friday sunday hello flower cheese cookie banana
  orange purple chocolate blink liverpool arsenal chelsea correcthorsebatterystaple passwordpassword
  thequickbrownfox aircraft airplane aeroplane pilot flying hangar preheat engine soakline cessna piper`
    .split(/\s+/)
    .filter((word) => word !== ""),
);

/** Runs a hand makes on the keys or in the alphabet; any stretch of one, either way, is easily guessed. */
export const KEY_RUNS: readonly string[] = [
  "01234567890123456789",
  "abcdefghijklmnopqrstuvwxyz",
  "qwertyuiopasdfghjklzxcvbnm",
  "qwertzuiopasdfghjklyxcvbnm",
  "azertyuiopqsdfghjklmwxcvbn",
  "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p",
  "1q2w3e4r5t6y7u8i9o0p",
];
