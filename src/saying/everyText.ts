import { texts as first } from "../words/compiled/texts/first.ts";
import { texts as later } from "../words/compiled/texts/later.ts";
import { addTexts } from "./texts.ts";

/* Imported by whatever says messages of any room: commands, tests, every screen but the first. */
addTexts(first);
addTexts(later);
