/**
 * The words of check records in short form, so that a link need not carry them: the text that DEFLATE
 * is given to refer back to (RFC 1951; the idea is RFC 1950's preset dictionary). What is most common
 * stands last, where referring to it is cheapest.
 *
 * The first belongs to links of version 1, both together to those of version 2, and neither must ever
 * change: one letter changed and links that were sent before no longer open.
 */
const firstWords = [
  `"photos":[{"type":"image/jpeg","data":"","caption":"","reading":"`,
  `,"rules":{"roadClass":"D","speedKmPerH":60,"allowedContactsPerKm":2,"accelerationCapG":2.5,"reserveMm":5,"balanceMm":10,"events":[{"kind":"obstacle","heightM":0.1,"lengthM":2,"speedKmPerH":40},{"kind":"landing","heightM":0.1}]}`,
  `,"tolerances":{"unsprungMassKg":5,"wheelRateNPerMm":3,"tyreRateNPerMm":20,"damperBumpNsPerMm":0.5,"damperReboundNsPerMm":1,"payloadPerCornerKg":10}`,
  `,"estimated":{"wheelRateNPerMm":"from the sag under a known load"}`,
  `"readings":{"pivotToMount":"~1|200 mm","pivotToOuter":"~2|","damperLength":"~2|450 mm","mountLineAngle":"~0.5|8 °","stopLineAngle":"~0.5|8 °"`,
  `"readings":{"track":"~5|1600 mm","stopSpacing":"~3|1000 mm"`,
  `"role":"customer"},"role":"support"},"use":"offroad"},"axle":"rear","use":"towing"},"axle":"rear"`,
  `"layout":{"kind":"damper","layout":{"kind":"strut","layout":{"kind":"axle","kind":"spring","at":"wheel","kind":"metal","at":"stop","kind":"other","at":"stop"`,
  `"duty":"carry","damping":[[0,0.05,0.1],[,"testedAtSpeed":true`,
  `,"geometry":{"pivotToStop":"~1|,"armAngle":"~0.5|-8.5 °","stopLean":"~1|`,
  ` with the and of is on new left right front rear wheel spring tyre load lower side stop `,
  ` 1/16 in| 3/16 in| 5/16 in| 7/16 in| 9/16 in| 11/16 in| 13/16 in| 15/16 in| 1/8 in| 3/8 in| 5/8 in| 7/8 in| 1/4 in| 3/4 in| 1/2 in","~1.5875|~0.79375|1`,
  ` lb","~4.5359237|`,
  `{"format":"stopfit-check","version":1,"id":"00000000-0000-4000-8000-000000000000","createdAt":"2026-05-02T09:30:00.000Z","author":{"role":"installer","name":"","contact":"},"vehicle":{"platformId":null,"liftMm":0,"label":"","use":"daily"},"axle":"front"`,
  `,"layout":{"kind":"arm","wheelPerOuter":1,"readings":{"pivotToStop":"~1|150 mm","pivotToOuter":"~2|400 mm","armAngle":"~0.5|8 °","stopLean":"~1|5 °"}}`,
  `,"stop":{"name":"Tall progressive","Short firm","duty":"impact","freeHeight":"~1|60 mm","usableCompressionMm":33,"curve":[[0,0],[5,1000],[10,2000],[15,3000],[20,4000],[25.5,6000],[30.75,9000],[40.25,15000]],"damping":null,"testedAtSpeed":false}`,
  `,"ride":{"unsprungMassKg":55,"wheelRateNPerMm":28,"tyreRateNPerMm":240,"damperBumpNsPerMm":2.2,"damperReboundNsPerMm":3.2,"payloadPerCornerKg":100}`,
  `,"notes":"}],"corners":[{"side":"left","gap":"~1|20 mm|21 mm","rideHeight":"~2|520 mm","cornerMassKg":"~10|560 kg","limits":[{"kind":"tyre","at":"wheel","perWheel":1,"reading":"~3|170 mm"},{"kind":"damper","at":"wheel","perWheel":0.6,"reading":"~1.5|105 mm"}]},`,
  `{"side":"right","gap":"~1|22 mm","rideHeight":"~2|520 mm","cornerMassKg":"~10|560 kg","limits":[{"kind":"tyre","at":"wheel","perWheel":1,"reading":"~3|170 mm"},{"kind":"damper","at":"wheel","perWheel":0.6,"reading":"~1.5|105 mm"}]}]`,
];

/** What version 2 of the record has beside that. */
const addedWords = [
  `"job":{"id":"","label":"","number":"","customer":"","moment":"before"},"moment":"after"}`,
  `,"fitted":{"partNumber":"","revision":"","batch":"","spacerMm":10,"at":"2026-06-12T10:00:00.000Z","by":"","odometer":`,
  `,"readings":{"lowerArmLength":"~2|","lowerArmAngle":"~0.5|","jointToTop":"~5|","jointToTopLean":"~1|`,
  `,"frontBoltToMount":"~2|","rearBoltToMount":"~2|","mountHeight":"~3|","frontBoltToOuter":"~2|","rearBoltToOuter":"~2|`,
  `"boltSpacing":"~2|","frontBoltToStop":"~2|","rearBoltToStop":"~2|","pivotHeight":"~3|","outerHeight":"~3|","stopHeight":"~3|`,
  `"otherPivotHeight":"~3|","otherOuterHeight":"~3|","otherArmAngle":"~0.5|","otherArmLength":"~2|","jointHeight":"~3|","jointInset":"~5|","tyreOffset":"~5|","wheelCentreAbove":"~5|`,
  `,"wheelPerOuterTol":0.0`,
  `"armRole":"underStrut","armRole":"carriesWheel","armRole":"upper","armRole":"lower","stopOn":"arm","stopOn":"frame",`,
  `"usableTolMm":,"testedAtSpeed":true,"restLoss":0.0,"staticShare":0.9,"branches":[{"tauS":0.001,"share":0.},{"tauS":0.01,"share":0.},{"tauS":0.1,"share":0.},{"tauS":1,"share":0.}],"partNumber":"","revision":"","batch":"`,
  `"roadKurtosis":3,{"kind":"hump","heightM":0.1,"lengthM":3.7,"speedKmPerH":30},`,
  `,"fullTravel":{"acknowledged":"2026-06-12T10:00:00.000Z","measure":"wheelTravel","measure":"hubToArch","movement":"both","movement":"one","corners":[{"side":"left","contacts":{"stop":{"reading":"~2|"},"block":{"reading":"~2|","blockHeight":"~0.5|"},"tyre":{"reading":"~2|"},"damper":{"reading":"~2|"},"hose":{"note":"`,
  `"source":"pack"},"source":"estimated"},"settleMm":,"pressedHeight":"~1|,"seatToPad":"~1|{"kind":"damper","at":"arm","distance":"~3|","reading":"~`,
  `{"format":"stopfit-check","version":2,"id":"`,
];

const encoded = (words: readonly string[]): Uint8Array => new TextEncoder().encode(words.join(""));

/** By the version of the link that they belong to. */
export const recordDictionaries = {
  1: encoded(firstWords),
  2: encoded([...addedWords, ...firstWords]),
} as const;

export type DictionaryVersion = keyof typeof recordDictionaries;
