import { useEffect, useState } from "preact/hooks";
import { type Assessor, createAssessor } from "../../../compute/assessor.ts";

/** One calculator for as long as the screen stands; it is closed with it. */
export function useAssessor(create: () => Assessor = createAssessor): Assessor {
  const [assessor] = useState(create);
  useEffect(() => () => assessor.dispose(), [assessor]);
  return assessor;
}
