// One scale of colour for all temperatures on all screens: from night blue over grey to lamp yellow. Lightness always
// rises with temperature, and the way from blue to yellow is the one that the common kinds of colour blindness keep.
// Constructed for this project: steps equally far apart in OKLab (B. Ottosson, 2020), through knots of our own choice.

/** [°C] ends of the scale; what lies beyond has the colour of the end, its number says the rest. */
const COLDEST = -40;
const WARMEST = 60;

/** sRGB of every kelvin. */
const RAMP = [
  "241a54 251d57 251f5a 26215c 26235f 272562 282765 282968 292b6a 292d6d 293070 2a3273 2a3476",
  "2b3679 2b387c 2b3a7f 2c3d82 2c3f85 2c4188 2c438b 2c458e 2d4890 2e4a91 2f4d92 314f93 325294",
  "345495 355796 375997 385b98 3a5e99 3b609a 3d639b 3e659c 40689d 426a9e 436c9e 456f9f 4771a0",
  "4874a1 4b76a1 4f78a1 527aa1 567ca1 5a7ea1 5d7fa0 6181a0 6483a0 6885a0 6b879f 6f899f 728b9f",
  "768c9e 798e9e 7d909d 80929d 84949d 87959c 8b969a 8f9898 929996 969a94 9a9c92 9d9d90 a19e8e",
  "a59f8b a8a089 aca287 b0a384 b3a482 b7a57f baa67d bea77a c2a877 c5a974 c9aa71 cdab6e d0ad6c",
  "d3af6b d5b169 d8b368 dbb566 deb765 e1b963 e4bb61 e7bd5f eabf5e edc15b f0c259 f2c559 f3c85c",
  "f4cb5f f5ce62 f6d165 f6d468 f7d76b f8da6e f9dd71 fae074 fbe377 fce67a",
].flatMap((row) => row.split(" "));

/** [°C] from here on black ink is read better than white. */
const BLACK_FROM = 2;

/** Colour of a temperature [°C], for CSS. */
export function heatColor(tempC: number): string {
  return `#${RAMP[stepOf(tempC)]}`;
}

/** Ink that is read best on the colour of a temperature [°C]. */
export function inkOn(tempC: number): string {
  return COLDEST + stepOf(tempC) < BLACK_FROM ? "#ffffff" : "#000000";
}

function stepOf(tempC: number): number {
  const known = Number.isFinite(tempC) ? tempC : COLDEST;
  return Math.round(Math.min(WARMEST, Math.max(COLDEST, known)) - COLDEST);
}
