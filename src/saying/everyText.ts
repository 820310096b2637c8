import { texts } from "../words/compiled/texts/later.ts";
import { addTexts } from "./texts.ts";

/* Imported by whatever says messages of any room: commands, tests, every screen but the first. */
addTexts(texts);
