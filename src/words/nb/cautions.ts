import type { CautionsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

// A caution keeps the units that it was published in.

export const cautions: Phrases<CautionsFindings> = {
  "inspect-daily": () =>
    "Se over ledninger, varmematte og slanger i nærheten før dagens første flyging når varmeren har vært brukt. Montering er arbeid for en sertifisert flytekniker.",
  unattended: () =>
    "La den aldri gå uten tilsyn, og fyll ikke drivstoff på den mens den går. Ha brannslukker for hånden, og hold luftslangen unna slanger, trekk og polstring.",
  "burner-outside": () =>
    "En brenner lager kullos: bruk den aldri inne i en lukket hangar eller kabin. La den stå ute, og før varmluften inn gjennom en slange.",
  "hot-air-limit": () =>
    "Luften mot tenningskabler, slanger og gummi skal være under 120 °C. For varmt og for fort ødelegger pakninger og remmer.",
  "heater-sparks": () =>
    "Ingen åpen glødetråd, kullbørstemotor eller bryter lavt i hangaren eller nær drivstoffåpninger: opp til 0,45 m over gulvet og innen 1,5 m fra motorer og tanker er det eksplosjonsfare.",
  "warm-gauges": () =>
    "Luft under motordekselet varmer sylindertopper og følere lenge før olje og lagre. Varme målere alene betyr ikke at motoren er varm.",
  "hot-surface": () =>
    "Overflaten på varmeren kan bli for varm: se til den mens den varmer, og hold olje, slanger og trekk unna.",
  "in-cowl-rejected": () =>
    "Motorprodusentene fraråder små elektriske varmere i luftåpningen: de varmer luften og målerne, ikke oljen.",
  "sump-only": () => "Varme bare under oljen lar sylindre og lagre være kalde og kan drive fukt over på dem.",
  "immersion-covered": () =>
    "Bare når elementet er helt dekket av olje. Stillestående kald olje forkoker over omtrent 1,6 W/cm² (10 W/in²).",
  cords: () =>
    "Skjøteledninger for utebruk, IP44 eller bedre, aldri på kveil, og trukket ut når de ikke er i bruk.",
  "battery-hydrogen": () =>
    "Lad aldri et frosset batteri. Et varmt batteri avgir hydrogen under lading: sørg for lufting.",
  "remove-before-start": () =>
    "Ta av trekk og plugger og tell dem før start. En glemt plugg gjør motoren overopphetet.",
  "quilts-burn": () =>
    "Vanlige dyner og tepper brenner: hold dem unna varmere, eksosrør og alt som gløder, og bind dem fast.",
  "hot-air-in-turn": () =>
    "Blås 5 min om gangen på bunnpanne, oljefilter, utvendige oljerør, sylindre, innsug og oljekjøler, minst 30 min til sammen.",
  "hot-air-feel": () =>
    "Kjenn på motoren mellom hver runde: hver del skal holde på varmen før neste runde begynner.",
  "hot-air-top": () => "Gi toppen av motoren de siste 5 min.",
  "hot-air-wait": () =>
    "Stopp og vent 5 min. Kjenn på sylindre, veivhus, kjøler og rør med hånden; oljen skal renne av peilepinnen.",
  "hot-air-start": () => "Start straks etterpå. Stopp motoren hvis det ikke er oljetrykk innen 10 s.",
  "congealed-oil": () =>
    "Målerne kan vise varmt mens oljen i bunnpanne, filter og rør ennå er stiv. Skaden kan vise seg mange timer senere.",
  "no-oil-pressure": () =>
    "Stopp motoren straks hvis det ikke er oljetrykk innen 10 s. Sier motorens håndbok noe annet, gjelder håndboken.",
  "crank-short": () =>
    "Kjør starteren høyst 5 s om gangen, start rett etter forvarmingen, og bruk starthjelp der håndboken tillater det.",
  "kick-back": () =>
    "Med et halvladet batteri kan motoren slå tilbake og ødelegge starterdrevet. Lad eller varm batteriet først.",
  "frozen-battery": () =>
    "Lad aldri, gi aldri starthjelp til og belast aldri et batteri som kan være frosset eller er svulmet: det kan sprekke. Syre etser: bruk vernebriller og hansker.",
  "remove-battery": () => "Ta ut batteriet og hold det varmt når det blir kaldere enn -34 °C ute.",
  "cold-charging": () =>
    "Så kaldt tar batteriet nesten ikke imot lading, og litium tar skade av det. Varm det før lading, og regn ikke med at dynamoen fyller det opp.",
  "intake-fire": () =>
    "Drivstoff som pumpes inn med gassen, blir liggende i innsuget og brenner ved tilbakeslag: fortsett å kjøre starteren så flammene suges inn, og ha noen ute med brannslukker.",
  "over-priming": () =>
    "For mye primer flommer innsuget, kan låse en sylinder hydraulisk og vasker oljen av kalde sylindervegger.",
  "frosted-plugs": () =>
    "Når den tenner og dør, rimer pluggene til: ingen flere forsøk før motoren er varmet over 0 °C.",
  "prime-by-handbook": () => "Hvor mye primer som trengs, og hvordan, sier håndboken.",
  "frozen-breather": () =>
    "Vann fra veivhuset fryser i veivhusventilasjonen: trykket stiger, et påfyllingslokk eller en pakning gir etter, og oljen går tapt. Se på utluftingen ved hver daglig inspeksjon.",
  "short-ground-run": () =>
    "En kort kjøring på bakken lager mer vann enn den driver ut: fly en time med oljen på 74 til 93 °C, eller la være å kjøre den.",
  "live-propeller": () =>
    "Regn propellen som farlig også når alt er slått av: ingen i propellfeltet, klosser foran hjulene, bremsene på.",
  "running-engine": () =>
    "Gå aldri fra en motor i gang: flyger ved spakene, bremser og klosser på, ingen nær propellen, aldri i hangar.",
  "run-if-sure": () =>
    "Kjør den bare mens en start er sikker: ta av og tell trekk og plugger først, og sett dem på igjen etterpå.",
  "hand-turning": () =>
    "Håndbøkene er uenige om å dra propellen rundt for hånd: noen ber om det, andre advarer om at det stryker oljen av. Regn enhver propell som farlig.",
  "burner-without-flue": () =>
    "En brenner uten avtrekk fyller en lukket hangar med kullos: bruk den aldri inne. Varm med strøm eller avtrekk, eller la brenneren stå ute og før luften inn.",
  "water-in-hinges": () =>
    "Vann i hengsler, trim, understell eller statiske porter fryser og låser dem: blås det ut, og beveg alle ror til stopp før du går ut og før avgang.",
  "clear-ice": () =>
    "Regn på en overflate eller drivstoff under frysepunktet blir til klar is som ikke synes: kjenn etter.",
  "cool-before-snow": () =>
    "Når det snør eller regner ute, må overflaten kjøles under frysepunktet først (åpne porter): en varm overflate smelter snøen, og vannet fryser fast.",
  "warm-fuel": () =>
    "Drivstoff som er varmet i hangaren, holder overflaten over tanken varm lenge etter uttrilling og smelter snø på den: ha helst ikke mye drivstoff i vingen i hangaren.",
  "colder-climb": () =>
    "Frie ror på bakken beviser lite: det som ennå er flytende, kan fryse i kaldere luft. Blir et ror eller trimmen tungt, bruk ikke makt; gå ned i luft over frysepunktet.",
  "clean-wing": () =>
    "Rim, is eller snø på vinge, haleflater, ror, propell, frontrute eller statiske porter: ingen avgang før alt er borte. Litt rim finnes ikke; poler det ikke glatt.",
  "look-and-feel": () =>
    "Et varsel er ingen inspeksjon: se og kjenn med bar hånd, i lys, rett før avgang, uansett hva som vises her.",
  "sweating-cover": () =>
    "Vinger svetter under trekk, og trekk fryser fast: legg dem tørre på en ren og tørr vinge, ta dem av i tide, og se under.",
  roughness: () =>
    "En ruhet på 0,4 mm tar alt mye løft og gir mer motstand. Klar is og tynt rim er vanskelig å se.",
  "frost-under-tank": () =>
    "Rim under vingen ved kalde drivstofftanker godtas bare der myndigheten og flyets produsent sier det.",
  "dry-before-out": () =>
    "Vær sikker på at det er helt tørt før det skal ut: vann som står igjen, fryser på nytt på kritiske flater og steder.",
  "brush-first": () =>
    "Kost eller dra av løs snø før flyet kommer inn: å smelte den koster timer og væter hangaren.",
  "gentle-heat": () =>
    "Varm luften i hangaren, ikke varmere enn hånden tåler. Blås aldri varmluft og hell aldri varmt vann på en kald frontrute: den krakelerer eller sprekker.",
  "hangar-sparks": () =>
    "Vifter og varmere som kan gi gnister, holdes utenfor sonen opp til 0,45 m over gulvet og 1,5 m rundt motorer og tanker.",
  "heater-too-small": () =>
    "Varmeren klarer ikke å holde innstillingen: luften blir kaldere, og alt tar lengre tid.",
  "damp-hangar": ({ humidity }, say) =>
    `Hangaren blir fuktig (opptil ${say.percent(humidity)} relativ fuktighet): andre motorer og verktøy i den kan ruste, og tørkingen går saktere. Luft ut, varm, eller kost vannet ut.`,
};
