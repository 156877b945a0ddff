import { Told } from "../../parts/Told.tsx";
import { sourced } from "../../words/sourced.ts";

/** Where a number comes from. */
export function Source({ of }: { of: string }) {
  return <>{sourced(of).map((part, place) => [place > 0 && "; ", <Told of={part} key={part.words} />])}</>;
}
