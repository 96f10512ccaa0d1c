/** Names of the catalogue, English to Norwegian. */
export const names: Readonly<Record<string, string>> = {
  "silicone sump pad, 100 W": "varmematte av silikon under bunnpannen, 100 W",
  "silicone sump pad, 220 W": "varmematte av silikon under bunnpannen, 220 W",
  "silicone sump pad, 300 W": "varmematte av silikon under bunnpannen, 300 W",
  "oil-sump immersion element, 250 W": "varmeelement i bunnpannens olje, 250 W",
  "whole-engine electric set for 4 cylinders: bands, sump and case pads":
    "elektrisk sett for hele motoren, 4 sylindre: bånd, matter på bunnpanne og veivhus",
  "whole-engine electric set for 6 cylinders: bands, sump and case pads":
    "elektrisk sett for hele motoren, 6 sylindre: bånd, matter på bunnpanne og veivhus",
  "whole-engine electric set for 2 cylinders: bands, sump and case pads":
    "elektrisk sett for hele motoren, 2 sylindre: bånd, matter på bunnpanne og veivhus",
  "whole-engine electric set for 9 cylinders: bands, sump and case pads":
    "elektrisk sett for hele motoren, 9 sylindre: bånd, matter på bunnpanne og veivhus",
  "small electric heater in the cowl, 400 W": "liten elektrisk varmer under motordekselet, 400 W",
  "ducted hot air, electric, 1.5 kW": "varmluft i slange, elektrisk, 1,5 kW",
  "ducted hot air, fuel-fired, 12 kW": "varmluft i slange, brenner, 12 kW",
  "battery blanket, 60 W": "batterivarmer, 60 W",
  pad: "matte",
  element: "element",
  bands: "bånd",
  "sump pad": "matte på bunnpannen",
  "case pad": "matte på veivhuset",
  heater: "varmer",
  blanket: "batterivarmer",
  "insulated cowl cover, fitted, with closed inlets": "isolert motortrekk, tilpasset, med lukkede luftinntak",
  "improvised quilt over the cowl with inlets stuffed": "ulltepper over motordekselet, luftinntakene stappet",
  "inlet plugs": "plugger i luftinntakene",
  "insulated propeller and spinner cover": "isolert trekk over propell og spinner",
  "two-cylinder opposed four-stroke, 45-80 hp, oil tank, fixed-pitch propeller":
    "tosylindret firetakts boksermotor, 45–80 hk, oljetank, fast propell",
  "four-cylinder opposed, 65-115 hp, carburettor, fixed-pitch propeller":
    "firesylindret boksermotor, 65–115 hk, forgasser, fast propell",
  "four-cylinder opposed, 150-180 hp, carburettor, fixed-pitch propeller":
    "firesylindret boksermotor, 150–180 hk, forgasser, fast propell",
  "four-cylinder opposed, 180-210 hp, injection, constant-speed propeller":
    "firesylindret boksermotor, 180–210 hk, innsprøytning, stillbar propell",
  "six-cylinder opposed, 210-250 hp, carburettor, constant-speed propeller":
    "sekssylindret boksermotor, 210–250 hk, forgasser, stillbar propell",
  "six-cylinder opposed, 260-310 hp, injection, constant-speed propeller":
    "sekssylindret boksermotor, 260–310 hk, innsprøytning, stillbar propell",
  "four-cylinder, liquid-cooled heads, geared, 80-115 hp, oil tank":
    "firesylindret, væskekjølte topper, med gir, 80–115 hk, oljetank",
  "nine-cylinder radial, 260-400 hp, oil tank, constant-speed propeller":
    "nisylindret stjernemotor, 260–400 hk, oljetank, stillbar propell",
  "SAE 30 straight (aviation grade 65)": "SAE 30 enkeltgradsolje (luftfart 65)",
  "SAE 40 straight (aviation grade 80)": "SAE 40 enkeltgradsolje (luftfart 80)",
  "SAE 50 straight (aviation grade 100)": "SAE 50 enkeltgradsolje (luftfart 100)",
  "SAE 20W-50 multigrade, mineral": "SAE 20W-50 flergradsolje, mineralsk",
  "SAE 15W-50 multigrade, part synthetic": "SAE 15W-50 flergradsolje, delsyntetisk",
  "painted aluminium wing": "malt aluminiumsvinge",
  "bare bright aluminium wing": "blank aluminiumsvinge",
  "painted fabric wing": "malt duktrukket vinge",
  "painted composite wing": "malt komposittvinge",
  "control hinge": "hengsel på et ror",
};
